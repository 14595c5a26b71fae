package limit

import (
	"math"
	"testing"
)

// A limit that is a known parabola of the setting's logarithm is reached at the nearer of its roots; a straight limit
// by its slope; a limit that nothing moves never.
func TestCourseReachesItsRoot(t *testing.T) {
	for _, x := range []struct{ l, a, b, want float64 }{
		{0.3, 2, 0, -0.15}, {0.3, -2, 0, 0.15}, {0.06, 0.7, 1, -0.1}, {0.06, -0.7, 1, 0.1}, {-0.11, 1, 1, 0.1}, {2, 1,
			0, -2}, {1, 0.01, 0, math.Inf(1)},
		{1, 1, 5, -1}, // no root: on as a straight line
	} {
		f := func(s float64) float64 { return x.l + x.a*s + x.b*s*s }
		c := courseOf(x.l, f(-Probe), f(Probe))
		if got := c.reach(x.l); !(math.Abs(got-x.want) < 1e-9 || got == x.want) {
			t.Errorf("%g%+g·x%+g·x²: %g, want %g", x.l, x.a, x.b, got, x.want)
		}
	}
	if c := courseOf(1, math.NaN(), 1+2*Probe); math.Abs(c.slope-2) > 1e-12 || c.bend != 0 {
		t.Errorf("from one side: %+v", c)
	}
	if c := courseOf(1, 1-2*Probe, math.NaN()); math.Abs(c.slope-2) > 1e-12 || c.bend != 0 {
		t.Errorf("from the other side: %+v", c)
	}
}

// Of the two settings the one with the smaller change counts, in per cent of itself: down by a fifth is nearer than
// up by a quarter.
func TestSmallestChangeOfEitherSetting(t *testing.T) {
	c := Courses{{slope: 1}, {slope: -1}} // both a logarithm of ln 1.25 away, the first downward
	if got := c.Reach(math.Log(1.25)); math.Abs(got-20) > 1e-9 {
		t.Errorf("%g %%", got)
	}
	if got := c.Reach(-math.Log(1.25)); math.Abs(got+20) > 1e-9 {
		t.Errorf("not met by %g %%", got)
	}
	if got := c.Reach(Far); !math.IsInf(got, 1) {
		t.Errorf("a limit that does not apply: %g", got)
	}
}

// Two straight parts of Wets that cross between the probes: the change is that of the part which is met no more first,
// wherever they cross; of a bead that misses both, that of the part which is missed by more.
func TestWetsReachesItsNearerPart(t *testing.T) {
	at := func(warm, angle float64) (l All) {
		for i := range l {
			l[i] = Far
		}
		l[Warmth], l[Angle], l[Wets] = warm, angle, min(warm, angle)
		return l
	}
	for _, warm := range []float64{-0.1, 0.05, 0.1, 0.2} {
		for _, angle := range []float64{-0.1, 0.05, 0.1, 0.2, 0.4} {
			const slope = 4 // of the angle; that of the warmth is 1
			here := at(warm, angle)
			feed := [2]All{at(warm-Probe, angle-slope*Probe), at(warm+Probe, angle+slope*Probe)}
			_, d := here.Along(&Beside{feed, {here, here}})
			want := -min(warm, angle/slope)
			if warm < 0 || angle < 0 {
				want = max(-warm, -angle/slope)
			}
			if want = -100 * math.Expm1(want); math.Abs(d[Wets]-want) > 1e-9 {
				t.Errorf("warmth %g, angle %g: %.3f %%, want %.3f", warm, angle, d[Wets], want)
			}
		}
	}
}
