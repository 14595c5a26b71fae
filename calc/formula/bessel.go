package formula

import "math"

// besselK returns exp(x)·K0(x) and exp(x)·K1(x), modified Bessel functions of the second kind, for x above
// zero, to about 1e-14 relative. With the factor exp(x) no result underflows.
func besselK(x float64) (k0, k1 float64) {
	if x < besselNear {
		return besselSeries(x)
	}
	return besselIntegral(x)
}

const besselNear = 2.0

// besselSeries is for x up to besselNear: the ascending series, Abramowitz and Stegun 9.6.13 and 9.6.11. Its
// last term is below 1e-18.
func besselSeries(x float64) (k0, k1 float64) {
	const euler = 0.57721566490153286061
	q := x * x / 4
	ln := math.Log(x/2) + euler
	i0, i1, s0, s1 := 0.0, 0.0, 0.0, 0.0
	term, harmonic := 1.0, 0.0 // q^k/k!² and 1 + 1/2 + … + 1/k
	for k := range 14 {
		n := float64(k + 1)
		i0 += term
		s0 += term * harmonic
		i1 += term / n
		s1 += term / n * (2*harmonic + 1/n)
		harmonic += 1 / n
		term *= q / (n * n)
	}
	k0 = s0 - ln*i0
	k1 = 1/x + x/2*(ln*i1-s1/2)
	e := math.Exp(x)
	return k0 * e, k1 * e
}

// The nodes of besselIntegral: e^(−s²) at even steps of s, until it vanishes.
const besselStep = 0.33

var besselNodes = func() (list [20]struct{ square, weight float64 }) {
	for i := range list {
		s := float64(i) * besselStep
		list[i].square, list[i].weight = s*s, math.Exp(-s*s)
	}
	list[0].weight /= 2
	return list
}()

// besselIntegral is for x from besselNear on: the integrals of exp(−x·cosh t) and exp(−x·cosh t)·cosh t
// (Abramowitz and Stegun 9.6.24) with s² = x·(cosh t − 1) in place of t, by the trapezoidal rule. The integrand
// is a Gaussian over a root whose pole is √(2x) from the axis, so the rule's error is at most
// exp(−2π·√(2x)/step), 1e-16.
func besselIntegral(x float64) (k0, k1 float64) {
	inverse := 1 / x
	for i := range besselNodes {
		n := &besselNodes[i]
		r := n.square * inverse
		w := n.weight / math.Sqrt(1+r/2)
		k0 += w
		k1 += w * (1 + r)
	}
	scale := besselStep * math.Sqrt(2*inverse)
	return scale * k0, scale * k1
}
