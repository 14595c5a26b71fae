package formula

import "math"

// PlugVolume is the metal that fills a hole flush, mm3: π/4·d²·t. d and t in mm.
func PlugVolume(d, t float64) float64 { return math.Pi / 4 * d * d * t }

// RestingRise returns by how much a sheet is hotter after so many seconds under an arc that rests on it, K, at a
// distance from the middle: P/(4π·kt)·(E1(r²/2(σ²+2aτ)) − E1(r²/2σ²)), a = kt/ρct; a Gaussian source on an endless thin
// sheet, no loss from its faces. power W; kt is conductivity times thickness, W/K, and ct heat capacity times
// thickness, J/mm2K, both added over sheets that lie on each other; sigma is the source's standard deviation, mm; away
// mm; seconds s. Source: instantaneous sources summed over time, Carslaw and Jaeger 10.3 (memory high).
func RestingRise(power, kt, ct, sigma, away, seconds float64) (float64, error) {
	names := [4]string{"power", "conductivity", "heat capacity", "arc width"}
	if err := Positive(names, power, kt, ct, sigma); err != nil {
		return 0, err
	}
	if !(away >= 0 && seconds >= 0) || math.IsInf(away, 0) || math.IsInf(seconds, 0) {
		return 0, Outside("place or time", away+seconds, "zero or more")
	}
	near, far := sigma*sigma, sigma*sigma+2*kt/ct*seconds
	if away == 0 {
		return power / (4 * math.Pi * kt) * math.Log(far/near), nil
	}
	return power / (4 * math.Pi * kt) * (expInt(away*away/(2*far)) - expInt(away*away/(2*near))), nil
}

// expInt is the exponential integral E1 of x > 0, to some 1e-12: its series up to 1, Lentz's continued fraction beyond.
func expInt(x float64) float64 {
	const euler = 0.57721566490153286061
	if x > 700 {
		return 0
	}
	if x <= 1 {
		sum, term := -euler-math.Log(x), 1.0
		for n := 1.0; n < 40; n++ {
			term *= -x / n
			sum -= term / n
		}
		return sum
	}
	b, c := x+1, 1e300
	d := 1 / b
	h := d
	for n := 1.0; n < 400; n++ {
		b += 2
		d = 1 / (b - n*n*d)
		c = b - n*n/c
		step := c * d
		h *= step
		if math.Abs(step-1) < 1e-14 {
			break
		}
	}
	return h * math.Exp(-x)
}
