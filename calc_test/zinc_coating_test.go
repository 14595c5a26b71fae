package calc_test

import (
	"testing"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/tables"
)

// ASTM A653/A653M-15 Table 1 (read): triple-spot minimum of both sides and of one side, oz/ft2. One ounce a
// square foot is 305.15 g/m2 (exact: 28.349523125 g over 0.09290304 m2).
func TestA653CoatingMass(t *testing.T) {
	const perOunce = 28.349523125 / 0.09290304
	for _, c := range []struct {
		id         string
		both, side float64
	}{{"G30", 0.30, 0.10}, {"G40", 0.40, 0.12}, {"G60", 0.60, 0.20}, {"G90", 0.90, 0.32}, {"G115", 1.15, 0.40},
		{"A25", 0.25, 0.08}, {"A40", 0.40, 0.12}, {"A60", 0.60, 0.20}} {
		row, ok := tables.Coatings.ByID(c.id)
		if !ok {
			t.Fatal(c.id)
		}
		check(t, c.id+" a side", row.Side.V, c.both*perOunce/2, 0.05)
		check(t, c.id+" least on one", row.Side.Low, c.side*perOunce, 0.05)
	}
}

// GalvInfoNote 1.1 (read): G60 is 92 g/m2 on each side, 60G is 60; MetalForming 2019 (read): G40 is 8.6 um.
func TestSuffixTrap(t *testing.T) {
	total, _ := tables.Coatings.ByID("G60")
	each, _ := tables.Coatings.ByID("60G")
	light, _ := tables.Coatings.ByID("G40")
	check(t, "G60", total.Side.V, 92, 0.5)
	check(t, "60G", each.Side.V, 60, 0.5)
	check(t, "60G most", each.Side.High, 110, 0.5)
	check(t, "G40 um", light.Side.V/tables.ZincDensity.V, 8.6, 0.06)
}

// EN 10346 (memory high): nominal thickness of a side at 7.1 g/cm3, um. Z275 is printed as 20 although
// 137.5/7.1 is 19.4: the standard rounds up, which explains a tolerance of a whole digit.
func TestEN10346Thickness(t *testing.T) {
	for id, um := range map[string]float64{"Z100": 7, "Z140": 10, "Z200": 14, "Z225": 16, "Z275": 20, "Z350": 25,
		"ZF100": 7, "ZF120": 8} {
		row, ok := tables.Coatings.ByID(id)
		if !ok {
			t.Fatal(id)
		}
		check(t, id, row.Side.V/7.1, um, 0.7)
	}
}

// EN 10152 (memory high): electro-zinc, g/m2 a side.
func TestEN10152Mass(t *testing.T) {
	for id, g := range map[string]float64{"ZE25/25": 18, "ZE50/50": 36, "ZE75/75": 54, "ZE100/100": 72} {
		row, _ := tables.Coatings.ByID(id)
		check(t, id, row.Side.V, g, 0.5)
	}
}

// Molar masses of the IUPAC table, Zn 65.38, O 15.999 (memory high); zinc's melting point is a fixed point of
// ITS-90, 419.527 C (memory high).
func TestZincConstants(t *testing.T) {
	check(t, "oxide", tables.ZincOxideRatio.V, (65.38+15.999)/65.38, 0.0005)
	check(t, "melts", tables.ZincMelts.V, 419.527, 0.005)
}

// GalvInfoNote 1.1 (read) prints 1 oz/ft2 as 1.7 mil of zinc in all, which is the thickness of the two facing
// coats of a lap. The vent gap is that; a tenth of a mil is the printed digit of 1.7.
func TestVentGapIsTheTwoCoats(t *testing.T) {
	for id, ounces := range map[string]float64{"G60": 0.60, "G90": 0.90, "G115": 1.15} {
		card, err := calc.Solve(calc.Job{Metal: "galvanized", Gauge: 18, Coating: id, Feed: calc.Some(5),
			Travel: calc.Some(8)})
		if err != nil {
			t.Fatal(err)
		}
		p, err := advice.Prepare(&card)
		if err != nil {
			t.Fatal(err)
		}
		f, _ := p.Figure("vent_gap")
		check(t, id, f.Value/0.0254, 1.7*ounces, 0.05)
	}
}
