package advice

import (
	"brazebooth/calc"
	"brazebooth/calc/formula"
	"brazebooth/tables"
	"math"
	"slices"
	"strings"
	"testing"
)

// wirePerMetre needs both the deposition rate and the travel speed.
func TestWireNeedsRateAndTravel(t *testing.T) {
	whole := card(t, calc.Job{Metal: "mild-steel", Thickness: calc.Some(1), Joint: "lap", Feed: calc.Some(5),
		Travel: calc.Some(8)})
	if g, ok := wirePerMetre(whole); !ok || !(g > 0) {
		t.Fatalf("%g g, %v", g, ok)
	}
	for _, name := range []string{"deposition_rate", "travel"} {
		c := *whole
		c.Figures = nil
		for _, f := range whole.Figures {
			if f.Name != name {
				c.Figures = append(c.Figures, f)
			}
		}
		if g, ok := wirePerMetre(&c); ok {
			t.Errorf("without %s: %g g", name, g)
		}
	}
}

// A filler whose liquidus is at or above the base's solidus is ruled out, except on bronze, where it is
// welding.
func TestMeltingRulesOut(t *testing.T) {
	for _, x := range []struct {
		family tables.Family
		room   float64
		out    bool
		score  float64
		says   string
	}{
		{tables.CopperFam, 0, true, -5, "melts first"}, {tables.CopperFam, -1, true, -5, "melts first"},
		{tables.CopperFam, 1, false, -1, "only 1 K of room"}, {tables.CopperFam, 99, false, -1, "only 99 K"},
		{tables.CopperFam, 100, false, 0.2, "begins to melt"}, {tables.Steel, 500, false, 1, "begins to melt"},
		{tables.Steel, 600, false, 1, "begins to melt"}, {tables.Bronze, 0, false, -1, "that is welding"},
		{tables.BrassFam, 200, true, -5, "boils off zinc"},
	} {
		c := calc.Card{}
		c.Setup.One = true
		c.Setup.Members[0].Metal = tables.Metal{Family: x.family, Solidus: tables.Datum{V: 1000 + x.room}}
		r := Ranked{}
		f := tables.Filler{Liquidus: tables.Datum{V: 1000}}
		r.melting(&c, &f)
		points := append(append([]Reason{}, r.For...), r.Against...)
		if calc.RuledOut(&f, &c) != x.out || len(points) != 1 || math.Abs(r.Score-x.score) > 1e-12 ||
			!strings.Contains(points[0].Text, x.says) {
			t.Errorf("%s with %g °C of room: %+v", x.family, x.room, r)
		}
	}
}

// 9.2 kg are three spools of 10 lb or two of 5 kg; 20 m³ are six bottles of 125 ft³ (3.54 m³) or two of 10.6
// m³. Only whole ones are ordered.
func TestOrdersAreWholeSpoolsAndBottles(t *testing.T) {
	var p Page
	p.order(calc.Figure{High: 9200}, calc.Figure{High: 20000})
	var said []string
	for _, r := range p.Reasons {
		said = append(said, r.Text)
	}
	want := "to order, wire in 8 in spools (4.54 kg as sold in steel): 3; or wire in S200 spools (5 kg as sold in " +
		"steel): 2; to order, gas in bottles of 125 ft³ (3.54 m³): 6; or gas in 50 L 200 bar bottles (10.6 m³): 2"
	if got := strings.Join(said, "; "); got != want {
		t.Errorf("%s\nwant %s", got, want)
	}
}

// In thick sheet the bond limits a plug: the allowable load is the bond's low end over the safety factor.
func TestBondLimitsAPlugInThickSheet(t *testing.T) {
	for _, filler := range []string{"cual8", "cusi3"} {
		p := pageOf(t, Strength, calc.Job{Metal: "mild-steel", Thickness: calc.Some(3), Joint: "plug",
			Hole: calc.Some(10), Feed: calc.Some(5), Filler: filler, Safety: calc.Some(4), Count: calc.Some(2)})
		bond, sheet := value(t, p, "plug_capacity"), value(t, p, "sheet_capacity")
		if bond.Low >= sheet.Low {
			t.Fatalf("the sheet holds %g, the bond %g kN", sheet.Low, bond.Low)
		}
		if v := value(t, p, "allowable_load").Value; v > bond.Low/4 || v < bond.Low/4*0.9 {
			t.Errorf("%s: %g kN allowed of %g", filler, v, bond.Low)
		}
	}
}

