package thinsheet

import (
	"errors"
	"maps"
	"math"
	"slices"
	"testing"

	"brazebooth/internal/deep"
)

// fired is a joint with a gap after a spot, a pause, a step and half a spot.
func fired(t *testing.T, r *Rhythm) *Sheet {
	t.Helper()
	s, err := New(r.Input)
	if err != nil {
		t.Fatal(err)
	}
	march(s, 0.3, 0.008, true)
	march(s, 0.3, 0.016, false)
	s.Advance(3.3)
	march(s, 0.15, 0.008, true)
	return s
}

// finite reports whether every enthalpy is a finite number.
func (s *Sheet) finite() bool {
	sum := 0.0
	for _, e := range s.e {
		sum += e
	}
	return !math.IsNaN(sum) && !math.IsInf(sum, 0)
}

// Heat and filler are conserved to round-off through melting, losses, gaps and the moving window.
func TestBalances(t *testing.T) {
	for _, r := range []*Rhythm{rhythm(steelish(), 1.5, 2), rhythm(steelish(), 0.8, 0), rhythm(copperish(), 1, 1)} {
		s := fired(t, r)
		for range 30 { // until content has left the window's rear end
			s.Advance(1.7)
			s.Step(0.01, true)
		}
		if e := s.Residual(); math.Abs(e) > 1e-12 {
			t.Errorf("energy off by %.1e", e)
		}
		if e := s.MassResidual(); math.Abs(e) > 1e-12 {
			t.Errorf("filler off by %.1e", e)
		}
		if !s.finite() {
			t.Error("a temperature is no number")
		}
	}
}

// Carrying conserves the content of a row, whatever the shift; only the window's rear end loses any.
func TestCarryConserves(t *testing.T) {
	s, err := New(rhythm(steelish(), 1, 0).Input)
	if err != nil {
		t.Fatal(err)
	}
	row := make([]float64, s.g.nx)
	for i := range row {
		if x := s.g.xc[i]; x > -8 && x < 8 {
			row[i] = 1 + math.Sin(x)
		}
	}
	sum := func() (v float64) {
		for i := range row {
			v += row[i] * s.g.dx[i]
		}
		return v
	}
	before := sum()
	s.carry(row, 2.5, 0)
	if after := sum(); math.Abs(after/before-1) > 1e-12 {
		t.Errorf("%g before, %g after", before, after)
	}
}

// A joint of two different arms gives mirror images in either order.
func TestMirrorImages(t *testing.T) {
	r := rhythm(steelish(), 1.2, 1.5)
	thin := r.Arms[0]
	thin.Thick = 0.9
	r.Mirror, r.Arms = false, []Arm{r.Arms[0], thin}
	a := fired(t, r)
	r.Arms = []Arm{thin, r.Arms[0]}
	r.Arms[0], r.Arms[1] = thin, rhythm(steelish(), 1.2, 1.5).Arms[0]
	b := fired(t, r)
	n := a.g.ny * a.g.nx
	for c := range n {
		if math.Abs(a.t[c]-b.t[n+c]) > 1e-6 || math.Abs(a.t[n+c]-b.t[c]) > 1e-6 {
			t.Fatalf("cell %d: %g and %g, %g and %g", c, a.t[c], b.t[n+c], a.t[n+c], b.t[c])
		}
	}
}

// Ahead and behind a standing arc are symmetrical.
func TestForeAndAft(t *testing.T) {
	r := rhythm(steelish(), 1.5, 2)
	s, err := New(r.Input)
	if err != nil {
		t.Fatal(err)
	}
	march(s, 0.25, 0.008, true)
	for _, x := range []float64{0.75, 2.25, 4.25, 6.25} {
		if a, b := s.At(0, x, 2), s.At(0, -x, 2); math.Abs(a-b) > 1e-6 {
			t.Errorf("%g mm ahead %g, behind %g", x, a, b)
		}
	}
}

// Lengths times two, time times four and power times two give the same temperatures in a metal of constants.
func TestScaling(t *testing.T) {
	in := dryInput(1.5, 0.5, 20)
	in.Power = 700
	a, err := New(in)
	if err != nil {
		t.Fatal(err)
	}
	march(a, 0.3, 0.006, true)
	in.Power *= 2
	in.Sigma, in.Cell, in.Near, in.Ahead, in.Behind, in.Aside = 3, 1, 0, 40, 40, 40
	in.Arms = []Arm{in.Arms[0]}
	in.Arms[0].Thick, in.Arms[0].Sigma = 2, 3
	b, err := New(in)
	if err != nil {
		t.Fatal(err)
	}
	march(b, 1.2, 0.024, true)
	for c := range a.t {
		if math.Abs(a.t[c]-b.t[c]) > 1e-6*math.Max(1, a.t[c]) {
			t.Fatalf("cell %d: %g and %g", c, a.t[c], b.t[c])
		}
	}
}

// A wider window, finer cells and shorter steps change the times only by the error that the package states.
func TestConvergence(t *testing.T) {
	deep.Turn(t)
	if testing.Short() {
		t.Skip("fine grids")
	}
	settled := func(r *Rhythm) *Times {
		var n Run
		if err := errors.Join(n.Begin(r, nil), n.Settle()); err != nil {
			t.Fatal(err)
		}
		return &n.Times
	}
	base := settled(rhythm(steelish(), 1.5, 2))
	finer := map[string]func(*Rhythm){
		"window": func(r *Rhythm) { r.Ahead, r.Behind, r.Aside = 30, 40, 45 },
		"cells":  func(r *Rhythm) { r.Cell = 0.25 },
		"steps":  func(r *Rhythm) { r.Step = 0.003 },
	}
	for _, name := range deep.Of(t, slices.Sorted(maps.Keys(finer)), 2) {
		r := rhythm(steelish(), 1.5, 2)
		finer[name](r)
		b := settled(r)
		for figure, v := range map[string][2]float64{"first": {base.FirstOn, b.FirstOn}, "longest": {base.OnMax,
			b.OnMax},
			"off": {base.OnOff.Off, b.OnOff.Off}, "step": {base.OnOff.Step, b.OnOff.Step}} {
			if d := math.Abs(v[1]/v[0] - 1); d > 0.05 {
				t.Errorf("%s: %s moves by %.1f %%", name, figure, 100*d)
			}
		}
	}
}

// An arc over nothing but a gap heats nothing.
func TestEmptyCells(t *testing.T) {
	r := rhythm(steelish(), 1, 2)
	s, err := New(r.Input)
	if err != nil {
		t.Fatal(err)
	}
	march(s, 0.2, 0.01, false)
	for j := range s.g.cut {
		for i := range s.g.nx {
			if c := s.index(0, j, i); s.e[c] != 0 || s.t[c] != 20 {
				t.Fatalf("an empty cell holds %g J/mm2 at %g C", s.e[c], s.t[c])
			}
		}
	}
}

func TestNoAllocationPerStep(t *testing.T) {
	s := fired(t, rhythm(steelish(), 1.5, 2))
	on := false
	if n := testing.AllocsPerRun(50, func() { on = !on; s.Step(0.008, on); s.Advance(0.9) }); n > 0 {
		t.Errorf("%.0f allocations a step", n)
	}
}

// MassResidual is the error of the filler's balance, relative to the deposited filler.
func (s *Sheet) MassResidual() float64 {
	return (s.Filler() + s.gone - s.laid) / max(s.laid, 1e-300)
}
