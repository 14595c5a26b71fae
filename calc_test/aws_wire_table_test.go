package calc_test

import (
	"math"
	"testing"

	"brazebooth/calc/formula"
	"brazebooth/tables"
)

// AWS Welding Handbook, 8th ed. vol. 2, gas metal arc: inches of bare wire per pound (memory high for .030 to .062,
// medium outside). The table rounds its densities, hence 1 %, and 1.5 % in the two rows known less well. Its .062 row
// is computed with .0620 in, not 1/16.
//
// The .025 row is left out: all its columns were computed with .0241 in, the size of 0.6 mm wire, and are 6 to
// 7 % off. TestBadRow shows it.
var inchesPerPound = []struct {
	d                     float64 // in
	bronze, steel, copper float64
}{
	{0.020, 10300, 11100, 9800},
	{0.030, 4600, 4960, 4360},
	{0.035, 3380, 3650, 3200},
	{0.045, 2040, 2210, 1940},
	{0.062, 1070, 1160, 1020},
	{0.093, 480, 519, 455},
}

const poundG, inchMM = 453.59237, 25.4

func perPound(d, rho float64) float64 {
	return formula.LengthPerMass(d*inchMM, rho) * poundG / inchMM // m/kg is mm/g
}

func densities(t *testing.T) (bronze, steel, copper float64) {
	t.Helper()
	b, ok1 := tables.Fillers.ByID("cusi3")
	s, ok2 := tables.Fillers.ByID("steel")
	c, ok3 := tables.Metals.ByID("copper")
	if !ok1 || !ok2 || !ok3 {
		t.Fatal("a row is missing")
	}
	return b.Density.V, s.Density.V, c.Density.V
}

func TestAWSWireLength(t *testing.T) {
	bronze, steel, copper := densities(t)
	for _, r := range inchesPerPound {
		within := 0.01
		if r.d < 0.030 || r.d > 0.062 {
			within = 0.015
		}
		check(t, at("silicon bronze %.3f", r.d), perPound(r.d, bronze), r.bronze, within*r.bronze)
		check(t, at("mild steel %.3f", r.d), perPound(r.d, steel), r.steel, within*r.steel)
		check(t, at("copper %.3f", r.d), perPound(r.d, copper), r.copper, within*r.copper)
	}
}

// Why the .025 row is not a check: with .025 in it is more than 5 % off, with .0241 in it fits.
func TestBadRow(t *testing.T) {
	bronze, _, _ := densities(t)
	const printed = 7100
	if got := perPound(0.025, bronze); math.Abs(got-printed) < 0.05*printed {
		t.Errorf(".025 in gives %.0f: the row would be right after all", got)
	}
	check(t, "as .0241", perPound(0.0241, bronze), printed, 0.01*printed)
}
