package formula

import "math"

// besselK returns exp(x)·K0(x) and exp(x)·K1(x), modified Bessel functions of the second kind, for x above zero, to
// about 1e-14 relative. The exponential is left out so that no argument under- or overflows. It is the trapezoidal rule
// on the integrals of exp(−x·cosh t) and exp(−x·cosh t)·cosh t (Abramowitz and Stegun 9.6.24), which converges at once
// since the integrand dies double-exponentially. The step shrinks as the peak at t = 0 does. Below the smallest x the
// logarithm and the pole that the functions tend to are exact enough (9.6.8 and 9.6.9).
func besselK(x float64) (k0, k1 float64) {
	const smallest, euler = 1e-15, 0.57721566490153286061
	if x < smallest {
		return -math.Log(x/2) - euler, 1 / x
	}
	h := 0.25 / math.Sqrt(1+x/8)
	k0, k1 = 0.5, 0.5
	const most = 400 // nodes: some 40 are needed, 160 by the smallest x; without a number none would ever do
	for n := range most {
		s := math.Sinh(float64(n+1) * h / 2)
		e := math.Exp(-2 * x * s * s)
		k0, k1 = k0+e, k1+e*(1+2*s*s)
		if e*(1+2*s*s) < 1e-17*k1 {
			return h * k0, h * k1
		}
	}
	return math.NaN(), math.NaN()
}
