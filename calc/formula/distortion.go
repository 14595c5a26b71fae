package formula

import "math"

// ShrinkageForce is the pull along a seam that remains after cooling, N: share·E·α/ρc·net, after Okerblom
// (memory medium). net J/mm; modulus GPa; expansion 1e-6/K; rhoC J/mm3K; share is the part of the free
// shrinkage that remains. It holds if the sheet is wider than the zone that yielded; a narrow strip shrinks
// instead and keeps less force.
func ShrinkageForce(net, modulus, expansion, rhoC, share float64) (float64, error) {
	if err := Positive([7]string{"net heat", "modulus", "expansion", "heat capacity", "share"},
		net, modulus, expansion, rhoC, share); err != nil {
		return 0, err
	}
	return share * modulus * 1e3 * expansion * 1e-6 / rhoC * net, nil
}

// ShrinkageAcross is how much closer the edges of a butt come, mm: share·α/ρc·net/t. net J/mm, t mm.
func ShrinkageAcross(net, t, expansion, rhoC, share float64) (float64, error) {
	if err := Positive([7]string{"net heat", "thickness", "expansion", "heat capacity"}, net, t, expansion,
		rhoC); err != nil {
		return 0, err
	}
	return share * expansion * 1e-6 / rhoC * net / t, nil
}

// AngularChange is the angle by which a plate that is heated from one face bends along the seam, rad:
// form·α/ρc·net/t². Above limit, the largest net/t² in J/mm3, the plate is heated through: an error.
func AngularChange(net, t, expansion, rhoC, form, limit float64) (float64, error) {
	if err := Positive([7]string{"net heat", "thickness", "expansion", "heat capacity"}, net, t, expansion,
		rhoC); err != nil {
		return 0, err
	}
	if perSquare := net / (t * t); perSquare > limit {
		return 0, Outside("net heat over thickness squared", perSquare,
			"the sheet is heated through and no longer bends by it")
	}
	return form * expansion * 1e-6 / rhoC * net / (t * t), nil
}

// FlatWidth is how wide the sheet on each side of a seam may be, mm, before the compression that balances the
// pull of the seam buckles it: pull/(2·b·t) = k·π²·E/(12·(1 − ν²))·(t/b)². pull N, modulus GPa; k is 4 for a
// side that is held straight at the seam and at its edge, 0.425 for one with a free edge.
func FlatWidth(pull, t, modulus, poisson, k float64) (float64, error) {
	if err := Positive([7]string{"pull", "thickness", "modulus", "coefficient"}, pull, t, modulus, k); err != nil {
		return 0, err
	}
	if !(poisson >= 0 && poisson < 0.5) {
		return 0, Outside("Poisson's ratio", poisson, "must be from 0 to under 0.5")
	}
	return 2 * k * math.Pi * math.Pi * modulus * 1e3 / (12 * (1 - poisson*poisson)) * t * t * t / pull, nil
}
