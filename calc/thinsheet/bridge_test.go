package thinsheet

import (
	"errors"
	"math"
	"sync/atomic"
	"testing"

	"brazebooth/internal/deep"
)

// steelish is mild steel with constant properties, and bronze a filler, for runs of the whole solver.
func steelish() Material  { return Plain(7.85e-3, 0.035, 0.66, 250, 1470, 1520) }
func bronze() Material    { return Plain(8.53e-3, 0.055, 0.43, 210, 970, 1025) }
func copperish() Material { return Plain(8.94e-3, 0.350, 0.42, 205, 1083, 1084) }

// rhythm is a butt with a gap under 97 A and 15.2 V.
func rhythm(base Material, thick, gap float64) *Rhythm {
	return &Rhythm{Input: Input{Arms: []Arm{{Base: base, Thick: thick, Lit: true, Sigma: 1.8}}, Mirror: true, Gap: gap,
		Filler: bronze(), Stir: 2, Sigma: 1.8, Power: 0.84 * 15.2 * 97, Feed: 0.56 * 0.93, Droplet: 642 + 250,
		Loss:     1e-5,
		Radiates: 0.8 * 5.67e-14, Start: 20},
		Section: gap * thick * 1.85, MeltDepth: 0.2, LongestOn: 3, Longest: 10, Shortest: 0.15}
}

func bridge(t *testing.T, r *Rhythm) Times {
	t.Helper()
	b, err := Bridge(r, nil)
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(b.Residual) > 1e-12 {
		t.Errorf("energy off by %.1e", b.Residual)
	}
	return b
}

func TestBridgeTimesAreInOrder(t *testing.T) {
	b := bridge(t, rhythm(steelish(), 1.5, 2))
	if b.Reason != "" || !b.OnOff.Converged {
		t.Fatalf("%q, %+v", b.Reason, b.OnOff)
	}
	if !(b.OnMin < b.OnOff.On && b.OnOff.On < b.OnMax) || !(b.OffMin < b.OnOff.Off && b.OnOff.Off < b.OffMax) {
		t.Errorf("times out of order: %+v", b)
	}
	if b.OnOff.EdgePeak < 1025 || b.OnOff.HotPeak > 1480 {
		t.Errorf("at the suggestion the edge must wet and not melt: %g to %g C", b.OnOff.EdgePeak, b.OnOff.HotPeak)
	}
	if want := 0.56 * 0.93 * b.OnOff.On / 8.53e-3 / (2 * 1.5 * 1.85); b.OnOff.StepBy != StepFill ||
		math.Abs(b.OnOff.Step/want-1) > 1e-9 {
		t.Errorf("step %g by %s, the fill gives %g", b.OnOff.Step, b.OnOff.StepBy, want)
	}
	if math.Abs(b.Grid) > 0.05 {
		t.Errorf("half the cells move the first spot by %.1f %%", 100*b.Grid)
	}
}

// The step at which a spot fills an open root; worked by hand: 0.560357 g/s, deposit 0.95, on 0.4 s, gap 2.0,
// 1.2 mm.
func TestStepFill(t *testing.T) {
	for _, c := range []struct{ r, want float64 }{{1, 5.200656}, {0.7, 6.118419}} {
		r := rhythm(steelish(), 1.2, 2)
		r.Feed, r.Section = 0.560357*0.95, 2*1.2*(1+c.r)
		s, err := New(r.Input)
		if err != nil {
			t.Fatal(err)
		}
		d := newDriver(r, s, nil)
		if got, by := d.step(0.4, 100); by != StepFill || math.Abs(got-c.want) > 1e-5 {
			t.Errorf("r %g: %g by %s, want %g", c.r, got, by, c.want)
		}
	}
}

func TestBridgeTrends(t *testing.T) {
	deep.Turn(t)
	if testing.Short() {
		t.Skip("long under the race detector")
	}
	thin, thick := bridge(t, rhythm(steelish(), 1, 1.5)), bridge(t, rhythm(steelish(), 1.5, 1.5))
	if !(thin.OnMin < thick.OnMin && thin.OnMax < thick.OnMax) {
		t.Errorf("thicker sheet must take longer: %+v then %+v", thin.OnOff, thick.OnOff)
	}
	r := rhythm(steelish(), 1.5, 1.5)
	r.Power *= 1.15
	if hotter := bridge(t, r); !(hotter.OnMin < thick.OnMin && hotter.OnMax < thick.OnMax) {
		t.Errorf("more power must be quicker: %+v then %+v", thick.OnOff, hotter.OnOff)
	}
}

