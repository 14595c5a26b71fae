package advice

import (
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
	"brazebooth/tables"
)

// wordJobs are jobs of every metal, joint and mode with a given setting, so that no setting is searched.
func wordJobs() (jobs []calc.Job) {
	for i, m := range tables.Metals {
		for _, joint := range []string{"lap", "butt", "tee", "corner", "edge", "overlay"} {
			for _, mode := range []string{"dip", "pulsed", "timed"} {
				mm := [...]float64{0.8, 1.5, 3, 8}[i%4]
				jobs = append(jobs, calc.Job{Metal: m.ID, Thickness: calc.Some(mm), Joint: joint, Mode: mode,
					Feed:   calc.Some(5),
					Travel: calc.Some(8), PartWidth: calc.Some(300)})
			}
		}
	}
	return jobs
}

// Over every metal, joint and mode: no two cautions of a card begin with the same words, fit gives no chance
// that the card lacks, no sentence has a number in powers of ten or NaN, and the shade for a pulsed arc is that
// of its peak.
func TestPagesSayNothingOdd(t *testing.T) {
	deep.Turn(t)
	for _, j := range deep.Of(t, wordJobs(), 4) {
		card, err := calc.Solve(j)
		if err != nil {
			continue // some metals are not brazed at all
		}
		begun := map[string]string{}
		for _, w := range card.Warnings {
			start := strings.Join(strings.Fields(w.Text)[:min(3, len(strings.Fields(w.Text)))], " ")
			if other, ok := begun[start]; ok {
				t.Errorf("%s %s %s: two cautions begin %q: %s, %s", j.Metal, j.Joint, j.Mode, start, other, w.Code)
			}
			begun[start] = w.Code
		}
		eyesOfPulses(t, &card)
		pages, err := Pages(t.Context(), &card, nil)
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range pages {
			for _, r := range p.Reasons {
				p.oddSentence(t, &card, r.Text)
			}
			for _, w := range p.Warnings {
				p.oddSentence(t, &card, w.Text)
			}
		}
	}
}

func (p *Page) oddSentence(t *testing.T, card *calc.Card, text string) {
	j := &card.Used
	for _, odd := range []string{"e+0", "e-0", "NaN", "Inf", "%!"} {
		if strings.Contains(text, odd) {
			t.Errorf("%s of %s %s %s: %s", p.Name, j.Metal, j.Joint, j.Mode, text)
		}
	}
	if _, judged := card.Figure("chance"); !judged && strings.Contains(text, "in 100 beads") {
		t.Errorf("%s of %s %s %s without a chance: %s", p.Name, j.Metal, j.Joint, j.Mode, text)
	}
	if strings.Contains(text, "try a running arc") && j.Mode != "timed" && j.Joint != "overlay" && j.Joint != "plug" &&
		card.Zone != "not-modelled" {
		t.Errorf("%s of %s %s, whose arc runs: %s", p.Name, j.Metal, j.Joint, text)
	}
}

// eyesOfPulses checks that the shade for a pulsed arc is that of its peak.
func eyesOfPulses(t *testing.T, card *calc.Card) {
	peak, pulsed := calc.PulsePeak(card)
	if pulsed != (card.Used.Mode == "pulsed") {
		t.Errorf("%s: pulses of %g A", card.Used.Mode, peak)
	}
	if !pulsed {
		return
	}
	p, err := Air(card)
	if err != nil {
		t.Fatal(err)
	}
	row, ok := tables.ShadeFor(peak)
	if least, shown := p.Figure("shade_minimum"); ok != shown || ok && least.Value != row.Minimum.V {
		t.Errorf("a peak of %g A: shade %g, the row says %g", peak, least.Value, row.Minimum.V)
	}
	for _, w := range card.Warnings {
		if w.Code == "eyes" && ok && !strings.Contains(w.Text, "never under "+calc.Number(row.Minimum.V)) {
			t.Errorf("a peak of %g A: %s", peak, w.Text)
		}
	}
}
