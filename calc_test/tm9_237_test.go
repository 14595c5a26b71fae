package calc_test

import (
	"testing"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/tables"
)

// US Army TM 9-237, brazing of cast iron (read): bevel 60 to 90°. The preheat of 150 to 200 °F is common
// practice, no source; its conversion is exact.
func TestCastIronPreparation(t *testing.T) {
	card, err := calc.Solve(calc.Job{Metal: "grey-iron", Thickness: calc.Some(8), Joint: "butt"})
	if err != nil {
		t.Fatal(err)
	}
	p, err := advice.Prepare(&card)
	if err != nil {
		t.Fatal(err)
	}
	bevel, _ := p.Figure("bevel")
	check(t, "bevel from, °", bevel.Low, 60, 0)
	check(t, "bevel to, °", bevel.High, 90, 0)
	warm, _ := p.Figure("preheat")
	check(t, "150 °F", warm.Low, (150.0-32)*5/9, 0.5)
	check(t, "200 °F", warm.High, (200.0-32)*5/9, 0.5)
}

// Iron-carbon-silicon diagram (memory medium): grey iron begins to melt near 1130 C.
func TestGreyIronBeginsToMelt(t *testing.T) {
	iron, _ := tables.Metals.ByID("grey-iron")
	check(t, "solidus", iron.Solidus.V, 1130, 5)
	check(t, "care from", tables.IronPeak.V, 1100, 0)
}
