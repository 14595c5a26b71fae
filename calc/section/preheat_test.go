package section

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"brazebooth/calc/section/plate"
)

// toeReach returns how far out a bead's toes must be for its toe angle to be at most angle, mm: y = √(A/S(θ)),
// for a bead on one flat face, butt or overlay. area mm2; angle inside the bead at its toes, rad, in (0, π).
func toeReach(area, angle float64) (float64, error) {
	if !(area > 0 && area <= 1000) || !(angle > 0 && angle < math.Pi) {
		return 0, fmt.Errorf("%w: bead %g mm2 or angle %g", ErrRange, area, angle)
	}
	return math.Sqrt(area / Segment(angle)), nil
}

// closedStart estimates in closed form the lowest starting temperature from which a bead reaches its toes, C:
// the toe's temperature less the rise of a moving Gaussian source on an endless plate of the first member's
// metal and thickness at the distance reach mm. The heat that the filler keeps is subtracted; frozen is that
// enthalpy, J/mm3, see Enthalpy. The parts' rise adds one for one, because their properties are taken as
// constant. For a butt or an overlay that conducts well: from 5 mm within 30 K of the section, thinner up to
// 160 K low. Below room temperature no preheat is needed. Only for equal members.
func (in *Input) closedStart(reach, frozen float64) (float64, error) {
	if err := in.check(); err != nil {
		return 0, err
	}
	m := &in.Base[0]
	k, rhoC := m.K, m.RhoC
	if m.Steel {
		k, rhoC = 0.030*m.K/SteelMean.K, 0.0056*m.RhoC/SteelMean.RhoC
	}
	q := in.Travel * (in.Heat - in.Bead*frozen)
	if !(q > 0) || !(reach >= 0) {
		return 0, fmt.Errorf("%w: the bead takes %g of %g J/mm, reach %g mm", ErrRange, in.Bead*frozen, in.Heat, reach)
	}
	p := in.Travel * in.Sigma * rhoC / (2 * k)
	if p < 1e-3 || p > 100 {
		return 0, fmt.Errorf("%w: travel %g mm/s for this metal", ErrRange, in.Travel)
	}
	return in.Filler.Toe - plate.Rise(q, in.Sigma, k, rhoC, in.Travel, in.Thick[0], reach), nil
}

// leastStart finds the lowest temperature of the parts, C, between low and high, at which enough is true, to
// within K, by bisection. enough must be true at all higher temperatures too. It returns NaN if enough is false
// at high.
func (w *Workspace) leastStart(in *Input, low, high, within float64, enough func(r *Result) bool) (float64, error) {
	if !(within > 0) || !(low < high) {
		return 0, fmt.Errorf("%w: from %g to %g C within %g K", ErrRange, low, high, within)
	}
	x := *in
	at := func(start float64) (bool, error) {
		x.Start = start
		r, err := w.Solve(&x)
		return err == nil && enough(&r), err
	}
	if ok, err := at(high); err != nil || !ok {
		return math.NaN(), err
	}
	if ok, err := at(low); err != nil || ok {
		return low, err
	}
	for high-low > within {
		mid := (low + high) / 2
		ok, err := at(mid)
		switch {
		case err != nil:
			return 0, err
		case ok:
			high = mid
		default:
			low = mid
		}
	}
	return high, nil
}

// Copper, 1.6 mm wire at 270 A, P 5925.15 W: bead and reach as printed.
func copperButt(thick float64) Input {
	return seam(ButtJoint, [2]float64{thick, thick}, copper(), 5925.15, 14, 12.5084, 20)
}

func TestClosedPreheat(t *testing.T) {
	in := copperButt(8)
	reach, err := toeReach(in.Bead, 70*degree)
	if err != nil {
		t.Fatal(err)
	}
	got, err := in.closedStart(reach, 4.481)
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
			reach, err := toeReach(in.Bead, 70*degree)
			if err != nil {
				t.Fatal(err)
			}
			got, err := w.leastStart(&in, 20, 900, 2, func(r *Result) bool { return r.Wet[0] >= reach })
			if err != nil {
				t.Fatal(err)
			}
			estimate, err := in.closedStart(reach, 4.481)
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
	if v, err := w.leastStart(&in, 20, 500, 2, never); !math.IsNaN(v) || err != nil {
		t.Errorf("%g, %v", v, err)
	}
	if v, err := w.leastStart(&in, 20, 500, 2, func(*Result) bool { return true }); v != 20 || err != nil {
		t.Errorf("%g, %v", v, err)
	}
	for _, err := range []error{
		func() error { _, err := w.leastStart(&in, 500, 20, 2, never); return err }(),
		func() error { _, err := toeReach(-1, 1); return err }(),
		func() error { _, err := in.closedStart(3, 1e3); return err }(),
	} {
		if !errors.Is(err, ErrRange) {
			t.Errorf("%v", err)
		}
	}
}
