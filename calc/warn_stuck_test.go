package calc_test

import (
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
)

// A stopped job is told what is wrong with it, and not what to try: one that a hazard stops, and one that its metals
// stop.
func TestAStoppedJobGetsNoRemedy(t *testing.T) {
	judged := map[string]bool{}
	for _, feed := range []float64{0, 3, 9} {
		for _, mm := range []float64{0.8, 1.5, 3} {
			for metal, hazard := range map[string]string{"mild-steel": "pressure", "brass": "", "boron-steel": ""} {
				job := calc.Job{Metal: metal, Thickness: calc.Some(mm), Hazard: hazard}
				if feed > 0 {
					job.Feed, job.Travel = calc.Some(feed), calc.Some(6)
				}
				card := mustSolve(t, job)
				judged[card.Zone] = true
				for _, w := range card.Warnings {
					switch w.Code {
					case "cold", "hot", "burn-through", "no-good-setting":
						if strings.Contains(w.Text, "Try ") || strings.Contains(w.Text, "aster") ||
							strings.Contains(w.Text, "lower wets") {
							t.Errorf("%+v: %q", job, w.Text)
						}
					}
				}
			}
		}
	}
	if !judged["cold"] || !judged["burn-through"] || !judged["hot"] {
		t.Errorf("only %v", judged)
	}
}

// Where no feed and travel is good, a card does not advise another feed or travel. Where the user set one of them, the
// card says so, and another one is a way out.
func TestNoWayOutIsAdvised(t *testing.T) {
	deep.Turn(t)
	stuck := 0
	for _, metal := range []string{"mild-steel", "galvanized", "copper", "stainless-304"} {
		for _, mm := range []float64{0.8, 1, 1.5, 2, 3} {
			for _, mode := range []string{"dip", "pulsed"} {
				card := mustSolve(t, calc.Job{Metal: metal, Thickness: calc.Some(mm), Mode: mode})
				if !card.Warned("no-good-setting") {
					continue
				}
				stuck++
				for _, w := range card.Warnings {
					if text := strings.ToLower(w.Text); w.Code == card.Zone && (strings.Contains(text, "faster") ||
						strings.Contains(text, "slower") || strings.Contains(text, "wire feed")) {
						t.Errorf("%s %g mm %s: %q", metal, mm, mode, w.Text)
					}
				}
			}
		}
	}
	if stuck < 3 {
		t.Errorf("only %d jobs without a good setting", stuck)
	}
	for _, x := range []struct {
		job  calc.Job
		want string
	}{
		{calc.Job{Metal: "mild-steel", Gauge: 18, Feed: calc.Some(9)}, "At this wire feed no travel meets"},
		{calc.Job{Metal: "mild-steel", Gauge: 18, Travel: calc.Some(25)}, "At this travel no wire feed meets"},
		{calc.Job{Metal: "mild-steel", Thickness: calc.Some(3)}, "No feed and travel here meets"},
	} {
		card := mustSolve(t, x.job)
		found := false
		for _, w := range card.Warnings {
			found = found || w.Code == "no-good-setting" && strings.HasPrefix(w.Text, x.want)
		}
		if !found {
			t.Errorf("%+v does not say %q", x.job, x.want)
		}
	}
}
