package section

import (
	"errors"
	"math"
	"testing"
)

// Copper, 1.6 mm wire at 270 A, P 5925.15 W: bead and reach as printed.
func copperButt(thick float64) Input {
	return seam(ButtJoint, [2]float64{thick, thick}, copper(), 5925.15, 14, 12.5084, 20)
}

func TestClosedPreheat(t *testing.T) {
	in := copperButt(8)
	reach, err := ToeReach(in.Bead, 70*degree)
	if err != nil {
		t.Fatal(err)
	}
	got, err := in.ClosedStart(reach, 4.481)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "reach", reach, 3.5026, 2e-5)
	near(t, "start", got, 230.55, 1e-4)
	f := bronze()
	near(t, "enthalpy at mid-freezing", f.Enthalpy(), 4.481, 0.01)
}

// Preheat from the section by bisection, the least over the travels: 238 C at 8 mm, 306 at 12, from an
// independent implementation of the same formulation; its three-dimensional reference had 234 and 306.
func TestPreheatBySection(t *testing.T) {
	w := new(Workspace)
	for _, c := range []struct{ thick, want, closed float64 }{{8, 238, 231}, {12, 300, 297}} {
		least, closed := math.Inf(1), math.Inf(1)
		for _, v := range []float64{4, 6, 8, 10, 12, 14} {
			in := copperButt(c.thick)
			in.Heat, in.Bead, in.Travel = 5925.15/v, 12.5084*14/v, v
			reach, err := ToeReach(in.Bead, 70*degree)
			if err != nil {
				t.Fatal(err)
			}
			got, err := w.LeastStart(&in, 20, 900, 2, func(r *Result) bool { return r.Wet[0] >= reach })
			if err != nil {
				t.Fatal(err)
			}
			estimate, err := in.ClosedStart(reach, 4.481)
			if err != nil {
				t.Fatal(err)
			}
			least, closed = min(least, got), min(closed, estimate)
		}
		if math.Abs(least-c.want) > 15 { // the two programs use different steps
			t.Errorf("%g mm: %.0f C, want %.0f", c.thick, least, c.want)
		}
		if math.Abs(closed-c.closed) > 1 {
			t.Errorf("%g mm: closed form %.0f C, want %.0f", c.thick, closed, c.closed)
		}
	}
}

func TestPreheatOutside(t *testing.T) {
	w := new(Workspace)
	in := copperButt(8)
	never := func(*Result) bool { return false }
	if v, err := w.LeastStart(&in, 20, 500, 2, never); !math.IsNaN(v) || err != nil {
		t.Errorf("%g, %v", v, err)
	}
	if v, err := w.LeastStart(&in, 20, 500, 2, func(*Result) bool { return true }); v != 20 || err != nil {
		t.Errorf("%g, %v", v, err)
	}
	for _, err := range []error{
		func() error { _, err := w.LeastStart(&in, 500, 20, 2, never); return err }(),
		func() error { _, err := ToeReach(-1, 1); return err }(),
		func() error { _, err := in.ClosedStart(3, 1e3); return err }(),
	} {
		if !errors.Is(err, ErrRange) {
			t.Errorf("%v", err)
		}
	}
}
