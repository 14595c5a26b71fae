package correct

import (
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/calc/limit"
	"brazebooth/internal/deep"
	"brazebooth/tables"
)

// disputes lists sights at settings from far too cold to far too hot.
func disputes() (list []scanned) {
	for _, metal := range []string{"galvanized", "mild-steel", "stainless-304", "copper"} {
		for _, mm := range []float64{0.7, 1, 1.5, 3} {
			for _, feed := range []float64{3, 4.5, 6, 8, 10} {
				for _, travel := range []float64{3, 5, 8, 12, 15} {
					for _, s := range tables.Sights {
						list = append(list, scanned{calc.Job{Metal: metal, Thickness: calc.Some(mm),
							Feed:   calc.Some(feed),
							Travel: calc.Some(travel)}, s.ID})
					}
				}
			}
		}
	}
	return list
}

// No look leads to more heat if the card says burn-through or too hot by a wide margin, nor to less heat if it
// says too cold by a wide margin; then the answer is to measure.
func TestNoStepInABarredDirection(t *testing.T) {
	deep.Turn(t)
	list := deep.Of(t, disputes(), 8)
	for _, seen := range []string{"rolled-edge", "stubbing"} {
		list = append(list, scanned{calc.Job{Metal: "galvanized", Thickness: calc.Some(1), Feed: calc.Some(8),
			Travel: calc.Some(3)}, seen})
	}
	cold := calc.Job{Metal: "galvanized", Thickness: calc.Some(1), Feed: calc.Some(3), Travel: calc.Some(14)}
	list = append(list, scanned{cold, "burn-through"}, scanned{cold, "thin-wide"})
	disputed := 0
	for _, x := range list {
		p, err := Next(t.Context(), []Try{{x.job, x.seen}})
		if err != nil {
			continue // a look that the job cannot have
		}
		wets, cool := metAlone(&p.Card)
		wrong := 0.0
		switch {
		case cool < never && wets > half:
			wrong = 1
		case wets < never && cool > half:
			wrong = -1
		}
		if strings.Contains(p.Correction.Why, "no answer before that is clear") {
			disputed++
			if p.Correction.Change != nil || !strings.Contains(p.Correction.Do, "measure wire feed") {
				t.Errorf("%+v, %s: %+v", x.job, x.seen, p.Correction)
			}
		}
		if c := p.Correction.Change; c != nil {
			for i := range levers {
				if l := &levers[i]; l.what == c.What && wrong*l.hotter*(c.To-c.From) > 0 {
					t.Errorf("%s %g mm, feed %g, travel %g, %s: %s, wets %.1f, cool %.1f, and %s from %g to %g",
						x.job.Metal, x.job.Thickness.V, x.job.Feed.V, x.job.Travel.V, x.seen, p.Card.Zone,
						wets, cool, c.What, c.From, c.To)
				}
			}
		}
	}
	if disputed < 3 {
		t.Errorf("%d looks were disputed", disputed)
	}
}

// In 100.
const never, half = 1, 50

// metAlone are the chances, in 100, that the bead wets and that the base stays solid, each by itself.
func metAlone(c *calc.Card) (wets, cool float64) {
	wets, cool = 100, 100
	chance, _ := c.Figure("chance")
	for _, in := range chance.Basis.Inputs {
		switch in.Name {
		case "“" + limit.Wets.Edge() + "” met":
			wets = in.Value
		case "“" + limit.Solid.Edge() + "” met", "“" + limit.Burn.Edge() + "” met":
			cool = in.Value
		}
	}
	return wets, cool
}
