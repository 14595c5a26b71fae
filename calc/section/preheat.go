package section

import (
	"fmt"
	"math"

	"brazebooth/calc/section/plate"
)

// ToeReach returns how far out a bead's toes must be for its toe angle to be at most angle, mm: y = √(A/S(θ)),
// for a bead on one flat face, butt or overlay. area mm2; angle inside the bead at its toes, rad, in (0, π).
func ToeReach(area, angle float64) (float64, error) {
	if !(area > 0 && area <= 1000) || !(angle > 0 && angle < math.Pi) {
		return 0, fmt.Errorf("%w: bead %g mm2 or angle %g", ErrRange, area, angle)
	}
	return math.Sqrt(area / Segment(angle)), nil
}

// Enthalpy is the filler's heat over 20 C when half of it has frozen, J/mm3: the heat still in the metal when
// it stops flowing.
func (f *Filler) Enthalpy() float64 {
	c := f.curve()
	h, _ := c.heat((f.Solidus + f.Liquidus) / 2)
	return h
}

// ClosedStart estimates in closed form the lowest starting temperature from which a bead reaches its toes, C:
// the toe's temperature less the rise of a moving Gaussian source on an endless plate of the first member's
// metal and thickness at the distance reach mm. The heat that the filler keeps is subtracted; frozen is that
// enthalpy, J/mm3, see Enthalpy. The parts' rise adds one for one, because their properties are taken as
// constant. For a butt or an overlay that conducts well: from 5 mm within 30 K of the section, thinner up to
// 160 K low. Below room temperature no preheat is needed. Only for equal members.
func (in *Input) ClosedStart(reach, frozen float64) (float64, error) {
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

// LeastStart finds the lowest temperature of the parts, C, between low and high, at which enough is true, to
// within K, by bisection. enough must be true at all higher temperatures too. It returns NaN if enough is false
// at high.
func (w *Workspace) LeastStart(in *Input, low, high, within float64, enough func(r *Result) bool) (float64, error) {
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
