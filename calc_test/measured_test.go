package calc_test

import (
	"math"
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/calc/formula"
	"brazebooth/tables"
)

// card solves a job whose figures are compared.
func card(t *testing.T, j calc.Job) *calc.Card {
	t.Helper()
	c, err := calc.Solve(j)
	if err != nil {
		t.Fatal(err)
	}
	return &c
}

// banded returns a card's figure with its band.
func banded(t *testing.T, c *calc.Card, name string) calc.Figure {
	t.Helper()
	f, ok := c.Figure(name)
	if !ok {
		t.Fatalf("the card has no %s", name)
	}
	return f
}

// AWS Welding Handbook, 8th ed. vol. 2, spray of copper-base wires in argon (memory high): current and wire feed.
func TestMeasuredCurrentOfBronze(t *testing.T) {
	for _, c := range []struct {
		filler     string
		wire       float64 // in
		feed, amps float64 // in/min, A
	}{
		{"cusi3", .035, 420, 165}, {"cusi3", .045, 295, 205}, {"cusi3", .0625, 190, 270},
		{"cual8", .035, 295, 160}, {"cual8", .045, 260, 210}, {"cual8", .0625, 185, 280},
		{"cusn1", .035, 345, 180}, {"cusn1", .045, 250, 210}, {"cusn1", .0625, 150, 310},
	} {
		j := calc.Job{Metal: "mild-steel", Thickness: calc.Some(3), Joint: "lap", Filler: c.filler, Mode: "pulsed",
			Wire: calc.Some(c.wire * 25.4), Feed: calc.Some(c.feed * 0.0254), Travel: calc.Some(10)}
		measured(t, measurement{Quantity: "current from wire feed, copper-base wires",
			What: at("%s %g in at %g in/min", c.filler, c.wire, c.feed), Unit: "A", Outside: c.amps,
			Inputs: "spray in argon; stick-out assumed, the handbook gives none; computed in the pulsed mode",
			Source: "AWS Welding Handbook, 8th ed. vol. 2, table of spray of copper alloys", Known: "memory high"},
			banded(t, card(t, j), "current"))
	}
}

// Common practice, no source: steel wire runs at 2, 1.6 and 1.0 in/min an ampere for .030, .035 and .045 in.
func TestMeasuredCurrentOfSteel(t *testing.T) {
	for _, c := range []struct{ wire, rule, low, high float64 }{{.030, 2, 60, 140}, {.035, 1.6, 80, 180}, {.045, 1,
		120, 220}} {
		for amps := c.low; amps <= c.high; amps += (c.high - c.low) / 2 {
			feed := amps * c.rule
			j := calc.Job{Metal: "mild-steel", Thickness: calc.Some(3), Joint: "lap", Filler: "steel", Mode: "dip",
				Wire: calc.Some(c.wire * 25.4), Feed: calc.Some(feed * 0.0254), Travel: calc.Some(10)}
			measured(t, measurement{Quantity: "current from wire feed, steel wire", Unit: "A", Outside: amps,
				What: at("%g in at %g in/min", c.wire, feed), Inputs: "dip; stick-out assumed",
				Source: "rule of thumb of inches per minute an ampere", Known: "practice"},
				banded(t, card(t, j), "current"))
		}
	}
}

// Ripsch and Henkel 2025, Materials 18(10):2339, Table A1 (read): each fillet is compared with the band of the
// others that failed in the same place, because the program's own band comes from all of them.
func TestMeasuredFillets(t *testing.T) {
	for n, row := range tables.FilletTests {
		var others []float64
		for k, o := range tables.FilletTests {
			if k != n && o.Bond == row.Bond {
				others = append(others, o.Force*1000/(o.Throat*o.Length))
			}
		}
		median, low, high, err := formula.Predictive(others)
		if err != nil {
			t.Fatal(err)
		}
		where := map[bool]string{false: "throat", true: "bond"}[row.Bond]
		measured(t, measurement{Quantity: "strength of a fillet, " + where, Unit: "MPa",
			What:    at("row %d: throat %g mm, %g mm long", n+1, row.Throat, row.Length),
			Inputs:  "CuAl7 on S355; force over throat times length; computed from the other rows of the same place",
			Source:  "Ripsch and Henkel 2025, Materials 18(10):2339, Table A1",
			Known:   "read",
			Outside: row.Force * 1000 / (row.Throat * row.Length)}, calc.Figure{Value: median, Low: low, High: high})
	}
}

// spanned compares a table's figure with a range from another source.
func spanned(t *testing.T, quantity, what, inputs, origin, known string, d tables.Datum, low, high float64) {
	t.Helper()
	measured(t, measurement{Quantity: quantity, What: what, Inputs: inputs, Source: origin, Known: known, Unit: d.Unit,
		Outside: math.Sqrt(low * high), Low: low, High: high}, calc.Figure{Value: d.V, Low: d.Low, High: d.High})
}

