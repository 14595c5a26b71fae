package calc

import (
	"slices"
	"strings"
	"testing"

	"brazebooth/calc/thinsheet"
	"brazebooth/internal/deep"
	"brazebooth/internal/mistake"
	"brazebooth/tables"
)

// zincJobs are all pairs of a metal with zinc and another, either as the first member, on every joint and in every
// mode, thin and thick.
func zincJobs() (list []Job) {
	for _, coat := range tables.Coatings {
		for _, other := range []string{"", "mild-steel", "copper", "grey-iron", "galvannealed"} {
			for _, joint := range []string{"lap", "butt", "tee", "corner", "edge", "plug"} {
				for _, mm := range []float64{1, 3, 12, 25} {
					if !coat.Zinc {
						continue
					}
					j := Job{Metal: "mild-steel", Coating: coat.ID, Metal2: other, Joint: joint, Thickness: Some(mm)}
					list = append(list, j)
					if other != "" {
						j.Metal, j.Metal2, j.Coating, j.Coating2 = other, "mild-steel", "", coat.ID
						list = append(list, j)
					}
				}
			}
		}
	}
	return list
}

// No remedy for parts with zinc warms them.
func TestNoRemedyWarmsZinc(t *testing.T) {
	for _, j := range deep.Of(t, zincJobs(), 400) {
		var c Card
		if err := resolve(j, &c); err != nil {
			t.Fatalf("%s: %v", j.short(), err)
		}
		tries := candidates(&j, &c)
		for _, why := range []thinsheet.Reason{thinsheet.NeverWets, thinsheet.TooHot, thinsheet.WideGap,
			thinsheet.TwoSettings} {
			u := c.Used
			u.Feed = Some(5)
			tries = append(tries, timedCandidates(u, Applies("zinc", &c), why)...)
		}
		for _, x := range tries {
			to := j
			if x.alter(&to); to.Preheat != j.Preheat || strings.Contains(x.change, "warm") {
				t.Errorf("%s: %s tries %q", j.short(), j.Coating+j.Coating2, x.change)
			}
		}
		for r := range reasonText {
			if text := reasonOf(r, &c); strings.Contains(text, warmParts) || text != reasonText[r] &&
				!strings.Contains(text, " none) and ask again") {
				t.Errorf("%s: %s", j.short(), text)
			}
		}
	}
	if list := candidates(&Job{}, &Card{}); !slices.ContainsFunc(list,
		func(c candidate) bool { return strings.Contains(c.change, "warmed") }) {
		t.Error("bare parts are not warmed either: the test proves nothing")
	}
}

// No text on a card of parts with zinc asks for warmth, and no figure names a preheat.
func TestNoCardWarmsZinc(t *testing.T) {
	for _, j := range deep.Of(t, zincJobs(), 6) {
		for _, feed := range []Opt{{}, Some(3)} {
			j.Feed = feed
			c := card(t, j)
			if f, ok := c.Figure("least_preheat"); ok {
				t.Errorf("%s: %+v", j.short(), f)
			}
			for _, w := range c.Warnings {
				asks := strings.Contains(w.Text, "preheat") || strings.Contains(w.Text, "Preheat")
				if asks && w.Code != PreheatNever && w.Code != ZincWarmed &&
					!strings.Contains(w.Text, "must not be preheated: strip") {
					t.Errorf("%s: %s: %s", j.short(), w.Code, w.Text)
				}
			}
		}
	}
}

// Zinc that is liquid before the arc is struck is refused with what to type instead; colder zinc and bare parts are
// not.
func TestMoltenZincIsRefused(t *testing.T) {
	for _, j := range deep.Of(t, zincJobs(), 100) {
		for _, at := range []float64{20, 419.4, 419.5, 700} {
			j.Preheat = Some(at)
			_, err := Complete(j)
			m := mistake.Of(err)
			if at < 419.5 {
				if err != nil {
					t.Errorf("%s at %g °C: %v", j.short(), at, err)
				}
				continue
			}
			if m == nil || m.Field != "preheat" || m.What != "zinc melts at 420 °C" || !strings.Contains(m.Hint,
				" none, or give less preheat") {
				t.Errorf("%s at %g °C: %+v", j.short(), at, err)
				continue
			}
			bare := j
			if strings.Contains(strings.ReplaceAll(m.Hint, "second coating none", ""), "coating none") {
				bare.Coating = "none"
			}
			if strings.Contains(m.Hint, "second coating none") {
				bare.Coating2 = "none"
			}
			if _, err := Complete(bare); err != nil {
				t.Errorf("%s as the hint says, %q: %v", j.short(), m.Hint, err)
			}
		}
	}
	if _, err := Complete(Job{Metal: "mild-steel", Preheat: Some(700)}); err != nil {
		t.Error(err)
	}
}

// Just under zinc's melting point every sheet still has a card, with the caution.
func TestCardsUnderMoltenZinc(t *testing.T) {
	for _, j := range deep.Of(t, zincJobs(), 4) {
		j.Preheat = Some(419.4)
		c, err := Solve(j)
		if m := mistake.Of(err); err != nil && (m == nil || m.Field == "feed") {
			t.Errorf("%s: %v", j.short(), err)
		}
		if err == nil && !tells(&c, PreheatNever) {
			t.Errorf("%s: no caution", j.short())
		}
	}
}

// No overlay is laid on zinc: every zinc coat stops it, and no other coat does.
func TestOverlayOnZincStops(t *testing.T) {
	for _, coat := range tables.Coatings {
		for _, mm := range []float64{1, 12} {
			c := Card{}
			if err := resolve(Job{Metal: "mild-steel", Coating: coat.ID, Joint: "overlay", Thickness: Some(mm)},
				&c); err != nil {
				t.Fatal(err)
			}
			w := warnings{card: &c}
			w.metals()
			if c.Warnings = w.list; c.Stopped() != coat.Zinc || tells(&c, "zinc-under-overlay") != coat.Zinc {
				t.Errorf("overlay on %s: %+v", coat.ID, c.Warnings)
			}
		}
	}
}

// What is assumed is never a preheat over zinc, and iron beside zinc is told to strip it.
func TestNoPreheatOverZincIsAssumed(t *testing.T) {
	deep.Turn(t)
	for _, metal := range tables.Metals {
		for _, other := range []string{"", "galvanized", "galvannealed", "electro-zinc", "grey-iron", "copper"} {
			c, err := Solve(Job{Metal: metal.ID, Metal2: other, Thickness: Some(2)})
			if err != nil || !Applies("zinc", &c) {
				continue
			}
			if Preheated(&c) {
				t.Errorf("%s on %s: %g °C assumed over zinc", metal.ID, other, c.Used.Preheat.V)
			}
			if iron := Applies(string(tables.CastIron), &c); iron != c.Warned(ZincWarmed) {
				t.Errorf("%s on %s: iron %v, warned of warm zinc %v", metal.ID, other, iron, c.Warned(ZincWarmed))
			}
		}
	}
}
