package formula

import "math"

// besselK returns exp(x)·K0(x) and exp(x)·K1(x), modified Bessel functions of the second kind, for x above zero, to
// about 1e-14 relative. The exponential is left out so that no argument under- or overflows. Below 1: the power
// series (Abramowitz and Stegun 9.6.13 and 9.6.15). To 16: the trapezoidal rule on the integrals of exp(−x·cosh t)
// and exp(−x·cosh t)·cosh t (9.6.24), which converges at once since the integrand dies double-exponentially. Above:
// the asymptotic series (9.7.2).
func besselK(x float64) (k0, k1 float64) {
	if x < 1 {
		k0, k1 = besselSeries(x)
		e := math.Exp(x)
		return e * k0, e * k1
	}
	if x > 16 {
		root := math.Sqrt(math.Pi / (2 * x))
		return root * asymptotic(0, x), root * asymptotic(4, x)
	}
	if x > 8 {
		return trapezoid(fineCosh[:], 0.1875, x)
	}
	return trapezoid(wideCosh[:], 0.25, x)
}

// trapezoid sums the two integrals over the nodes at h, 2h …; cosh holds cosh t − 1 there. Its error is
// about exp(x − pi²/h) for small x and exp(−2pi²/(x·h²)) for large.
func trapezoid(cosh []float64, h, x float64) (k0, k1 float64) {
	k0, k1 = 0.5, 0.5
	for _, c := range cosh {
		e := math.Exp(-x * c)
		k0 += e
		k1 += e * (1 + c)
		if e < 1e-16 {
			break
		}
	}
	return h * k0, h * k1
}

var (
	wideCosh = nodes(0.25)
	fineCosh = nodes(0.1875)
)

func nodes(h float64) (cosh [18]float64) {
	for i := range cosh {
		s := math.Sinh(float64(i+1) * h / 2)
		cosh[i] = 2 * s * s
	}
	return cosh
}

// asymptotic is the series of 9.7.2 with mu = 4·order², summed while its terms shrink.
func asymptotic(mu, x float64) float64 {
	term, sum := 1.0, 1.0
	for k := 1.0; k < 2*x; k++ {
		odd := 2*k - 1
		term *= (mu - odd*odd) / (8 * k * x)
		sum += term
		if math.Abs(term) < 1e-17 {
			break
		}
	}
	return sum
}

func besselSeries(x float64) (k0, k1 float64) {
	const euler = 0.57721566490153286061
	q := x * x / 4
	logx := math.Log(x/2) + euler
	term, harmonic := 1.0, 0.0 // q^k/(k!)² and 1 + 1/2 + … + 1/k
	i0, rest0 := 1.0, 0.0
	i1, rest1 := 1.0, 1.0 // I1/(x/2), and Σ q^k/(k!(k+1)!)·(h_k + h_{k+1})
	for k := 1.0; k < 30; k++ {
		term *= q / (k * k)
		harmonic += 1 / k
		i0 += term
		rest0 += term * harmonic
		i1 += term / (k + 1)
		rest1 += term / (k + 1) * (2*harmonic + 1/(k+1))
		if term < 1e-18 {
			break
		}
	}
	return rest0 - logx*i0, 1/x + x/2*(logx*i1-rest1/2)
}
