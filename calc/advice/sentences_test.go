package advice

import (
	"context"
	"regexp"
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
	"brazebooth/tables"
)

// said are all sentences of a card and its pages.
func said(t *testing.T, j calc.Job, names ...string) (c *calc.Card, list []string) {
	t.Helper()
	c = card(t, j)
	pages, err := Pages(context.Background(), c, names)
	if err != nil {
		t.Fatalf("%+v: %v", j, err)
	}
	for _, w := range c.Warnings {
		list = append(list, w.Text)
	}
	for i := range pages {
		for _, r := range pages[i].Reasons {
			list = append(list, r.Text)
		}
		for _, w := range pages[i].Warnings {
			list = append(list, w.Text)
		}
		list = append(list, pages[i].Instead...)
	}
	return c, list
}

var illWritten = regexp.MustCompile(`\ba (edge|overlay|A\d|[aeio][a-z]+ )|\d[eE][+-]\d|NaN|Inf\b|\d\.\d{5}`)

// No sentence has a number with an exponent or without a value, or an article that does not fit, from tiny jobs to huge
// ones and on every joint.
func TestSentencesAreWellWritten(t *testing.T) {
	if testing.Short() {
		t.Skip("dozens of cards with their pages")
	}
	var jobs []calc.Job
	for _, joint := range tables.Joints {
		for _, size := range []float64{0.4, 1, 5, 40} {
			for _, many := range []float64{1, 30, 1000, 1e5} {
				jobs = append(jobs, calc.Job{Metal: "mild-steel", Joint: joint.ID, Thickness: calc.Some(size),
					Hole: calc.Some(9), Use: "wear", Hazard: "none", Length: calc.Some(10 * many),
					Count: calc.Some(many),
					Load:  calc.Some(min(10000, 0.01*many)), Throat: calc.Some(2), ShaftDia: calc.Some(30 * size),
					Feed: calc.Some(8), Travel: calc.Some(1 + many/5e4), WirePrice: calc.Some(25),
					LabourRate: calc.Some(45), SteelPrice: calc.Some(3), Grinding: calc.Some(4), Currency: "EUR"})
			}
		}
	}
	for _, j := range deep.Of(t, jobs, 14) {
		_, list := said(t, j, "fit", "prepare", "overlay", "passes", "plug", "machine", "strength", "haz", "air",
			"cost")
		for _, text := range list {
			if at := illWritten.FindString(text); at != "" {
				t.Errorf("%s of %g mm, %g mm long: %q in %q", j.Joint, j.Thickness.V, j.Length.V, at, text)
			}
		}
	}
}

// metalPairs are all pairs of a metal with itself and each other, thin and thick, and with every second filler.
func metalPairs() (jobs []calc.Job) {
	for a := range tables.Metals {
		for b := range tables.Metals {
			for _, thick := range [][2]float64{{1, 1}, {1, 2.5}, {2.5, 1}, {5, 5}} {
				jobs = append(jobs, calc.Job{Metal: tables.Metals[a].ID, Metal2: tables.Metals[b].ID,
					Thickness: calc.Some(thick[0]), Thickness2: calc.Some(thick[1]), Hazard: "none",
					Joint:  []string{"lap", "tee", "butt", "plug"}[(a+b)%4],
					Filler: tables.Fillers[(a+2*b)%len(tables.Fillers)].ID, Feed: calc.Some(6), Travel: calc.Some(7),
					ServiceTemp: calc.Some([]float64{20, 300}[(a+b)%2])})
			}
		}
	}
	return jobs
}

// No page tells one thing and the card or another line the opposite: where the arc points, whose limit is the tightest,
// whether the pair may be welded instead.
func TestPairsAreToldOneThing(t *testing.T) {
	deep.Turn(t)
	found := func(list []string, parts ...string) string {
		for _, text := range list {
			for _, part := range parts {
				if strings.Contains(text, part) {
					return text
				}
			}
		}
		return ""
	}
	holds := func(list []string, parts ...string) bool { return found(list, parts...) != "" }
	for _, j := range deep.Of(t, metalPairs(), 40) {
		c, list := said(t, j, "fit", "air", "strength")
		name := j.Metal + " on " + j.Metal2 + " " + j.Joint + " " + j.Filler
		aim := c.Used.Aim.V
		if j.Thickness.V > j.Thickness2.V {
			aim = -aim
		}
		if holds(list, "Point the arc at the thicker member") && aim < calc.LeastAim {
			t.Errorf("%s %g and %g mm: the arc is taken %.2f mm toward the thicker member, and it is to point there",
				name, j.Thickness.V, j.Thickness2.V, aim)
		}
		if holds(list, "Copper fume has the tightest limit here") &&
			holds(list, "chromium(VI)", "the tightest is manganese", "the tightest is nickel") {
			t.Errorf("%s: copper has the tightest limit, and another has", name)
		}
		if weld := found(list, "fusion weld it", "weld it", "Weld it", "or a weld"); weld != "" &&
			holds(list, "bronze joins what fusion would crack") {
			t.Errorf("%s: fusion cracks it, and %q", name, weld)
		}
		if calc.AluminiumWire(j.Filler) && holds(list, "aluminium bronze wire is the safer choice") {
			t.Errorf("%s is told to take an aluminium bronze", name)
		}
	}
}
