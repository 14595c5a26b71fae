package calc_test

import (
	"testing"

	"brazebooth/calc"
	"brazebooth/calc/advice"
)

// Two media in contact share heat in the ratio of their effusivities √(kρc) (Carslaw and Jaeger, 2.15;
// Incropera and DeWitt 5.7, memory high). The plates of a joint draw heat in the ratio of effusivity times
// thickness times arms; worked by hand from the rows: mild steel √(0.040·0.0052) = 0.014422, stainless
// √(0.021·0.0042) = 0.0093915.
func TestHeatSplitsByEffusivity(t *testing.T) {
	share := func(j calc.Job) float64 {
		t.Helper()
		j.Feed, j.Travel = calc.Some(5), calc.Some(8)
		card, err := calc.Solve(j)
		if err != nil {
			t.Fatal(err)
		}
		p, err := advice.Fillers(t.Context(), &card)
		if err != nil {
			t.Fatal(err)
		}
		f, ok := p.Figure("heat_share_1")
		if !ok {
			t.Fatal("no share")
		}
		return f.Value
	}
	check(t, "steel and stainless of 2 mm, butt", share(calc.Job{Metal: "mild-steel", Thickness: calc.Some(2),
		Metal2: "stainless-304", Thickness2: calc.Some(2), Joint: "butt"}), 100*0.014422/(0.014422+0.0093915), 0.01)
	check(t, "one steel, lap: one arm above, two below", share(calc.Job{Metal: "mild-steel", Thickness: calc.Some(1),
		Joint: "lap"}), 100.0/3, 0.01)
	check(t, "one steel, tee of 2 on 1 mm", share(calc.Job{Metal: "mild-steel", Thickness: calc.Some(2),
		Thickness2: calc.Some(1), Joint: "tee"}), 50, 0.01)
}