func TestBridgeReasons(t *testing.T) {
	if testing.Short() {
		t.Skip("long under the race detector")
	}
	cold := rhythm(steelish(), 3, 2)
	cold.Power /= 2
	cold.Feed /= 2
	slow := rhythm(Plain(7.9e-3, 0.025, 0.55, 270, 1400, 1450), 2.8, 1)
	slow.Power *= 1.2
	strong := rhythm(steelish(), 1.5, 1)
	strong.Power *= 9
	for name, c := range map[string]struct {
		r    *Rhythm
		want Reason
	}{
		"a cold arc on thick steel":  {cold, NeverWets},
		"foil":                       {rhythm(steelish(), 0.3, 1), TooHot},
		"thick stainless":            {slow, MeltsFirst},
		"a strong arc on thin steel": {strong, TooHot},
		"a gap of 4 mm":              {rhythm(steelish(), 1.5, 4), WideGap},
	} {
		if got, err := Bridge(c.r, nil); err != nil || got.Reason != c.want {
			t.Errorf("%s: %q, %v, want %q", name, got.Reason, err, c.want)
		}
	}
}

// Two halves give the same result as one half mirrored.
func TestBridgeMirror(t *testing.T) {
	deep.Turn(t)
	one, two := rhythm(steelish(), 1.2, 1), rhythm(steelish(), 1.2, 1)
	two.Arms, two.Mirror = []Arm{two.Arms[0], two.Arms[0]}, false
	a, b := bridge(t, one), bridge(t, two)
	for _, c := range [][2]float64{{a.FirstOn, b.FirstOn}, {a.OnMax, b.OnMax}, {a.OnOff.Off, b.OnOff.Off}} {
		if math.Abs(c[0]/c[1]-1) > 0.01 {
			t.Errorf("mirrored %g, both %g", c[0], c[1])
		}
	}
}

func TestBridgeStops(t *testing.T) {
	var n atomic.Int32 // several runs call stop at the same time
	_, err := Bridge(rhythm(steelish(), 1.5, 2), func() bool { return n.Add(1) > 2 })
	if !errors.Is(err, ErrStopped) {
		t.Errorf("err %v", err)
	}
}

func TestBadInput(t *testing.T) {
	for name, spoil := range map[string]func(*Rhythm){
		"no arms":      func(r *Rhythm) { r.Arms = nil },
		"no number":    func(r *Rhythm) { r.Power = math.NaN() },
		"unlit":        func(r *Rhythm) { r.Arms[0].Lit = false },
		"drops only":   func(r *Rhythm) { r.Feed = 2 },
		"thin air":     func(r *Rhythm) { r.Arms[0].Thick = 0 },
		"tiny cells":   func(r *Rhythm) { r.Cell = 1e-6 },
		"bad material": func(r *Rhythm) { r.Arms[0].Base.T = []float64{20} },
		"bad filler":   func(r *Rhythm) { r.Filler.H[1] = -5 },
	} {
		r := rhythm(steelish(), 1.5, 2)
		spoil(r)
		if _, err := Bridge(r, nil); !errors.Is(err, ErrRange) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// Copper under an arc for steel and a stronger one: where a cold spot never wets, a warmed sheet does. Liquidus
// and base solidus are 58 K apart, so that a strong arc melts the face before the back is wet. The gap of the
// third row is wider, because at 1 mm both ends of on are within a tenth of each other and either may come
// first.
func TestBridgeCopper(t *testing.T) {
	deep.Turn(t)
	if testing.Short() {
		t.Skip("long under the race detector")
	}
	for _, c := range []struct {
		thick, gap, power float64
		want              Reason
	}{{2, 1, 1, NeverWets}, {3, 1, 1, NeverWets}, {1, 1.3, 1, TwoSettings}, {1, 1, 2, TooHot}} {
		r := rhythm(copperish(), c.thick, c.gap)
		r.Power, r.Feed = r.Power*c.power, r.Feed*c.power
		var b Run
		if err := b.Begin(r, nil); err != nil || b.Times.Reason != c.want {
			t.Errorf("%g mm at %g times the power: %q, want %q", c.thick, c.power, b.Times.Reason, c.want)
		}
	}
}

// Bridge finds all the times. Each end of a range is one run until its cycle repeats, without any search. stop may
// be nil; it is called from several goroutines at once.
func Bridge(r *Rhythm, stop func() bool) (Times, error) {
	n := new(Run)
	err := n.Begin(r, stop)
	if err == nil {
		err = n.Rest()
	}
	return n.Times, err
}

// invert renews the temperatures from the enthalpies.
func (s *Sheet) invert() {
	e, t, a, b, lo, hi := s.e, s.t, s.a, s.b, s.lo, s.hi
	n := len(e)
	t, a, b, lo, hi = t[:n], a[:n], b[:n], lo[:n], hi[:n]
	for i, v := range e {
		if v < lo[i] || v >= hi[i] {
			s.find(i, v)
		}
		t[i] = a[i] + b[i]*v
	}
}
