package calc_test

import (
	"testing"

	"brazebooth/calc/formula"
)

// AWS D1.1 and AISC as restated (read): a plug's hole is at least sheet thickness and 8 mm, at most the larger of 3 mm
// more and 2.25 times its depth.
func TestPlugHole(t *testing.T) {
	least, most := formula.PlugHole(1.5)
	check(t, "least in 1.5 mm", least, 9.5, 1e-12)
	check(t, "most in 1.5 mm", most, 12.5, 1e-12)
	least, most = formula.PlugHole(12)
	check(t, "least in 12 mm", least, 20, 1e-12)
	check(t, "most in 12 mm", most, 27, 1e-12)
}
