package calc_test

import (
	"testing"

	"brazebooth/tables"
)

// SMACNA tables after ASTM A924 (read): galvanized nominal is the uncoated gauge plus the same allowance for
// zinc at every number, 0.0037 to 0.0038 in, 2.5 oz/ft2; the range of 16, 20 and 26 gauge as printed.
func TestGalvanizedGauge(t *testing.T) {
	for n := 8; n <= 30; n++ {
		coated, _ := tables.GaugeThickness(n, tables.GSG)
		bare, _ := tables.GaugeThickness(n, tables.MSG)
		check(t, at("%d", n), coated-bare, 0.00375, 0.00011) // both columns are rounded to four decimals
	}
	for _, c := range []struct {
		n         int
		low, high float64
	}{{20, 0.0356, 0.0436}, {16, 0.0575, 0.0695}, {26, 0.0187, 0.0247}} {
		nominal, _ := tables.GaugeThickness(c.n, tables.GSG)
		check(t, at("%d least", c.n), nominal-tables.GaugeTolerance(c.n), c.low, 0.5e-4)
		check(t, at("%d most", c.n), nominal+tables.GaugeTolerance(c.n), c.high, 0.5e-4)
	}
}
