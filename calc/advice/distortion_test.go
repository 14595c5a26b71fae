package advice

import (
	"math"
	"slices"
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
	"brazebooth/tables"
)

// More heat pulls more and leaves less width flat; thicker sheet under the same heat stays flat over more
// width. Every figure lies inside its band, and every job has a reason.
func TestDistortionFollowsHeatAndThickness(t *testing.T) {
	steps := deep.Many(4, 60)
	page := func(metal string, thick, travel float64) Page {
		t.Helper()
		card, err := calc.Solve(calc.Job{Metal: metal, Coating: "none", Thickness: calc.Some(thick), Joint: "butt",
			Feed: calc.Some(4), Travel: calc.Some(travel)})
		if err != nil {
			t.Fatal(err)
		}
		p, err := Distortion(&card)
		if err != nil || len(p.Reasons) == 0 {
			t.Fatal(metal, err)
		}
		for _, f := range p.Figures {
			if !(f.Low <= f.Value && f.Value <= f.High) || math.IsInf(f.High, 0) {
				t.Errorf("%s %.3g mm %.3g mm/s: %s %g (%g to %g)", metal, thick, travel, f.Name, f.Value, f.Low, f.High)
			}
		}
		return p
	}
	for _, metal := range []string{"mild-steel", "stainless-304", "brass"} {
		was := math.Inf(1)
		for i := range steps + 1 { // faster is colder
			p := page(metal, 1.5, 4*math.Pow(4, float64(i)/float64(steps)))
			pull, _ := p.Figure("shrinkage_force")
			if !(pull.Value < was) {
				t.Errorf("%s: the pull goes from %g to %g as travel grows", metal, was, pull.Value)
			}
			was = pull.Value
		}
		last := 0.0
		for i := range steps + 1 {
			p := page(metal, 0.6*math.Pow(12, float64(i)/float64(steps)), 8)
			if b, ok := p.Figure("flat_width_held"); ok {
				if b.Value < last {
					t.Errorf("%s: thicker sheet stays flat over %g mm, less than %g", metal, b.Value, last)
				}
				last = b.Value
			}
		}
	}
}

// Every metal and joint has a figure or a reason why not.
func TestEveryMetalHasADistortionPage(t *testing.T) {
	for _, m := range deep.Of(t, tables.Metals, 4) {
		for _, joint := range []string{"lap", "tee", "butt", "corner", "edge", "overlay", "plug"} {
			card, err := calc.Solve(calc.Job{Metal: m.ID, Thickness: calc.Some(2), Joint: joint, Feed: calc.Some(5),
				Travel: calc.Some(8)})
			if err != nil {
				continue
			}
			if p, err := Distortion(&card); err != nil || len(p.Reasons) == 0 {
				t.Errorf("%s %s: %v", m.ID, joint, err)
			}
		}
	}
}

// The wider a part is, the more it waves. At the width named as flat the share is 100 %, and a held edge is
// never worse than a free one. Every width is judged or has a reason why not; a job without a width is told
// what to give.
func TestPartWidthIsJudged(t *testing.T) {
	var jobs []calc.Job
	for _, metal := range []string{"mild-steel", "stainless-304", "copper", "galvanized"} {
		for _, joint := range []string{"butt", "lap", "corner", "edge", "tee"} {
			for _, mm := range []float64{0.8, 1.5, 4} {
				jobs = append(jobs, calc.Job{Metal: metal, Thickness: calc.Some(mm), Joint: joint, Feed: calc.Some(4),
					Travel: calc.Some(8)})
			}
		}
	}
	for _, j := range deep.Of(t, jobs, 5) {
		card, err := calc.Solve(j)
		if err != nil {
			t.Fatal(err)
		}
		if p := distorted(t, &card, calc.Opt{}); !p.says("give part-width") {
			t.Errorf("%s %s: nothing says what to give", j.Metal, j.Joint)
		}
		last := 0.0
		for width := 4.0; width < 1e5; width *= 1.2 {
			p := distorted(t, &card, calc.Some(width))
			last = p.panelJudged(t, width, last)
		}
	}
}

func distorted(t *testing.T, card *calc.Card, width calc.Opt) *Page {
	t.Helper()
	card.Used.PartWidth = width
	p, err := Distortion(card)
	if err != nil {
		t.Fatal(err)
	}
	return &p
}

func (p *Page) says(word string) bool {
	return slices.ContainsFunc(p.Reasons, func(r Reason) bool { return strings.Contains(r.Text, word) })
}

// panelJudged checks the page of a part of this width and returns the share of the pull with held edges.
func (p *Page) panelJudged(t *testing.T, width, last float64) float64 {
	t.Helper()
	j := &p.Card.Used
	held, ok := p.Figure("panel_pull_held")
	free, ok2 := p.Figure("panel_pull_free")
	flat, _ := p.Figure("flat_width_held")
	if !ok && !ok2 && !p.says("not judged, because") && !p.says("in any width") && !p.says("it waves unless") {
		t.Errorf("%s %s, %g mm wide: neither judged nor told why not", j.Metal, j.Joint, width)
	}
	if !ok {
		return last
	}
	if held.Value < last || ok2 && free.Value < held.Value || !(held.Low <= held.Value && held.Value <= held.High) {
		t.Errorf("%s %s, %g mm wide: %g %% after %g, free %g", j.Metal, j.Joint, width, held.Value, last, free.Value)
	}
	if p.says("held straight at its outer edges, waves") != (held.Low > 100) ||
		p.says("held straight at its outer edges, stays flat") != (held.High < 100) {
		t.Errorf("%s %s, %g mm wide: %g to %g %% is called otherwise", j.Metal, j.Joint, width, held.Low, held.High)
	}
	if (width/2 > flat.Value) != (held.Value > 100) {
		t.Errorf("%s %s: %g mm on each side, flat to %g, %g %%", j.Metal, j.Joint, width/2, flat.Value, held.Value)
	}
	return held.Value
}
