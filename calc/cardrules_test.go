package calc

import (
	"errors"
	"strings"
	"testing"

	"brazebooth/calc/formula"
	"brazebooth/internal/mistake"
	"brazebooth/tables"
)

// A setting that was left open is called good only where settings are judged, and usual elsewhere.
func TestOnlyWhatIsJudgedIsCalledGood(t *testing.T) {
	for _, x := range []struct {
		job  Job
		good bool
	}{
		{Job{Metal: "mild-steel", Gauge: 18, Joint: "lap"}, true}, {Job{Metal: "mild-steel", Gauge: 18,
			Joint: "plug"}, false},
		{Job{Metal: "mild-steel", Gauge: 18, Joint: "butt", Gap: Some(3.7)}, false}, {Job{Metal: "mild-steel",
			Thickness: Some(5), Joint: "butt"}, true},
		{Job{Metal: "mild-steel", Thickness: Some(5), Joint: "butt", Gap: Some(1)}, false},
		{Job{Metal: "mild-steel", Thickness: Some(6), Joint: "lap"}, false},
	} {
		c := card(t, x.job)
		for _, name := range []string{"wire_feed", "travel"} {
			f, ok := c.Figure(name)
			if ok && (f.Suggested() != x.good || f.Usual() == x.good) {
				t.Errorf("%s, zone %s: %s is suggested %v, usual %v", x.job.Joint, c.Zone, name, f.Suggested(),
					f.Usual())
			}
		}
	}
}

// Every preheat that may be typed has a card; warmer than its limit there is no cooling time. Where no setting
// can be found, the hint does not ask to leave out a setting that was not given.
func TestEveryPreheatHasACard(t *testing.T) {
	low, high, _, _ := Span("preheat")
	for _, c := range []float64{low, 20, 300, 301, 499, 500, 550, high} {
		k := card(t, Job{Metal: "mild-steel", Thickness: Some(1.5), Preheat: Some(c)})
		if f, ok := k.Figure("cooling_time"); ok != (c <= tables.CoolingStart.V) || ok && !(f.Value > 0) {
			t.Errorf("%g °C: cooling time %+v, %v", c, f, ok)
		}
	}
	var fe *mistake.Error
	none := Card{}
	given := Card{Job: Job{Feed: Some(5)}}
	if err := settingError(formula.Outside("x", 1, "y"), &none); !errors.As(err, &fe) || strings.Contains(fe.Hint,
		"leave") {
		t.Errorf("%v, %s", err, fe.Hint)
	}
	if err := settingError(formula.Outside("x", 1, "y"), &given); !errors.As(err, &fe) || !strings.Contains(fe.Hint,
		"leave feed") {
		t.Errorf("%v, %s", err, fe.Hint)
	}
}
