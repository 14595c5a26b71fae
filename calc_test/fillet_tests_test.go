package calc_test

import (
	"math"
	"testing"

	"brazebooth/calc/formula"
	"brazebooth/tables"
)

// Ripsch and Henkel 2025, Materials 18(10):2339, Table A1 (read): arc-brazed fillets pulled to failure. Every row
// lies inside the envelope of the two predictive intervals, and F/(a·L) comes out as printed there, rounded.
func TestFilletsLieInTheBands(t *testing.T) {
	_, throatLow, throatHigh, err := formula.Predictive(formula.FilletStress(false))
	if err != nil {
		t.Fatal(err)
	}
	_, bondLow, bondHigh, err := formula.Predictive(formula.FilletStress(true))
	if err != nil {
		t.Fatal(err)
	}
	low, high := min(throatLow, bondLow), max(throatHigh, bondHigh)
	printed := []float64{435, 350, 381, 344, 199, 174, 256, 312}
	for i, row := range tables.FilletTests() {
		stress := row.Force * 1000 / (row.Throat * row.Length)
		check(t, at("row %g", float64(i+1)), stress, printed[i], 0.5)
		check(t, at("row %g in the envelope", float64(i+1)), truth(stress >= low && stress <= high), 1, 0)
	}
}

// Student's t for 2 and 4 degrees of freedom, 4.303 and 2.776 (any table): the intervals' half-widths.
func TestPredictiveBand(t *testing.T) {
	// logarithms 0, 1, 2: mean 1, s 1, n 3: half-width 4.303·√(4/3)
	median, low, high, err := formula.Predictive([]float64{1, 2.718281828459045, 7.38905609893065})
	if err != nil {
		t.Fatal(err)
	}
	check(t, "median", median, 2.718281828, 1e-8)
	check(t, "high over median, as a logarithm", math.Log(high/median), 4.30265*1.154701, 1e-4)
	check(t, "low over median, as a logarithm", math.Log(low/median), -4.30265*1.154701, 1e-4)
}
