package formula

import "gonum.org/v1/gonum/mathext"

// ShareBounds is the exact binomial 95 % interval of a share if k of n were seen: Clopper and Pearson 1934.
func ShareBounds(k, n int) (low, high float64) {
	low, high = 0, 1
	if k > 0 {
		low = mathext.InvRegIncBeta(float64(k), float64(n-k+1), 0.025)
	}
	if k < n {
		high = mathext.InvRegIncBeta(float64(k+1), float64(n-k), 0.975)
	}
	return low, high
}
