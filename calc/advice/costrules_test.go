package advice

import (
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
)

func priced(j calc.Job) calc.Job {
	j.WirePrice, j.GasPrice, j.LabourRate, j.SteelPrice = calc.Some(20), calc.Some(8), calc.Some(50), calc.Some(3)
	j.Grinding, j.ZincRepair = calc.Some(3), calc.Some(2)
	return j
}

// Over metals, thicknesses, feeds and travels: a setting that makes no sound joint has no price, and every
// other has one. The minutes of zinc repair are charged to bronze and steel alike, or to neither.
func TestOnlySoundSettingsHaveAPrice(t *testing.T) {
	var jobs []calc.Job
	for _, metal := range []string{"galvanized", "mild-steel"} {
		for _, mm := range []float64{0.8, 1.5, 2.5} {
			for _, travel := range []float64{4, 8, 14} {
				for _, feed := range []float64{2.5, 5, 8} {
					jobs = append(jobs, calc.Job{Metal: metal, Thickness: calc.Some(mm), Feed: calc.Some(feed),
						Travel: calc.Some(travel)})
				}
			}
		}
	}
	jobs = deep.Of(t, jobs, 5)
	for _, metal := range []string{"galvanized", "mild-steel"} {
		jobs = append(jobs, calc.Job{Metal: metal, Thickness: calc.Some(1.2)})
	}
	shown := 0
	for _, j := range jobs {
		j = priced(j)
		p := pageOf(t, Cost, j)
		total, ok := p.Figure("total_cost")
		if ok != (p.Card.Zone == "good" && failing(&p.Card) == "") {
			t.Errorf("%s %g mm at %g m/min, %g mm/s is %s, priced: %v", j.Metal, j.Thickness.V, j.Feed.V, j.Travel.V,
				p.Card.Zone, ok)
		}
		if !ok {
			continue
		}
		shown++
		steel := value(t, p, "steel_cost")
		j.ZincRepair = calc.Opt{}
		q := pageOf(t, Cost, j)
		more, moreSteel := total.Value-value(t, q, "total_cost").Value, steel.Value-value(t, q, "steel_cost").Value
		want := 0.0
		if j.Metal == "galvanized" {
			want = 2.0 / 60 * 0.3 * 50
		}
		if !near(more, want) || !near(moreSteel, want) {
			t.Errorf("%s %g mm: zinc repair adds %g to bronze and %g to steel, by hand %g", j.Metal, j.Thickness.V,
				more, moreSteel, want)
		}
	}
	if shown < 2 {
		t.Errorf("%d jobs were priced", shown)
	}
}

func near(a, b float64) bool { return a-b < 1e-9 && b-a < 1e-9 }

// The overlay's page also gives wire feed, current and volts, not only pitch and turning speed.
func TestOverlaySaysWhatToSet(t *testing.T) {
	for _, filler := range []string{"cual8", "cusi3", "cusn6"} {
		p := pageOf(t, Overlay, calc.Job{Metal: "mild-steel", Thickness: calc.Some(12), Joint: "overlay",
			Filler: filler, ShaftDia: calc.Some(40)})
		for _, name := range []string{"wire_feed", "current", "volts", "overlay_pitch", "shaft_speed"} {
			if f, ok := p.Figure(name); !ok || !(f.Value > 0) || f.Basis.Formula == "" {
				t.Errorf("%s: %s %+v", filler, name, f)
			}
		}
	}
}