// Strength of deposits and melting ranges of wires, as their makers and standards print them (memory medium).
func TestMeasuredWires(t *testing.T) {
	si, _ := tables.Fillers.ByID("cusi3")
	al, _ := tables.Fillers.ByID("cual8")
	const strength, melting = "tensile strength of a deposit", "melting range of a wire"
	const guide, printed = "guidance of wire standards on deposits", "melting range as printed with wires"
	spanned(t, strength, "CuSi3", "all of the deposit", guide, "memory medium", si.Tensile, 330, 370)
	spanned(t, strength, "CuAl8", "all of the deposit", guide, "memory medium", al.Tensile, 380, 450)
	spanned(t, melting, "CuSi3 solidus", "equilibrium", printed, "memory medium", si.Solidus, 910, 910)
	spanned(t, melting, "CuSi3 liquidus", "equilibrium", printed, "memory medium", si.Liquidus, 1025, 1035)
	spanned(t, melting, "CuAl8 solidus", "equilibrium", printed, "memory medium", al.Solidus, 1030, 1030)
	spanned(t, melting, "CuAl8 liquidus", "equilibrium", printed, "memory medium", al.Liquidus, 1040, 1040)
}

// The pull along a seam in steel (memory medium): White and Leggatt 0.20 kN for each J/mm, Terasaki 0.235.
func TestMeasuredPull(t *testing.T) {
	s, d := tables.Shrinkers[0], tables.ShrinkageForce
	pull := func(share float64) float64 {
		return must(t)(formula.ShrinkageForce(1, s.Modulus.V, s.Expansion.V, tables.Metals[0].HeatCapacity.V, share))
	}
	f := calc.Figure{Value: pull(d.V), Low: pull(d.Low), High: pull(d.High)}
	for _, c := range []struct {
		author  string
		newtons float64
	}{{"White and Leggatt", 200}, {"Terasaki", 235}} {
		measured(t, measurement{Quantity: "pull of a seam", What: c.author, Inputs: "steel, for each J/mm of net heat",
			Unit: "N", Outside: c.newtons, Source: c.author, Known: "memory medium"}, f)
	}
}

// TRGS 528, table 2 (memory medium): arc brazing of coated sheet gives off 1 to 9 mg/s of particles.
func TestMeasuredFume(t *testing.T) {
	for _, mm := range []float64{0.8, 1, 1.5} {
		for _, coat := range []string{"Z100", "Z275"} {
			c := card(t, calc.Job{Metal: "galvanized", Thickness: calc.Some(mm), Coating: coat, Joint: "lap"})
			p, err := advice.Air(c)
			if err != nil {
				t.Fatal(err)
			}
			f, ok := p.Figure("zinc_oxide_rate")
			if !ok {
				t.Fatal("no zinc to the air")
			}
			const perSecond = 3.6 // g/h in one mg/s
			f.Value, f.Low, f.High = f.Value/perSecond, f.Low/perSecond, f.High/perSecond
			measured(t, measurement{Quantity: "zinc oxide into the air", What: at("lap of %g mm %s", mm, coat),
				Unit:   "mg/s",
				Inputs: "at the suggested setting; the source says nothing of coat, sheet and travel",
				Source: "TRGS 528, table 2", Known: "memory medium", Outside: 3, Low: 1, High: 9}, f)
		}
	}
}

// Where laps broke that were pulled (memory medium): dual-phase sheet in the bronze (Chovet and Guiheux), thin
// galvanized sheet in the sheet (Li 2006).
func TestMeasuredPlaces(t *testing.T) {
	for _, c := range []struct {
		metal, source, seen string
		mm                  float64
	}{{"dp600", "Chovet and Guiheux", "bronze or bond", 1}, {"dp600", "Chovet and Guiheux", "bronze or bond", 1.5},
		{"galvanized", "Li 2006", "sheet", 0.7}, {"galvanized", "Li 2006", "sheet", 1}} {
		p, err := advice.Strength(card(t, calc.Job{Metal: c.metal, Thickness: calc.Some(c.mm), Joint: "lap"}))
		if err != nil {
			t.Fatal(err)
		}
		least, says := 0.0, ""
		for _, f := range p.Figures {
			if name, ok := strings.CutSuffix(f.Name, "_capacity"); ok && (says == "" || f.Value < least) {
				least, says = f.Value, map[bool]string{true: "sheet", false: "bronze or bond"}[name == "sheet"]
			}
		}
		if says == "" {
			t.Fatalf("%s %g mm: no capacity among %v", c.metal, c.mm, p.Figures)
		}
		record.Places = append(record.Places, place{at("lap of %s, %g mm", c.metal, c.mm), c.source, "memory medium",
			c.seen, says})
	}
}
