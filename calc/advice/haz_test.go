package advice

import (
	"fmt"
	"math"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
	"brazebooth/tables"
)

// zonePage is the page of a lap in one steel with feed and travel given, so that only the varied input changes.
func zonePage(t *testing.T, metal string, thick, feed, travel float64) Page {
	t.Helper()
	card, err := calc.Solve(calc.Job{Metal: metal, Coating: "none", Thickness: calc.Some(thick), Joint: "lap",
		Feed: calc.Some(feed), Travel: calc.Some(travel)})
	if err != nil {
		t.Fatal(err)
	}
	p, err := Zone(t.Context(), &card)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range p.Figures {
		if !(f.Low <= f.Value && f.Value <= f.High) || math.IsInf(f.High, 0) {
			t.Errorf("%s %.3g mm, %.3g m/min, %.3g mm/s: %s %g (%g to %g)", metal, thick, feed, travel, f.Name,
				f.Value, f.Low, f.High)
		}
	}
	return p
}

// Thicker sheet and faster travel cool the zone faster: it gets harder and narrower, without jumps.
func TestTheZoneFollowsTheHeat(t *testing.T) {
	steps := deep.Many(4, 60)
	for _, s := range deep.Of(t, tables.HardeningSteels, 4) {
		if s.Boron {
			continue // martensite throughout, or not judged
		}
		for axis, job := range map[string]func(x float64) (thick, feed, travel float64){
			"thickness": func(x float64) (float64, float64, float64) { return 0.9 * math.Pow(3, x), 4.5, 8 },
			"travel":    func(x float64) (float64, float64, float64) { return 1.2, 4.5, 5 * math.Pow(2.6, x) },
		} {
			var hard, wide float64
			for i := range steps + 1 {
				x := float64(i) / float64(steps)
				thick, feed, travel := job(x)
				p := zonePage(t, s.Metal, thick, feed, travel)
				h, ok := p.Figure("haz_hardness")
				w, _ := p.Figure("changed_halfwidth")
				if !ok {
					continue
				}
				if at := fmt.Sprintf("%s, %s %.2f", s.Metal, axis, x); i > 0 && hard > 0 {
					if h.Value < hard-1e-9 || h.Value > hard*(1+1.6/float64(steps)) {
						t.Errorf("%s: hardness goes from %.1f to %.1f", at, hard, h.Value)
					}
					if w.Value > wide*1.005 {
						t.Errorf("%s: the zone widens from %.3g to %.3g", at, wide, w.Value)
					}
				}
				hard, wide = h.Value, w.Value
			}
		}
	}
}

// Every metal gets an answer or a reason, on every joint; the soft zone lies outside the hard zone.
func TestEveryMetalHasAZone(t *testing.T) {
	for _, m := range deep.Of(t, tables.Metals, 4) {
		for _, joint := range []string{"lap", "tee", "butt", "corner", "edge", "overlay", "plug"} {
			card, err := calc.Solve(calc.Job{Metal: m.ID, Thickness: calc.Some(1.5), Joint: joint, Feed: calc.Some(5),
				Travel: calc.Some(8)})
			if err != nil {
				continue
			}
			p, err := Zone(t.Context(), &card)
			if err != nil || len(p.Reasons) < 1 || len(p.Figures) == 0 && len(p.Reasons) < 2 {
				t.Errorf("%s %s: %v %v", m.ID, joint, p.Reasons, err)
			}
			if w, ok := p.Figure("softened_width"); ok && !(w.Value > 0) {
				t.Errorf("%s %s: softened over %g mm", m.ID, joint, w.Value)
			}
		}
	}
}

// The standard behind the cooling time covers steel only. Beside copper, iron or stainless, which conduct heat
// differently, neither order of the members gives a time or a hardness, and both give the width of the zone.
func TestSteelBesideAnotherMetalHasNoHardness(t *testing.T) {
	for _, m := range deep.Of(t, tables.Metals, 3) {
		for _, joint := range []string{"lap", "butt", "corner"} {
			j := calc.Job{Metal: "hsla", Thickness: calc.Some(1.5), Metal2: m.ID, Thickness2: calc.Some(1.5),
				Joint:  joint,
				Filler: "cusi3", Feed: calc.Some(5), Travel: calc.Some(8)}
			swapped := j
			swapped.Metal, swapped.Metal2 = j.Metal2, j.Metal
			for suffix, job := range map[string]calc.Job{"": j, "_2": swapped} {
				c, err := calc.Solve(job)
				if err != nil || !c.Section.Drawn {
					continue
				}
				p, err := Zone(t.Context(), &c)
				if err != nil {
					t.Fatal(err)
				}
				_, timed := c.Figure("cooling_time")
				_, hard := p.Figure("haz_hardness" + suffix)
				_, wide := p.Figure("changed_halfwidth" + suffix)
				if steel := m.Family == tables.Steel; timed != steel || m.ID != "hsla" && hard != steel || !wide &&
					m.ID != "hsla" {
					t.Errorf("hsla and %s, %s%s: cooling time %v, hardness %v, width %v", m.ID, joint, suffix,
						timed, hard,
						wide)
				}
			}
		}
	}
}
