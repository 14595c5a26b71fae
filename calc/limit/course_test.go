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

// A course's reach moves evenly as its roots vanish: just before and just after, it is as far to the edge.
func TestReachMovesEvenlyAsRootsVanish(t *testing.T) {
	const little = 1e-6
	for _, l := range []float64{-1.5, -0.4, -0.1, -0.03, 0.03, 0.1, 0.4, 1.5} {
		for _, slope := range []float64{-5, -1, -0.3, -0.05, 0.05, 0.3, 1, 5} {
			vanish := slope * slope / (4 * l) // the bend at which the two roots meet
			before, after := course{slope, vanish * (1 - little)}.reach(l), course{slope, vanish * (1 + little)}.reach(l)
			if d := math.Abs(before/after - 1); !(d < 0.01) {
				t.Errorf("%g%+g·x: %g before its roots vanish, %g after", l, slope, before, after)
			}
			for b := vanish; math.Abs(b) < 100*math.Abs(vanish); b *= 1.01 {
				here, on := course{slope, b * (1 + little)}.reach(l), course{slope, b * 1.01}.reach(l)
				if d := math.Abs(here/on - 1); !(d < 0.011) {
					t.Errorf("%g%+g·x%+g·x²: %g, then %g", l, slope, b, here, on)
				}
			}
		}
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
