package calc

import "math"

// besselK0 returns the modified Bessel function of the second kind of order zero, for x above zero, to
// about 1e-15 relative. Below 2 it is the power series (Abramowitz and Stegun 9.6.13), above it the
// trapezoidal rule on the integral of exp(−x·cosh t), which converges as fast as its step shrinks since
// the integrand dies double-exponentially (9.6.24).
func besselK0(x float64) float64 {
	if x <= 2 {
		return besselSeries(x)
	}
	return math.Exp(-x) * besselScaled(x)
}

// besselK0e returns exp(x)·K0(x), for x above zero: the product with a growing exponential needs no
// infinities.
func besselK0e(x float64) float64 {
	if x <= 2 {
		return math.Exp(x) * besselSeries(x)
	}
	return besselScaled(x)
}

func besselSeries(x float64) float64 {
	const euler = 0.57721566490153286061
	q := x * x / 4
	term, harmonic := 1.0, 0.0
	i0, rest := 1.0, 0.0
	for k := 1.0; k < 40; k++ {
		term *= q / (k * k)
		harmonic += 1 / k
		i0 += term
		rest += term * harmonic
		if term < 1e-18*i0 {
			break
		}
	}
	return rest - (math.Log(x/2)+euler)*i0
}

func besselScaled(x float64) float64 {
	const h = 1.0 / 8
	sum := 0.5
	for i := 1; i < 64; i++ {
		t := float64(i) * h
		s := math.Sinh(t / 2)
		e := math.Exp(-2 * x * s * s) // cosh t − 1 = 2 sinh²(t/2)
		sum += e
		if e < 1e-18*sum {
			break
		}
	}
	return h * sum
}
