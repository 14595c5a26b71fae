package formula

import (
	"math"

	"gonum.org/v1/gonum/mathext"
)

// ToleranceFactor returns k of the one-sided tolerance bound of a normal sample of n: with this confidence, a
// share of coverage of all values lies above mean − k·s. It is the noncentral t quantile at the confidence,
// with n − 1 degrees of freedom and noncentrality z·√n, over √n (Owen 1963, memory high). n at least 2;
// coverage and confidence between 0.5 and 1.
func ToleranceFactor(n int, coverage, confidence float64) (float64, error) {
	if n < 2 {
		return 0, Outside("sample", float64(n), "at least two values")
	}
	if !(coverage >= 0.5 && coverage < 1 && confidence >= 0.5 && confidence < 1) {
		return 0, Outside("coverage or confidence", coverage, "between 0.5 and 1")
	}
	root := math.Sqrt(float64(n))
	delta := mathext.NormalQuantile(coverage) * root
	low, high := 0.0, 1.0
	for noncentralT(high*root, float64(n-1), delta) < confidence {
		low, high = high, 2*high
	}
	low, high = Bisect(low, high, 50, func(k float64) bool {
		return noncentralT(k*root, float64(n-1), delta) < confidence
	})
	return (low + high) / 2, nil
}

// noncentralT returns the probability that (Z + delta)/U is at most x, with Z standard normal and U the square
// root of chi-square over its nu degrees of freedom: the mean of Φ(x·U − delta) over U, by Simpson's rule. In
// ln U the density is smooth even for one degree of freedom.
func noncentralT(x, nu, delta float64) float64 {
	lg, _ := math.Lgamma(nu / 2)
	density := func(lnU float64) float64 {
		return 2 * math.Exp(nu/2*math.Log(nu/2)-lg+nu*lnU-nu/2*math.Exp(2*lnU))
	}
	const steps = 600
	from, to := -30/nu-1, math.Log(1+9/math.Sqrt(nu))
	sum, h := 0.0, (to-from)/steps
	for i := range steps + 1 {
		weight := 2.0
		switch {
		case i == 0 || i == steps:
			weight = 1
		case i%2 == 1:
			weight = 4
		}
		lnU := from + float64(i)*h
		sum += weight * density(lnU) * standardNormal(x*math.Exp(lnU)-delta)
	}
	return sum * h / 3
}
