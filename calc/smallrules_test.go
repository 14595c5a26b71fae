package calc

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"brazebooth/calc/section"
	"brazebooth/tables"
)

// The ranges of a job's numbers: both ends in, a hair beyond them out.
func TestEveryRangeOfAJob(t *testing.T) {
	ends := map[string][2]float64{
		"thickness": {0.05, 150}, "thickness2": {0.05, 150}, "gap": {0, 25}, "wire": {0.4, 3.2}, "feed": {0.3, 40}, "amps": {5, 600}, "volts": {5, 60}, "travel": {0.3, 60},
		"stickout": {3, 50}, "aim": {-10, 10}, "arc_on": {0.02, 10}, "arc_off": {0.02, 20}, "spot_step": {0.1, 50}, "flow": {1, 60}, "preheat": {-40, 700}, "phi": {1, 8}, "phi_sigma": {0.001, 2},
		"volt_factor": {0.5, 2}, "volt_factor_sigma": {0.001, 0.5}, "eta": {0.3, 1}, "eta_sigma": {0.001, 0.2}, "readings": {0, 1e6}, "zinc_limit": {0.5, 100}, "service_temp": {-270, 1500},
		"load": {0, 10000}, "safety": {1, 100}, "leg": {0.2, 50}, "throat": {0.2, 50}, "length": {1, 1e6}, "count": {1, 1e6}, "shaft_dia": {3, 3000}, "layer": {0.2, 100}, "nozzle_bore": {5, 40},
		"rated_amps": {10, 2000}, "rated_duty": {5, 100}, "wire_price": {0, 1e6}, "gas_price": {0, 1e6}, "labour_rate": {0, 1e6}, "steel_price": {0, 1e6}, "grinding": {0, 1000}, "zinc_repair": {0, 1000},
		"operating": {1, 100}, "gauge": {7, 30}, "gauge2": {7, 30},
	}
	for _, s := range spans(&Job{}) {
		want, listed := ends[s.field]
		if low, high, unit, ok := Span(s.field); !listed || !ok || low != want[0] || high != want[1] || unit != s.unit {
			t.Errorf("%s goes from %g to %g %s", s.field, low, high, unit)
		}
	}
	if low, high, unit, ok := Span("colour"); ok || low != 0 || high != 0 || unit != "" {
		t.Errorf("a colour goes from %g to %g %s", low, high, unit)
	}
	for v, good := range map[float64]bool{-10: true, 10: true, -10.01: false, 10.01: false, math.NaN(): false} {
		err := checkNumbers(&Job{Aim: Some(v)})
		var fe *FieldError
		if good != (err == nil) || !good && (!errors.As(err, &fe) || fe.Accept != "type a value from -10 to 10 mm") {
			t.Errorf("an aim of %g: %+v", v, err)
		}
	}
}

func TestShares(t *testing.T) {
	w := []float64{0.1, 0.3}
	if normalize(w); math.Abs(w[0]-0.25) > 1e-15 || math.Abs(w[1]-0.75) > 1e-15 {
		t.Errorf("a tenth and three make %v", w)
	}
	none := []float64{0, 0}
	if normalize(none); none[0] != 0 || none[1] != 0 {
		t.Errorf("nothing is shared as %v", none)
	}
}

// Before any verdict the efficiency is what the table says, and as sure.
func TestNoVerdictsTeachNothing(t *testing.T) {
	e := LearnEta(nil)
	if math.Abs(e.Mean-tables.ArcEfficiency.V) > 1e-9 || math.Abs(e.Sigma/tables.EtaSigma.V-1) > 0.005 || e.Used != 0 { // a grid out to four deviations
		t.Errorf("%+v", e)
	}
}

// A formula that was asked outside its range is told as a setting; any other error stays what it is.
func TestSettingErrors(t *testing.T) {
	other := errors.New("other")
	if err := settingError(other, &Card{}); err != other {
		t.Errorf("%v", err)
	}
	for _, inner := range []error{ErrRange, section.ErrRange} {
		var fe *FieldError
		if err := settingError(fmt.Errorf("%w: too thin", inner), &Card{}); !errors.As(err, &fe) || fe.Field != "feed" {
			t.Errorf("%v", err)
		}
	}
}

