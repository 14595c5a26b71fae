package calc_test

import (
	"context"
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/internal/deep"
	"brazebooth/tables"
)

// The basis shown of a figure gives that figure, whatever the job: the test computes its formula with the inputs shown
// beside it.
func TestFormulasGiveTheirFigures(t *testing.T) {
	if testing.Short() {
		t.Skip("every joint, mode and filler on every page")
	}
	var jobs []calc.Job
	fillers := tables.Fillers
	for i, joint := range [...]string{"lap", "butt", "tee", "corner", "edge", "plug", "overlay"} {
		for k, mode := range [...]string{"dip", "pulsed", "timed"} {
			for n, j := range formulaJobs() {
				j.Joint, j.Mode, j.Filler = joint, mode, fillers[(i+2*k+5*n)%len(fillers)].ID
				jobs = append(jobs, j)
			}
		}
	}
	for _, j := range deep.Of(t, jobs, 3) {
		checkFormulas(t, j)
	}
	for _, f := range deep.Of(t, fillers, 2) {
		checkFormulas(t, calc.Job{Metal: "mild-steel", Gauge: 16, Filler: f.ID})
	}
}

// formulaJobs differ in what was given: nothing, amps, feed and travel, readings, times.
func formulaJobs() []calc.Job {
	o := calc.Some
	list := []calc.Job{
		{Metal: "galvanized", Gauge: 18},
		{Metal: "mild-steel", Gauge: 16, Gap: o(2), Amps: o(90), ArcOn: o(0.4), ArcOff: o(0.9)},
		{Metal: "mild-steel", Thickness: o(8), Feed: o(6), Travel: o(5), Leg: o(4)},
		{Metal: "stainless-304", Metal2: "copper", Gauge: 18, Thickness2: o(1.5), Volts: o(18), Phi: o(4),
			PhiSigma: o(0.2), Preheat: o(150), SpotStep: o(3), Throat: o(2)},
		{Metal: "galvanized", Metal2: "mild-steel", Gauge: 20, VoltFactor: o(1.1), VoltFactorSigma: o(0.03),
			Eta: o(0.8), StickOut: o(14), Amps: o(60)},
	}
	for i := range list {
		j := &list[i]
		j.RatedAmps, j.RatedDuty, j.NozzleBore, j.Flow = o(180), o(30), o(12), o(15)
		j.Load, j.Length, j.Count = o(2), o(20000), o(3)
		if i != 0 {
			j.WirePrice, j.LabourRate, j.SteelPrice, j.Grinding = o(20), o(60), o(3), o(2)
		}
		if i != 1 {
			j.GasPrice, j.ZincRepair, j.Layer = o(8), o(3), o(3)
		}
		if i > 1 {
			j.ShaftDia = o(40)
		}
	}
	return list
}

// The same for odd jobs, without the page of fillers, which takes too long: it has a card for each filler.
func TestFormulasGiveTheirFiguresOfAnyJob(t *testing.T) {
	if testing.Short() {
		t.Skip("the jobs of the other test are the likely ones")
	}
	rapid.Check(t, func(r *rapid.T) { checkFormulas(r, anyJob().Draw(r, "job"), "filler") })
}

func TestFormulasGiveTheTimesOfASpot(t *testing.T) {
	deep.Turn(t)
	o := calc.Some
	for _, j := range deep.Of(t, []calc.Job{
		{Metal: "mild-steel", Gauge: 18, Joint: "butt", Gap: o(1), ArcOn: o(0.5), Feed: o(5), Length: o(250)},
		{Metal: "galvanized", Gauge: 18, Joint: "lap"},
		{Metal: "mild-steel", Gauge: 16, Joint: "butt", Gap: o(2)}, // whose times other tests ask for too
	}, 2) {
		s, err := calc.SolveTimed(context.Background(), j, nil)
		if err != nil {
			t.Fatal(err)
		}
		where := fmt.Sprintf("spots of %+v", j)
		checkReasons(t, where, s.Figures)
		checkReasons(t, where, s.Card.Figures)
		if testing.Short() {
			return
		}
	}
}

// errorer is a test of either kind.
type errorer interface {
	Helper()
	Errorf(format string, args ...any)
}

// checkFormulas compares card, wire and every page of a job, but those besides, with their formulas; a job that cannot
// be computed passes.
func checkFormulas(t errorer, j calc.Job, besides ...string) {
	t.Helper()
	text, _ := json.Marshal(j)
	where := string(text)
	if wire, err := calc.Wire(j); err == nil {
		checkReasons(t, "wire of "+where, wire.Figures)
	}
	card, err := calc.Solve(j)
	if err != nil {
		return
	}
	checkReasons(t, "card of "+where, card.Figures)
	for _, page := range advice.Contents() {
		if page.Of == nil || slices.Contains(besides, page.Name) {
			continue
		}
		if part, err := page.Of(context.Background(), &card); err == nil {
			checkReasons(t, page.Name+" of "+where, part.Figures)
		}
	}
}

func checkReasons(t errorer, where string, list []calc.Figure) {
	t.Helper()
	for _, f := range list {
		b := &f.Basis
		for _, piece := range strings.Split(b.Formula, "{")[1:] {
			if symbol, _, _ := strings.Cut(piece, "}"); !hasSymbol(b.Inputs, symbol) {
				t.Errorf("%s: nothing is put in for %s in %q\n%s", f.Name, symbol, b.Formula, where)
			}
		}
		if !reckons.MatchString(b.Formula) {
			continue
		}
		const rounding = 1e-6
		if v, err := reckon(b); err != nil {
			t.Errorf("%s: %v\n%s", f.Name, err, where)
		} else if !(math.Abs(v-f.Value) <= rounding*math.Abs(f.Value)) {
			t.Errorf("%s: %g is shown, %s = %s gives %g\n%s", f.Name, f.Value, b.Plain(), b.Substituted(), v, where)
		}
	}
}

// The test's own arithmetic, and which texts it takes for words.
func TestReckon(t *testing.T) {
	b := calc.Basis{Inputs: []calc.Input{{Symbol: "a", Value: 3}, {Symbol: "b", Value: 4}}}
	for formula, want := range map[string]float64{
		"{a} + {b}·2":                              11,
		"−{a}² − 1":                                -10,
		"√({a}² + {b}²)/2/5":                       0.5,
		"{a}/(2·x), x = {b}/y, y = 2":              0.75,
		"max(1, min({a}, {b})) + 0.5":              3.5,
		"e^z − 1, z = {a}/{a}":                     math.E - 1,
		"{b}·tan(90/2)":                            4,
		"{b}/{a}, rounded up":                      2,
		"{b}/{a}, rounded up, and one":             3,
		"128.9·{a}/3, rounded down to two figures": 120,
		"10⁵·pi":                                   1e5 * math.Pi,
	} {
		b.Formula = formula
		if got, err := reckon(&b); err != nil || math.Abs(got-want) > 1e-12*math.Abs(want) ||
			!reckons.MatchString(formula) {
			t.Errorf("%s: %g, want %g (%v)", formula, got, want, err)
		}
	}
	for _, formula := range []string{"{a}·{c}", "{a}·q", "{a} + of both", "2a/{b}", "({a}·2", "{a}/"} {
		b.Formula = formula
		if got, err := reckon(&b); err == nil {
			t.Errorf("%q is taken for %g", formula, got)
		}
	}
	for _, words := range []string{"given", "half-width where the sheet reaches {a}, from {b}",
		"first spot, or longer", "the larger angle at most {a}"} {
		if reckons.MatchString(words) {
			t.Errorf("%q is taken for arithmetic", words)
		}
	}
}
