package calc

import (
	"math"
	"testing"

	"brazebooth/calc/learned"
	"brazebooth/internal/deep"
	"brazebooth/tables"
)

// Cold beads lower the efficiency and hot ones raise it, where the window would not have them. Good beads in the
// middle teach next to nothing; many of them narrow it, but never below what the section's own uncertainty leaves.
func TestEtaFollowsVerdicts(t *testing.T) {
	if testing.Short() {
		t.Skip("held without -short: nothing here runs side by side but what other tests run too")
	}
	c := card(t, Job{Metal: "mild-steel", Gauge: 18, Joint: "lap"})
	job := c.Used
	repeat := func(heat string, n int) learned.Efficiency {
		list := make([]Verdict, n)
		for i := range list {
			list[i] = Verdict{job, heat}
		}
		return LearnEta(list)
	}
	cold, good, hot := repeat("cold", 5), repeat("good", 5), repeat("hot", 5)
	if !(cold.Mean < good.Mean && good.Mean < hot.Mean) || math.Abs(good.Mean-0.84) > 0.01 {
		t.Errorf("cold %.4f, good %.4f, hot %.4f", cold.Mean, good.Mean, hot.Mean)
	}
	if more := repeat("cold", deep.Many(10, 20)); !(more.Mean < cold.Mean) || more.Sigma > tables.EtaSigma.V {
		t.Errorf("more: %+v, five: %+v", more, cold)
	}
	// With the sum of two normal quantities known, each one's uncertainty is their product over their root sum of
	// squares.
	form := math.Log(tables.SectionRiseEnding.High/tables.SectionRiseEnding.Low) / 4
	eta := tables.EtaSigma.V / 0.84
	most := deep.Many(10, 200)
	if least, left := 0.84*eta*form/math.Hypot(eta, form), repeat("cold", most).Sigma; left < least/2 {
		t.Errorf("%d verdicts leave %.4f, less than the section's uncertainty %.4f", most, left, least)
	}
	if len(cold.Evidence) != 5 || !(cold.Evidence[0].Expected < cold.Evidence[4].Expected) {
		t.Errorf("the first cold bead is the greatest surprise: %+v", cold.Evidence)
	}
}

// The interval holds a booth's true efficiency in most shops.
func TestEtaCovers(t *testing.T) {
	c := card(t, Job{Metal: "galvanized", Gauge: 18, Joint: "lap"})
	for i, truth := range deep.Of(t, []float64{0.80, 0.84, 0.88}, 2) {
		if i > 0 && testing.Short() {
			break
		}
		var list []Verdict
		for _, by := range []float64{0.7, 0.85, 1, 1.15, 1.3} {
			j := c.Used
			j.Travel = Some(c.Used.Travel.V * by)
			zoneAt, ok := zonesBy(j)
			if !ok {
				t.Fatal("not modelled")
			}
			heat := zoneAt(math.Log(truth / 0.84))
			if heat == "burn-through" {
				heat = "hot"
			}
			list = append(list, Verdict{j, heat})
		}
		if e := LearnEta(list); math.Abs(e.Mean-truth) > 2*e.Sigma {
			t.Errorf("truth %.2f, found %.3f ± %.3f", truth, e.Mean, 2*e.Sigma)
		}
	}
}

// The card uses a learned efficiency.
func TestLearnedEtaOnTheCard(t *testing.T) {
	job := Job{Metal: "mild-steel", Gauge: 18, Feed: Some(5.5), Travel: Some(9)}
	a, _ := card(t, job).Figure("net_heat")
	e := learned.Efficiency{Mean: 0.80, Sigma: 0.02, Used: 3}
	job.TakeEfficiency(&e)
	b, _ := card(t, job).Figure("net_heat")
	if math.Abs(b.Value/a.Value-0.80/0.84) > 1e-9 {
		t.Errorf("net heat %g, was %g", b.Value, a.Value)
	}
}
