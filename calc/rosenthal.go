package calc

import "math"

// Rise of temperature about a point source that has moved for ever (Rosenthal 1941). xi is the
// distance ahead of the arc and y beside it, mm; power W; travel mm/s; k W/mmK; rhoC J/mm3K. The
// point under the source itself has no finite answer.

// RosenthalThick returns the rise at a depth z mm in a part thicker than the heat reaches, K.
func RosenthalThick(power, travel, k, rhoC, xi, y, z float64) (float64, error) {
	if err := positive([4]string{"power", "travel", "conductivity", "heat capacity"}, power, travel, k, rhoC); err != nil {
		return 0, err
	}
	r := math.Sqrt(xi*xi + y*y + z*z)
	if !(r > 0) {
		return 0, outside("distance", r, "must be above zero")
	}
	return power / (2 * math.Pi * k * r) * math.Exp(-travel*rhoC*(r+xi)/(2*k)), nil
}

// RosenthalThin returns the rise in a sheet of thickness t mm that is as hot behind as in front, with
// loss from both faces together in W/m2K, K.
func RosenthalThin(power, travel, t, k, rhoC, loss, xi, y float64) (float64, error) {
	if err := positive([4]string{"power", "travel", "thickness", "conductivity"}, power, travel, t, k); err != nil {
		return 0, err
	}
	r := math.Hypot(xi, y)
	if !(r > 0) || !(rhoC > 0) || !(loss >= 0) {
		return 0, outside("distance", r, "must be above zero, with a heat capacity and no negative loss")
	}
	u := travel * rhoC / (2 * k) // v/2a, 1/mm
	m := loss * 1e-6 / (k * t)   // 1/mm2
	x := r * math.Sqrt(u*u+m)
	return power / (2 * math.Pi * k * t) * math.Exp(-u*xi-x) * besselK0e(x), nil
}

// ThinPeak returns the highest rise that passes at a distance y mm beside a source in thin sheet without
// loss, K: the maximum over xi, found by golden section in the logarithm of the rise, which has one peak.
func ThinPeak(power, travel, t, k, rhoC, y float64) (float64, error) {
	u := travel * rhoC / (2 * k)
	if _, err := RosenthalThin(power, travel, t, k, rhoC, 0, 0, y); err != nil {
		return 0, err
	}
	rise := func(xi float64) float64 {
		x := u * math.Hypot(xi, y)
		return math.Exp(-u*xi-x) * besselK0e(x)
	}
	// The peak lies behind the source, at most about u·y² + y behind.
	const golden = 0.6180339887498949
	lo, hi := -(2*u*y*y + 4*y + 2/u), 0.0
	a, b := hi-golden*(hi-lo), lo+golden*(hi-lo)
	fa, fb := rise(a), rise(b)
	for range 90 {
		if fa > fb {
			hi, b, fb = b, a, fa
			a = hi - golden*(hi-lo)
			fa = rise(a)
		} else {
			lo, a, fa = a, b, fb
			b = lo + golden*(hi-lo)
			fb = rise(b)
		}
	}
	return power / (2 * math.Pi * k * t) * max(fa, fb), nil
}
