package advice

import (
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
	"brazebooth/tables"
)

// A joint without a verdict has a price only at a feed and travel that somebody found and gave.
func TestNoPriceForASettingThatNobodyTried(t *testing.T) {
	var jobs []calc.Job
	for _, joint := range []string{"lap", "tee", "corner", "edge"} {
		for thick := 1.0; thick < 40; thick *= 1.3 {
			jobs = append(jobs, calc.Job{Metal: "mild-steel", Joint: joint, Thickness: calc.Some(thick),
				LabourRate: calc.Some(40), Currency: "EUR"})
		}
	}
	jobs = append(deep.Of(t, jobs, 12), calc.Job{Metal: "mild-steel", Joint: "lap", Thickness: calc.Some(6),
		LabourRate: calc.Some(40), Currency: "EUR"})
	for _, j := range jobs {
		for _, given := range []bool{false, true} {
			if given {
				j.Feed, j.Travel = calc.Some(8), calc.Some(6)
			}
			c, err := calc.Solve(j)
			if err != nil {
				t.Fatal(err)
			}
			p, err := Cost(&c)
			if err != nil {
				t.Fatal(err)
			}
			_, priced := p.Figure("total_cost")
			if c.Zone == "not-modelled" && priced != given {
				t.Errorf("%s %.2f mm, feed and travel given %v: priced %v", j.Joint, j.Thickness.V, given, priced)
			}
		}
	}
}

// The time from 800 to 500 °C is given up to the start from which it grows without limit, and the page says why not.
func TestNoCoolingTimeNearItsEnd(t *testing.T) {
	deep.Turn(t)
	for start := 20.0; start < 620; start += 20 {
		j := calc.Job{Metal: "mild-steel", Thickness: calc.Some(1.5), Preheat: calc.Some(start)}
		c, err := calc.Solve(j)
		if err != nil {
			t.Fatal(err)
		}
		f, ok := c.Figure("cooling_time")
		if ok != (start <= tables.CoolingStart.V) || f.Value > 60 {
			t.Errorf("%g °C: cooling time %g s, %v", start, f.Value, ok)
		}
		p, err := Zone(t.Context(), &c)
		if err != nil {
			t.Fatal(err)
		}
		said := false
		for _, r := range p.Reasons {
			said = said || strings.Contains(r.Text, "as slowly as the air lets them")
		}
		if _, hard := p.Figure("haz_hardness"); !ok && (hard || !said) {
			t.Errorf("%g °C: hardness %v, said why not %v", start, hard, said)
		}
	}
}
