package learned

import (
	"math"
	"testing"
)

// Without a verdict the posterior is the prior: 0.84 ± 0.025.
func TestEtaPrior(t *testing.T) {
	e := EfficiencyOf(nil)
	if math.Abs(e.Mean-0.84) > 1e-9 || math.Abs(e.Sigma-0.025) > 2e-4 { // cut off at four deviations
		t.Errorf("%+v", e)
	}
}

// A look with faults that have nothing to do with heat is no verdict.
func TestHeatOf(t *testing.T) {
	for _, x := range [][3]string{{"", "good", "good"}, {"rolled-edge", "bad", "cold"}, {"burn-through", "bad",
		"hot"}, {"pores", "bad", ""}, {"", "bad", ""}, {"crack,crater", "acceptable", ""}} {
		if got := HeatOf(x[0], x[1]); got != x[2] {
			t.Errorf("%v: %q", x, got)
		}
	}
}
