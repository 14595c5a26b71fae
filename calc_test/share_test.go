package calc_test

import (
	"testing"

	"brazebooth/calc/formula"
)

// Exact binomial limits at 95 % (any table, memory high): 5 of 10 are 0.187 to 0.813, 0 of 3 up to 0.708, 3 of 3 from
// 0.292.
func TestExactBinomialLimits(t *testing.T) {
	for _, c := range []struct {
		seen, of  int
		low, high float64
	}{{5, 10, 0.187, 0.813}, {0, 3, 0, 0.708}, {3, 3, 0.292, 1}} {
		low, high := formula.ShareBounds(c.seen, c.of)
		check(t, at("%d of %d, from", c.seen, c.of), low, c.low, 0.0005)
		check(t, at("%d of %d, to", c.seen, c.of), high, c.high, 0.0005)
	}
}