// The section of the weaker sheet, R·t·L, at the middle and both ends of its table's strength.
func TestSheetCapacityByHand(t *testing.T) {
	p := pageOf(t, Strength, calc.Job{Metal: "mild-steel", Thickness: calc.Some(1.5), Metal2: "mild-steel",
		Thickness2: calc.Some(1.2), Joint: "lap", Throat: calc.Some(1), Length: calc.Some(50), Feed: calc.Some(5),
		Travel: calc.Some(9)})
	steel, _ := tables.Metals.ByID("mild-steel")
	const area = 1.2 * 50 / 1000
	f := value(t, p, "sheet_capacity")
	for _, x := range [][2]float64{{f.Value, steel.Tensile.V * area}, {f.Low, steel.Tensile.Low * area}, {f.High,
		steel.Tensile.High * area}} {
		if math.Abs(x[0]/x[1]-1) > 1e-9 {
			t.Errorf("%g, by hand %g kN", x[0], x[1])
		}
	}
}

func TestALoadIsRoundedDownToTwoFigures(t *testing.T) {
	for v, want := range map[float64]float64{4.199: 4.1, 4.2: 4.2, 38.9: 38, 0.0517: 0.051, 10: 10, 999: 990, 0: 0} {
		if got := downTo2(v); math.Abs(got-want) > 1e-12*want {
			t.Errorf("%g kN is shown as %g, not %g", v, got, want)
		}
	}
}

// The fillets of Materials 18(10):2339, Table A1, that broke in the throat give the strength of the throat,
// those that failed in the bond that of the bond, here for a throat of 2 mm and a length of 100 mm. The low
// edge of the throat is at most its metal's strength in shear.
func TestCapacitiesComeFromTheTests(t *testing.T) {
	p := pageOf(t, Strength, calc.Job{Metal: "mild-steel", Thickness: calc.Some(3), Joint: "tee", Filler: "cual8",
		Throat: calc.Some(2), Length: calc.Some(100)})
	for name, bond := range map[string]bool{"throat_capacity": false, "bond_capacity": true} {
		var sample []float64
		for _, row := range tables.FilletTests {
			if row.Bond == bond {
				sample = append(sample, row.Force*1000/(row.Throat*row.Length))
			}
		}
		mid, low, high, err := formula.Predictive(sample)
		if err != nil {
			t.Fatal(err)
		}
		if !bond {
			low = min(low, mostShear(t, "cual8"))
		}
		f, given := value(t, p, name), 2*100/1000.0
		for _, x := range [][2]float64{{f.Value, mid * given}, {f.Low, low * given}, {f.High, high * given}} {
			if math.Abs(x[0]/x[1]-1) > 1e-9 {
				t.Errorf("%s is %g, %g to %g kN; the tests make %g MPa, %g to %g", name, f.Value, f.Low, f.High, mid,
					low, high)
				break
			}
		}
	}
}

// mostShear is the shear strength of a filler by its guide strength: that over √3.
func mostShear(t *testing.T, id string) float64 {
	t.Helper()
	f, ok := tables.Fillers.ByID(id)
	if !ok {
		t.Fatal(id)
	}
	return f.Tensile.V / math.Sqrt(3)
}

// The duty at a current needs both figures of the rating plate.
func TestDutyNeedsThePlate(t *testing.T) {
	job := calc.Job{Metal: "mild-steel", Gauge: 16, Joint: "lap", Feed: calc.Some(5), Travel: calc.Some(6)}
	for _, x := range []struct {
		amps, duty calc.Opt
		want       bool
	}{{calc.Some(180), calc.Some(30), true}, {calc.Some(180), calc.Opt{}, false}, {calc.Opt{}, calc.Some(30), false}} {
		job.RatedAmps, job.RatedDuty = x.amps, x.duty
		if _, ok := pageOf(t, Machine, job).Figure("duty_cycle"); ok != x.want {
			t.Errorf("%v A, %v %%: a duty %v", x.amps, x.duty, ok)
		}
	}
}

// A filler with which an edge is missed by far is not ranked like one without a judged setting: it has a point against
// it, as one that misses by a few per cent has. An overlay's page says that an edge is missed by far too.
func TestMissedByFarCountsAgainst(t *testing.T) {
	open := card(t, calc.Job{Metal: "mild-steel", Gauge: 16, Joint: "butt", Gap: calc.Some(2)})
	strip := card(t, calc.Job{Metal: "mild-steel", Thickness: calc.Some(6), Joint: "overlay", Filler: "cumn13al8",
		Feed: calc.Some(7), Travel: calc.Some(7), Layer: calc.Some(4), Length: calc.Some(80)})
	for _, c := range []*calc.Card{open, strip} {
		if _, near := c.Figure("margin"); near || c.Met() {
			t.Fatalf("%+v is not missed by far: %+v", c.Job, c.Edges)
		}
	}
	r := Ranked{ID: open.Used.Filler}
	r.room(t.Context(), open)
	against := func(r Reason) bool { return strings.Contains(r.Text, "no setting that a hand can hold") }
	if !slices.ContainsFunc(r.Against, against) || r.Margin != nil {
		t.Errorf("%+v", r)
	}
	var p Page
	p.dilution(strip)
	if text := p.Reasons[0].Text; !strings.Contains(text, "another edge is not met") {
		t.Errorf("%s: %q", strip.Zone, text)
	}
}