// A filler that is liquid where the base begins to melt, or above, is ruled out; on bronze it is only welding.
func TestMeltingRulesOut(t *testing.T) {
	for _, x := range []struct {
		family tables.Family
		room   float64
		out    bool
		score  float64
		says   string
	}{
		{tables.CopperFam, 0, true, -5, "melts first"}, {tables.CopperFam, -1, true, -5, "melts first"}, {tables.CopperFam, 1, false, -1, "only 1 °C of room"}, {tables.CopperFam, 99, false, -1, "only 99 °C"},
		{tables.CopperFam, 100, false, 0.2, "begins to melt"}, {tables.Steel, 500, false, 1, "begins to melt"}, {tables.Steel, 600, false, 1, "begins to melt"}, {tables.Bronze, 0, false, -1, "that is welding"}, {tables.BrassFam, 200, true, -5, "boils off zinc"},
	} {
		c := Card{}
		c.Setup.One = true
		c.Setup.Members[0].Metal = tables.Metal{Family: x.family, Solidus: tables.Datum{V: 1000 + x.room}}
		r := Ranked{}
		r.melting(&c, &tables.Filler{Liquidus: tables.Datum{V: 1000}})
		points := append(append([]Reason{}, r.For...), r.Against...)
		if r.RuledOut != x.out || len(points) != 1 || math.Abs(r.Score-x.score) > 1e-12 || !strings.Contains(points[0].Text, x.says) {
			t.Errorf("%s with %g °C of room: %+v", x.family, x.room, r)
		}
	}
}

// The fillets of Materials 18(10):2339, Table A1, that broke in the throat are the throat's strength, those that let go in the
// bond the bond's, over 2 mm of throat and 100 mm; the throat is no stronger than its metal in shear.
func TestCapacitiesAreTheTests(t *testing.T) {
	p := pageOf(t, Strength, Job{Metal: "mild-steel", Thickness: Some(3), Joint: "tee", Filler: "cual8", Throat: Some(2), Length: Some(100)})
	for name, bond := range map[string]bool{"throat_capacity": false, "bond_capacity": true} {
		var sample []float64
		for _, row := range tables.FilletTests() {
			if row.Bond == bond {
				sample = append(sample, row.Force*1000/(row.Throat*row.Length))
			}
		}
		mid, low, high, err := Predictive(sample)
		if err != nil {
			t.Fatal(err)
		}
		if !bond {
			mid, low = min(mid, mostShear(t, "cual8")), min(low, mostShear(t, "cual8"))
		}
		f, given := value(t, p, name), 2*100/1000.0
		for _, x := range [][2]float64{{f.Value, mid * given}, {f.Low, low * given}, {f.High, max(high, mid) * given}} {
			if math.Abs(x[0]/x[1]-1) > 1e-9 {
				t.Errorf("%s is %g, %g to %g kN; the tests make %g MPa, %g to %g", name, f.Value, f.Low, f.High, mid, low, high)
				break
			}
		}
	}
}

// mostShear is what a filler can bear in shear by its guide strength: over √3.
func mostShear(t *testing.T, id string) float64 {
	t.Helper()
	f, ok := tables.FillerByID(id)
	if !ok {
		t.Fatal(id)
	}
	return f.Tensile.V / math.Sqrt(3)
}

// The warning of a hot bead names the hotter skin.
func TestHotNamesTheHotterSkin(t *testing.T) {
	for _, skin := range [][2]float64{{1530, 900}, {900, 1530}} {
		w, v := warnings{card: &Card{}}, verdict{zone: "hot"}
		v.state.skin = skin
		if w.verdict(&v); len(w.list) != 1 || !strings.Contains(w.list[0].Text, "about 1530 °C") {
			t.Errorf("%v: %+v", skin, w.list)
		}
	}
}

// 9.2 kg are three spools of 10 lb or two of 5 kg, 20 m³ six bottles of 125 ft³ (3.54 m³) or two of 10.6 m³: each whole.
func TestOrderIsWhole(t *testing.T) {
	var p Part
	p.order(Figure{High: 9200}, Figure{High: 20000})
	var said []string
	for _, r := range p.Reasons {
		if what, _, ok := strings.Cut(r.Text, ", "); ok {
			said = append(said, what)
		}
	}
	want := "wire: 3 of 8 in spools; wire: 2 of S200 spools; gas: 6 of 125 ft3 bottles; gas: 2 of 50 L 200 bar bottles"
	if got := strings.Join(said, "; "); got != want {
		t.Errorf("%s\nwant %s", got, want)
	}
}

// A bar that gets its heat and loses none warms in proportion: it passes half of its rise in half of the time.
func TestBarPassesInProportion(t *testing.T) {
	b := Bar{Half: 25, K: 0.045, RhoC: 0.004, Area: 100, Surface: 0.1}
	if err := b.Start(20); err != nil {
		t.Fatal(err)
	}
	// 1000 W for 10 s into 50·100·0.004 = 20 J/K: 500 K.
	if passed := b.Run(10, 1000, 270); math.Abs(passed-5) > 1e-6 || math.Abs(b.Mean()-520) > 1e-6 {
		t.Errorf("270 °C after %g s, %g °C at the end", passed, b.Mean())
	}
	again := Bar{Half: 25, K: 0.045, RhoC: 0.004, Area: 100, Surface: 0.1}
	if err := again.Start(20); err != nil {
		t.Fatal(err)
	}
	if passed := again.Run(10, 1000, 271); math.Abs(passed-5.02) > 1e-6 { // between two steps of 0.05 s
		t.Errorf("271 °C after %g s", passed)
	}
	if passed := again.Run(1, 0, 1000); !math.IsNaN(passed) {
		t.Errorf("cold it passes 1000 °C after %g s", passed)
	}
}

