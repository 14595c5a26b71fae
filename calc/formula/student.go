package formula

import (
	"math"

	"gonum.org/v1/gonum/mathext"
)

// studentsT is the quantile of Student's t distribution, for a probability above one half and so many degrees
// of freedom. Abramowitz and Stegun 26.7.1 (memory medium). It uses mathext only: gonum's package of
// distributions would bring in the linear algebra, a twentieth of the program's build time.
func studentsT(probability, free float64) float64 {
	x := mathext.InvRegIncBeta(free/2, 0.5, 2*(1-probability))
	return math.Sqrt(free * (1 - x) / x)
}

// standardNormal is the cumulative standard normal distribution.
func standardNormal(z float64) float64 { return 0.5 * math.Erfc(-z/math.Sqrt2) }

// meanAndDeviation returns the mean of a sample and the standard deviation of its population, by two passes:
// Chan, Golub and LeVeque 1983, equation 1.7 (memory high).
func meanAndDeviation(sample []float64) (mean, deviation float64) {
	n := float64(len(sample))
	for _, v := range sample {
		mean += v
	}
	mean /= n
	squares, rest := 0.0, 0.0
	for _, v := range sample {
		d := v - mean
		squares += d * d
		rest += d
	}
	return mean, math.Sqrt((squares - rest*rest/n) / (n - 1))
}
