package calc

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"brazebooth/calc/formula"
	"brazebooth/calc/section"
	"brazebooth/internal/mistake"
	"brazebooth/tables"
)

// The ranges of a job's numbers: both ends are accepted, a little beyond them is refused.
func TestEveryRangeOfAJob(t *testing.T) {
	ends := map[string][2]float64{
		"thickness": {0.05, 150}, "thickness2": {0.05, 150}, "gap": {0, 25}, "wire": {0.4, 2.4}, "feed": {0.3, 40},
		"amps": {5, 600}, "volts": {5, 60}, "travel": {0.3, 60},
		"stickout": {3, 50}, "aim": {-10, 10}, "arc_on": {0.02, 10}, "arc_off": {0.02, 20}, "spot_step": {0.1, 50},
		"run_in": {0, 1}, "flow": {1, 60}, "preheat": {-40, 700}, "phi": {1, 8}, "phi_sigma": {0.001, 2},
		"volt_factor": {0.5, 2}, "volt_factor_sigma": {0.001, 0.5}, "eta": {0.3, 1}, "eta_sigma": {0.001, 0.2},
		"readings": {0, 1e6}, "zinc_limit": {0.5, 100}, "service_temp": {-270, 1500},
		"load": {0, 10000}, "safety": {1, 100}, "leg": {0.2, 50}, "throat": {0.2, 50}, "length": {1, 1e6},
		"count": {1, 1e6}, "hole": {1, 100}, "shaft_dia": {3, 3000}, "layer": {0.2, 100}, "nozzle_bore": {5, 40},
		"rated_amps": {10, 2000}, "rated_duty": {5, 100}, "wire_price": {0, 1e6}, "gas_price": {0, 1e6},
		"labour_rate": {0, 1e6}, "steel_price": {0, 1e6}, "grinding": {0, 1000}, "zinc_repair": {0, 1000},
		"operating": {1, 100}, "pulled": {0, 1e6}, "pulled_mean": {-10, 20}, "pulled_sigma": {0, 5}, "part_width": {1,
			1e5}, "part_mass": {0.001, 1e5}, "gauge": {7, 30}, "gauge2": {7, 30},
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
		var fe *mistake.Error
		const hint = "type a value from -10 to 10 mm (-.39 to .39 in)"
		if good != (err == nil) || !good && (!errors.As(err, &fe) || fe.Hint != hint) {
			t.Errorf("an aim of %g: %+v", v, err)
		}
	}
}

// Before any verdict the efficiency and its uncertainty are the table's.
func TestNoVerdictsTeachNothing(t *testing.T) {
	e := LearnEta(nil)
	// a grid out to four deviations
	if math.Abs(e.Mean-tables.ArcEfficiency.V) > 1e-9 || math.Abs(e.Sigma/tables.EtaSigma.V-1) > 0.005 || e.Used != 0 {
		t.Errorf("%+v", e)
	}
}

// A formula asked outside its range is reported as a setting; any other error stays what it is.
func TestSettingErrors(t *testing.T) {
	other := errors.New("other")
	if err := settingError(other, &Card{}); err != other {
		t.Errorf("%v", err)
	}
	for _, inner := range []error{formula.ErrRange, section.ErrRange} {
		var fe *mistake.Error
		if err := settingError(fmt.Errorf("%w: too thin", inner), &Card{}); !errors.As(err, &fe) || fe.Field != "feed" {
			t.Errorf("%v", err)
		}
	}
}

// The warning of a hot bead names the hotter skin.
func TestHotNamesTheHotterSkin(t *testing.T) {
	for _, skin := range [][2]float64{{1530, 900}, {900, 1530}} {
		w, v := warnings{card: &Card{}}, verdict{zone: "hot"}
		v.state.skin = skin
		if w.verdict(&suggestion{}, &v, &warmUp{}); len(w.list) != 1 ||
			!strings.Contains(w.list[0].Text, "about 1530 °C") {
			t.Errorf("%v: %+v", skin, w.list)
		}
	}
}

// Only the sheet that has zinc has a zinc band.
func TestZincBandIsItsSheets(t *testing.T) {
	for _, x := range []struct {
		one, two      string
		first, second bool
	}{{"galvanized", "mild-steel", true, false}, {"mild-steel", "galvanized", false, true}, {"galvanized",
		"galvanized", true, true}, {"mild-steel", "mild-steel", false, false}} {
		c := card(t, Job{Metal: x.one, Metal2: x.two, Gauge: 18, Joint: "lap"})
		f, first := c.Figure("zinc_boiled_halfwidth")
		g, second := c.Figure("zinc_boiled_halfwidth_2")
		if first != x.first || second != x.second || first && !(f.Value > 0) || second && !(g.Value > 0) {
			t.Errorf("%s on %s: %+v, %+v", x.one, x.two, f.Value, g.Value)
		}
	}
}

// A wire of 0.9 mm and 8.5 g/cm³ has 0.636173 mm² and 5.40747 g/m: 184.929 m/kg; at 10 m/min 54.0747 g melt in a
// minute.
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
	var fe *mistake.Error
	if got, err := Wire(Job{Metal: "mild-steel", Gauge: 18, Wire: Some(9)}); !errors.As(err, &fe) ||
		len(got.Figures) > 0 {
		t.Errorf("a wire of 9 mm: %+v, %v", got.Figures, err)
	}
}
