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
	x := r * math.Sqrt(u*u+loss*1e-6/(k*t))
	k0, _ := besselK(x)
	return power / (2 * math.Pi * k * t) * math.Exp(-u*xi-x) * k0, nil
}
