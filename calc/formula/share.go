package formula

import "gonum.org/v1/gonum/stat/distuv"

// ShareBounds is the exact binomial 95 % interval of a share of which k of n were seen: Clopper and Pearson 1934.
func ShareBounds(k, n int) (low, high float64) {
	low, high = 0, 1
	if k > 0 {
		low = distuv.Beta{Alpha: float64(k), Beta: float64(n - k + 1)}.Quantile(0.025)
	}
	if k < n {
		high = distuv.Beta{Alpha: float64(k + 1), Beta: float64(n - k)}.Quantile(0.975)
	}
	return low, high
}
