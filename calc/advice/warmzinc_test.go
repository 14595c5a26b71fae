package advice

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
	"brazebooth/internal/mistake"
)

// warmJobs are parts of several metals, thin and heavy, at several preheats: with zinc, with zinc on one
// member, and without.
func warmJobs() (list []calc.Job) {
	for _, pair := range [][2]string{{"galvanized", ""}, {"mild-steel", "electro-zinc"}, {"galvannealed", "copper"},
		{"galvanized", "grey-iron"}, {"mild-steel", ""}, {"grey-iron", ""}, {"copper", ""}, {"stainless-304", ""}} {
		for _, mm := range []float64{1, 3, 8, 25} {
			for _, at := range []calc.Opt{{}, calc.Some(20), calc.Some(40), calc.Some(41), calc.Some(150),
				calc.Some(350)} {
				for _, joint := range []string{"tee", "butt", "lap"} {
					list = append(list, calc.Job{Metal: pair[0], Metal2: pair[1], Thickness: calc.Some(mm),
						Joint:   joint,
						Preheat: at, Feed: calc.Some(6), Travel: calc.Some(8)})
				}
			}
		}
	}
	return list
}

func cautioned(p *Page) bool {
	return slices.ContainsFunc(p.Warnings, func(w calc.Warning) bool { return w.Code == calc.PreheatNever })
}

// Every page of zinc-coated parts that are warmed carries the caution once, and fit asks for another way.
func TestEveryPageForbidsWarmZinc(t *testing.T) {
	for _, j := range deep.Of(t, warmJobs(), 6) {
		c := card(t, j)
		name := fmt.Sprintf("%s on %s, %g mm %s at %g °C", j.Metal, j.Metal2, j.Thickness.V, j.Joint, c.Used.Preheat.V)
		warm := calc.WarmedZinc(c)
		for i := range contents {
			e := &contents[i]
			if e.Of == nil || e.Name == "haz" || e.Name == "filler" { // they are slow and take the same path
				continue
			}
			p, err := e.Answer(t.Context(), c)
			if mistake.Of(err) != nil {
				continue
			}
			if err != nil || cautioned(&p) != warm {
				t.Errorf("%s, %s: cautioned %v, %v", e.Name, name, cautioned(&p), err)
			}
			says := func(text string) bool {
				return slices.ContainsFunc(p.Reasons, func(r Reason) bool { return strings.Contains(r.Text, text) })
			}
			if e.Name == "fit" && warm && (p.Verdict != AnotherWay && p.Verdict != StopWork ||
				says("most of the zinc stays")) {
				t.Errorf("%s: fit says %s", name, p.Verdict)
			}
		}
	}
}

// Prepare gives the card's preheat or none, none if zinc is on the parts, and never both strips zinc and leaves
// it on.
func TestPrepareHasOnePreheat(t *testing.T) {
	for _, j := range deep.Of(t, warmJobs(), 15) {
		c := card(t, j)
		p, _ := Prepare(c)
		name := fmt.Sprintf("%s on %s, %g mm %s at %v", j.Metal, j.Metal2, j.Thickness.V, j.Joint, j.Preheat)
		f, shown := p.Figure("preheat")
		zinc := calc.Applies("zinc", c)
		_, strips := p.Figure("zinc_strip")
		var text strings.Builder
		for _, r := range p.Reasons {
			text.WriteString(r.Text + "\n")
		}
		has := func(s string) bool { return strings.Contains(text.String(), s) }
		_, least := p.Figure("least_preheat")
		switch {
		case shown && (zinc || f.Value != c.Used.Preheat.V):
			t.Errorf("%s: prepare says %g °C, the card %g", name, f.Value, c.Used.Preheat.V)
		case zinc && (least || has("hand-warm, to take") || has("66 to 93") || has("warming the parts helps") ||
			has("warm it and")):
			t.Errorf("%s: zinc is warmed:\n%s", name, text.String())
		case zinc && strips == has("Leave the zinc on"), has("trip the zinc back") && !strips && has("Cold parts"):
			t.Errorf("%s: zinc stripped %v:\n%s", name, strips, text.String())
		case calc.WarmedZinc(c) && !(strips && has("zinc must not be preheated")):
			t.Errorf("%s: the given preheat is not named:\n%s", name, text.String())
		case !zinc && j.Preheat.V > 40 && !shown:
			t.Errorf("%s: the given preheat is not shown", name)
		}
	}
}

// An overlay on zinc is answered by fit alone, and fit does not praise zinc there.
func TestOverlayOnZincIsStopped(t *testing.T) {
	for _, metal := range []string{"galvanized", "galvannealed", "electro-zinc"} {
		c := card(t, calc.Job{Metal: metal, Thickness: calc.Some(3), Joint: "overlay", Feed: calc.Some(6),
			Travel: calc.Some(8)})
		for i := range contents {
			e := &contents[i]
			if e.Of == nil {
				continue
			}
			p, err := e.Answer(t.Context(), c)
			if err != nil || !slices.ContainsFunc(p.Instead, func(s string) bool {
				return strings.HasPrefix(s,
					"strip the zinc at least 25 mm")
			}) ||
				slices.ContainsFunc(p.Reasons, func(r Reason) bool {
					return strings.Contains(r.Text,
						"most of the zinc stays")
				}) {
				t.Errorf("%s on %s: %v %+v", e.Name, metal, err, p.Reasons)
			}
		}
	}
}
