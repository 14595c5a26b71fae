package advice_test

import (
	"slices"
	"testing"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/internal/deep"
)

// The page never gives less preheat than the card: copper that is only warmed by hand, where the card asks for
// 500 °C, gets a cold bead.
func TestPreparePreheatsAsTheCardDoes(t *testing.T) {
	var jobs []calc.Job
	for _, m := range []string{"copper", "brass", "mild-steel", "stainless-304", "grey-iron"} {
		for _, joint := range []string{"butt", "lap", "tee"} {
			for _, mm := range []float64{1, 2.9, 3.1, 6, 12, 24} {
				jobs = append(jobs, calc.Job{Metal: m, Joint: joint, Thickness: calc.Some(mm)})
			}
		}
	}
	for _, j := range deep.Of(t, jobs, 3) {
		card := mustSolve(t, j)
		p, err := advice.Prepare(&card)
		if err != nil {
			t.Fatalf("%+v: %v", j, err)
		}
		needed := slices.ContainsFunc(card.Warnings, func(w calc.Warning) bool {
			return w.Code == "preheat-needed" || w.Code == "preheat-no-cure" || w.Code == "another-process"
		})
		warm, usual := p.Figure("preheat")
		least, ok := card.Figure("least_preheat")
		iron := j.Metal == "grey-iron" // warmed against cracks, whether or not it wets
		if needed && usual && !iron {
			t.Errorf("%s %s %g mm: the card speaks of preheat, the page of %g °C", j.Metal, j.Joint, j.Thickness.V,
				warm.Value)
		}
		if own, here := p.Figure("least_preheat"); ok && needed && (!here || own.Value != least.Value) {
			t.Errorf("%s %s %g mm: least preheat %g on the card, %g on the page", j.Metal, j.Joint, j.Thickness.V,
				least.Value, own.Value)
		}
	}
}
