package report

import (
	"slices"
	"testing"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/internal/deep"
)

// assumingJobs together have every page with a figure that depends on the seam's length or on the operating factor.
func assumingJobs() []calc.Job {
	priced := calc.Job{Metal: "galvanized", Gauge: 18, Feed: calc.Some(5), Travel: calc.Some(6.5),
		WirePrice: calc.Some(40), GasPrice: calc.Some(8), LabourRate: calc.Some(45), SteelPrice: calc.Some(3),
		ZincRepair: calc.Some(2),
		Joint:      "lap", Pulled: calc.Some(6), PulledMean: calc.Some(5.8), PulledSigma: calc.Some(0.1)}
	priced.PulledFor, _ = calc.PulledKeyOf(priced)
	iron := calc.Job{Metal: "grey-iron", Thickness: calc.Some(6), Joint: "butt", Feed: calc.Some(7),
		Travel: calc.Some(5)}
	over := calc.Job{Metal: "mild-steel", Thickness: calc.Some(12), Joint: "overlay", Feed: calc.Some(7),
		Travel: calc.Some(6), ShaftDia: calc.Some(40), Layer: calc.Some(2), WirePrice: calc.Some(40),
		LabourRate: calc.Some(45)}
	return []calc.Job{priced, iron, over}
}

// A figure that changes with a length or an operating factor that nobody gave is marked so, and no other figure is.
func TestFiguresThatDependOnAssumptions(t *testing.T) {
	deep.Turn(t)
	if testing.Short() {
		t.Skip("every page again for each input")
	}
	moved := map[string]map[string]bool{"length": {}, "operating": {}}
	for _, job := range assumingJobs() {
		before := pagesOf(t, job)
		for field, given := range map[string]func(*calc.Job){
			"length":    func(j *calc.Job) { j.Length = calc.Some(611) },
			"operating": func(j *calc.Job) { j.Operating = calc.Some(17) },
		} {
			other := job
			given(&other)
			after := pagesOf(t, other)
			for name, f := range before {
				if g, ok := after[name]; ok && (g.Value != f.Value || g.High != f.High) {
					moved[field][f.Name] = true
				}
			}
		}
	}
	for field, names := range moved {
		for name := range names {
			if !slices.Contains(restsOn[field], name) {
				t.Errorf("%s goes by the %s and is not marked", name, field)
			}
		}
	}
	for field, names := range restsOn {
		for _, name := range names {
			if !moved[field][name] {
				t.Errorf("%s does not go by the %s", name, field)
			}
		}
	}
}

// pagesOf are the figures of every page of a job, by page and name.
func pagesOf(t *testing.T, job calc.Job) map[string]calc.Figure {
	t.Helper()
	card, err := calc.Solve(job)
	if err != nil {
		t.Fatal(err)
	}
	all := map[string]calc.Figure{}
	for _, page := range advice.Contents() {
		if page.Of == nil {
			continue
		}
		p, err := page.Answer(t.Context(), &card)
		if err != nil {
			continue // the job lacks something that this page needs
		}
		for _, f := range p.Figures {
			all[page.Name+"/"+f.Name] = f
		}
	}
	return all
}
