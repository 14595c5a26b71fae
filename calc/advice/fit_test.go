package advice

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/mistake"
	"brazebooth/tables"
)

func TestFitVerdicts(t *testing.T) {
	sheet := calc.Job{Metal: "galvanized", Gauge: 20, Feed: calc.Some(4.1), Travel: calc.Some(8), Hazard: "none",
		Use: "decorative"}
	with := func(alter func(*calc.Job)) calc.Job { j := sheet; alter(&j); return j }
	for name, c := range map[string]struct {
		job  calc.Job
		want string
	}{
		"thin coated sheet":    {sheet, Suits},
		"nothing answered":     {with(func(j *calc.Job) { j.Hazard = "" }), WithCare},
		"a gutter":             {with(func(j *calc.Job) { j.Use = "seal" }), WithCare},
		"a used oil drum":      {with(func(j *calc.Job) { j.Hazard = "coated,sealed,tank" }), StopWork},
		"brass plate":          {with(func(j *calc.Job) { j.Metal, j.Coating = "brass", "" }), StopWork},
		"press-hardened steel": {with(func(j *calc.Job) { j.Metal, j.Coating = "boron-steel", "" }), StopWork},
		"zinc onto stainless": {with(func(j *calc.Job) { j.Metal2, j.Thickness2 = "stainless-304", calc.Some(1) }),
			StopWork},
		"a hot flue":      {with(func(j *calc.Job) { j.ServiceTemp = calc.Some(350) }), AnotherWay},
		"a load too many": {with(func(j *calc.Job) { j.Load = calc.Some(500) }), AnotherWay},
		"a load it bears": {with(func(j *calc.Job) { j.Load = calc.Some(0.01) }), WithCare},
		"6 mm plate": {with(func(j *calc.Job) {
			j.Metal, j.Coating, j.Gauge, j.Thickness, j.Use = "mild-steel", "none", 0, calc.Some(6), "load"
		}), AnotherWay},
		"an iron stove leg of 8 mm": {with(func(j *calc.Job) {
			j.Metal, j.Coating, j.Gauge, j.Thickness = "grey-iron",
				"none", 0, calc.Some(8)
		}), WithCare},
		"a worn shaft": {with(func(j *calc.Job) {
			j.Metal, j.Coating, j.Gauge, j.Thickness, j.Joint, j.Filler, j.Use, j.Feed, j.Travel = "mild-steel",
				"none", 0, calc.Some(12), "overlay", "cual8", "bearing", calc.Some(7.0), calc.Some(9)
		}), ""},
	} {
		p := pageOf(t, Fit, c.job)
		if c.want != "" && p.Verdict != c.want {
			t.Errorf("%s: %q, want %q: %+v", name, p.Verdict, c.want, p.Reasons)
		}
		if p.Verdict == StopWork && len(p.Instead) == 0 || p.Verdict == AnotherWay && len(p.Instead) == 0 {
			t.Errorf("%s: %s and nothing instead", name, p.Verdict)
		}
		for i, r := range p.Reasons {
			if r.Known == "" || r.Source == "" || i > 0 && r.Weight > p.Reasons[i-1].Weight {
				t.Errorf("%s: reason %d %+v", name, i, r)
			}
		}
	}
}

func TestHazardIDs(t *testing.T) {
	for text, want := range map[string]string{"none": "none", "Used-Container": "tank", "oil drum": "tank",
		"lead, cadmium": "cadmium,lead-paint,leaded-bronze", "vehicle vehicle": "vehicle", "crash": "vehicle"} {
		if got, err := calc.HazardIDs(text); err != nil || got != want {
			t.Errorf("%q: %q, %v", text, got, err)
		}
	}
	var fe *mistake.Error
	for _, text := range []string{"", ",", "dragons", "none,lead", "\x1b[31m"} {
		if got, err := calc.HazardIDs(text); !errors.As(err, &fe) || fe.Hint == "" {
			t.Errorf("%q: %q, %v", text, got, err)
		}
	}
}

// Each id that the card's JSON shows can be typed.
func TestHazardIDsCanBeTyped(t *testing.T) {
	for _, h := range tables.Hazards {
		if got, err := calc.HazardIDs(h.ID); err != nil || got != h.ID {
			t.Errorf("%s: %q, %v", h.ID, got, err)
		}
	}
}

// The thickness that the page judges is the card's, or the page says that the coat was taken off.
func TestFitNamesTheCoat(t *testing.T) {
	for metal, want := range map[string]string{"galvanized": "0.98 mm of metal (1.006 mm less its coat) lies in " +
		"the range", "mild-steel": "0.91 mm lies in the range"} {
		p := pageOf(t, Fit, calc.Job{Metal: metal, Gauge: 20, Feed: calc.Some(4.1), Travel: calc.Some(8)})
		if !slices.ContainsFunc(p.Reasons, func(r Reason) bool { return strings.HasPrefix(r.Text, want) }) {
			t.Errorf("%s: %+v", metal, p.Reasons)
		}
	}
}
