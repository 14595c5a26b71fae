package formula

import "math"

// The peak temperature beside a moving source in thin sheet has a closed form with one parameter. Where the
// rise exp(−uξ)·K0(sr) is greatest along the path, ξ/r = −(u/s)·K0(x)/K1(x) with x = s·r, u = v/2a and s² = u²
// + loss/kt. So x gives both the distance y and the peak there, and either of them gives x.

// peakAt returns, for the parameter x and c = u/s: s·y, and the logarithm of the peak over
// power/(2πkt) with its slope in ln x.
func peakAt(x, c float64) (sy, logPeak, slope float64) {
	k0, k1 := besselK(x)
	rho := k0 / k1
	sy = x * math.Sqrt(1-c*c*rho*rho)
	// exp(−uξ) is exp(c²·x·ρ); −x takes out the factor exp(x) of besselK's results.
	logPeak = c*c*x*rho + math.Log(k0) - x
	slope = x * (c*c*(rho+x*(rho*(rho+1/x)-1)) - 1/rho)
	return sy, logPeak, slope
}

// newton finds the x where f is zero; f must only fall or only grow in ln x, and z is the first ln x. A step is
// at most two units, so that a poor start cannot lead out of range. Each step squares the error, so a step of
// 1e-7 is the last.
func newton(z float64, f func(x float64) (value, slope float64)) float64 {
	for range 100 {
		v, slope := f(math.Exp(z))
		step := max(-2, min(2, v/slope))
		z -= step
		if !(math.Abs(step) >= 1e-7) { // also ends on NaN
			break
		}
	}
	return math.Exp(z)
}

// MovingHalfWidth returns the distance to the side of a moving source within which the peak rise in thin sheet
// is at least rise K, mm: Rosenthal's thin source with loss, exact for a point source and constant properties.
// net J/mm; travel mm/s; t mm; rhoC J/mm3K; k W/mmK; loss of both faces together W/m2K. As travel grows it
// tends to the distance of a line heated at once, which is too large for a slow source or a metal that conducts
// well.
func MovingHalfWidth(net, travel, t, rhoC, k, loss, rise float64) (float64, error) {
	if err := Positive([7]string{"net heat", "travel", "thickness", "heat capacity", "conductivity", "rise"},
		net, travel, t, rhoC, k, rise); err != nil {
		return 0, err
	}
	if !(loss >= 0) || math.IsInf(loss, 1) {
		return 0, Outside("loss", loss, "must be zero or more")
	}
	u := travel * rhoC / (2 * k)
	s := math.Sqrt(u*u + loss*1e-6/(k*t))
	c := u / s
	want := math.Log(rise * 2 * math.Pi * k * t / (net * travel))
	// Far from the source the peak falls as √(π/2x)·exp(−½); near it as K0 itself, whose logarithm is steep.
	start := math.Log(math.Pi/2) - 1 - 2*want
	if want > 0 {
		start = -math.Exp(want) - 1
	}
	x := newton(start, func(x float64) (float64, float64) {
		_, logPeak, slope := peakAt(x, c)
		return logPeak - want, slope
	})
	sy, _, _ := peakAt(x, c)
	if y := sy / s; !math.IsNaN(y) && !math.IsInf(y, 0) {
		return y, nil
	}
	return 0, Outside("rise", rise, "too far from what this heat can do")
}