// Only the sheet that bears zinc has a band of it.
func TestZincBandIsItsSheets(t *testing.T) {
	for _, x := range []struct {
		one, two      string
		first, second bool
	}{{"galvanized", "mild-steel", true, false}, {"mild-steel", "galvanized", false, true}, {"galvanized", "galvanized", true, true}, {"mild-steel", "mild-steel", false, false}} {
		c := card(t, Job{Metal: x.one, Metal2: x.two, Gauge: 18, Joint: "lap"})
		f, first := c.Figure("zinc_boiled_halfwidth")
		g, second := c.Figure("zinc_boiled_halfwidth_2")
		if first != x.first || second != x.second || first && !(f.Value > 0) || second && !(g.Value > 0) {
			t.Errorf("%s on %s: %+v, %+v", x.one, x.two, f.Value, g.Value)
		}
	}
}

// A plug in thick sheet holds by its bond: what may hang on it is the low end of that over the safety factor.
func TestPlugHangsByItsBond(t *testing.T) {
	for _, filler := range []string{"cual8", "cusi3"} {
		p := pageOf(t, Strength, Job{Metal: "mild-steel", Thickness: Some(3), Joint: "plug", Feed: Some(5), Filler: filler, Safety: Some(4), Count: Some(2)})
		bond, sheet := value(t, p, "plug_capacity"), value(t, p, "sheet_capacity")
		if bond.Low >= sheet.Low {
			t.Fatalf("the sheet holds %g, the bond %g kN", sheet.Low, bond.Low)
		}
		if v := value(t, p, "allowable_load").Value; v > bond.Low/4 || v < bond.Low/4*0.9 {
			t.Errorf("%s: %g kN allowed of %g", filler, v, bond.Low)
		}
	}
}

// The sheet's own section, R·t·L, at both ends of the strength that its table gives: the weaker sheet's.
func TestSheetCapacityByHand(t *testing.T) {
	p := pageOf(t, Strength, Job{Metal: "mild-steel", Thickness: Some(1.5), Metal2: "mild-steel", Thickness2: Some(1.2), Joint: "lap", Throat: Some(1), Length: Some(50), Feed: Some(5), Travel: Some(9)})
	steel, _ := tables.MetalByID("mild-steel")
	const area = 1.2 * 50 / 1000
	f := value(t, p, "sheet_capacity")
	for _, x := range [][2]float64{{f.Value, steel.Tensile.V * area}, {f.Low, steel.Tensile.Low * area}, {f.High, steel.Tensile.High * area}} {
		if math.Abs(x[0]/x[1]-1) > 1e-9 {
			t.Errorf("%g, by hand %g kN", x[0], x[1])
		}
	}
}

// A wire of 0.9 mm and 8.5 g/cm³ has 0.636173 mm² and 5.40747 g/m: 184.929 m/kg; at 10 m/min 54.0747 g melt in a minute.
func TestWireAlone(t *testing.T) {
	c, err := Wire(Job{Metal: "mild-steel", Gauge: 18, Filler: "cusi3", Wire: Some(0.9), Feed: Some(10)})
	if err != nil {
		t.Fatal(err)
	}
	rho := c.Setup.Filler.Density.V / 8.5
	for name, want := range map[string]float64{"length_per_mass": 184.929 / rho, "melt_rate": 54.0747 * rho} {
		if f, ok := c.Figure(name); !ok || math.Abs(f.Value/want-1) > 1e-5 {
			t.Errorf("%s: %+v, by hand %g", name, f.Value, want)
		}
	}
	still, err := Wire(Job{Metal: "mild-steel", Gauge: 18, Filler: "cusi3", Wire: Some(0.9)})
	if _, melts := still.Figure("melt_rate"); err != nil || melts {
		t.Errorf("a wire that stands melts: %v", err)
	}
	var fe *FieldError
	if got, err := Wire(Job{Metal: "mild-steel", Gauge: 18, Wire: Some(9)}); !errors.As(err, &fe) || len(got.Figures) > 0 {
		t.Errorf("a wire of 9 mm: %+v, %v", got.Figures, err)
	}
}

func TestALoadIsRoundedDownToTwoFigures(t *testing.T) {
	for v, want := range map[float64]float64{4.199: 4.1, 4.2: 4.2, 38.9: 38, 0.0517: 0.051, 10: 10, 999: 990, 0: 0} {
		if got := downTo2(v); math.Abs(got-want) > 1e-12*want {
			t.Errorf("%g kN is shown as %g, not %g", v, got, want)
		}
	}
}
