package linear

import (
	"fmt"
	"slices"
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/choice"
	"brazebooth/internal/report"
)

// read reads the whole card out: what it is for, what stops or endangers, then the settings, what the heat comes to, and
// what was assumed. Everything else is one word away.
func (t *talk) read() {
	t.say([]report.Block{report.Head{Card: &t.card}}, report.Options{Units: t.units, Heard: true})
	t.dangers(func(*calc.Warning) bool { return true })
	for _, l := range t.settingLines(&t.card) {
		t.voice.say(l)
	}
	for _, n := range t.card.Notes {
		t.voice.say(first(n.Name), ": ", sentence(n.Text))
	}
	t.voice.say(heat(&t.card))
	t.notes()
	t.assumed()
	t.voice.show(fmt.Sprintf("results reads the %d figures that follow from these. why and a name tells why. help tells what else.", len(t.results(&t.card))))
}

// sheet is a member's thickness.
func (t *talk) sheet(i int) string {
	m := &t.card.Setup.Members[i]
	if m.Gauge == 0 {
		return t.size(m.Thickness, "mm")
	}
	return fmt.Sprintf("%d gauge, %s", m.Gauge, t.size(m.Thickness, "mm"))
}

// dangers reads out every stop, the test bead, and the cautions that are wanted; it returns how many were left out.
func (t *talk) dangers(wanted func(*calc.Warning) bool) (left int) {
	for _, severity := range [...]calc.Severity{calc.Stop, calc.Info, calc.Caution} {
		for i := range t.card.Warnings {
			w := &t.card.Warnings[i]
			switch {
			case w.Severity != severity || severity == calc.Info && w.Code != "test-bead":
				continue
			case severity != calc.Stop && !wanted(w):
				left++
				continue
			}
			t.danger(w)
			if !slices.Contains(t.told, w.Code) {
				t.told = append(t.told, w.Code)
			}
		}
	}
	return left
}

// danger reads out one warning by its weight; the test bead needs no word before it.
func (t *talk) danger(w *calc.Warning) {
	if w.Code == "test-bead" {
		t.voice.say(sentence(w.Text))
		return
	}
	t.voice.say(lead(w.Severity), sentence(w.Text))
}

func lead(s calc.Severity) string {
	switch s {
	case calc.Stop:
		return "Stop! "
	case calc.Caution:
		return "Caution: "
	}
	return "Note: "
}

// notes reads out what is worth knowing and no danger.
func (t *talk) notes() {
	for i := range t.card.Warnings {
		if w := &t.card.Warnings[i]; w.Severity == calc.Info && w.Code != "test-bead" {
			t.danger(w)
		}
	}
}

// settingLines are the settings, each in a sentence.
func (t *talk) settingLines(c *calc.Card) []string {
	var list []string
	for i := range c.Figures {
		if f := &c.Figures[i]; choice.SettingOf(f.Name) != nil {
			list = append(list, first(t.figure(t.row(f), origin(c, f.Name))))
		}
	}
	return list
}

// results are the figures that follow from the settings. The gun's angle stands among the notes.
func (t *talk) results(c *calc.Card) []*calc.Figure {
	var list []*calc.Figure
	for i := range c.Figures {
		if f := &c.Figures[i]; choice.SettingOf(f.Name) == nil && f.Name != "gun_angle" {
			list = append(list, f)
		}
	}
	return list
}

func (t *talk) readResults(string) {
	var list []calc.Figure
	for _, f := range t.results(&t.card) {
		list = append(list, *f)
	}
	t.tell([]report.Block{report.Figures{Card: &t.card, List: list}, report.Edges{Card: &t.card}})
}

// heat is the verdict and the nearest edge.
func heat(c *calc.Card) string {
	if c.Stopped() {
		return "Stop: this job is not to be done, whatever the heat."
	}
	if c.Zone == "" || c.Zone == "not-modelled" || len(c.Edges) == 0 {
		return "No verdict on the heat is computed for this job: judge it on a test bead."
	}
	var missed []string
	for i := range c.Edges {
		if e := &c.Edges[i]; !e.Met {
			missed = append(missed, e.Name)
		}
	}
	if len(missed) > 0 {
		return "Heat: " + c.Zone + ". Not met: " + strings.Join(missed, ", ") + "."
	}
	nearest := c.NearestEdge()
	return "Heat: " + c.Zone + ". Nearest edge: " + nearest.Name + ", " + report.EdgeFar(nearest) + "."
}

// assumed says in one sentence what was not given.
func (t *talk) assumed() {
	if len(t.card.Assumed) == 0 {
		return
	}
	var list []string
	for _, a := range t.card.Assumed {
		list = append(list, strings.ReplaceAll(a.Field, "_", " ")+" "+a.Value)
	}
	t.voice.say("Assumed, since it was not given: ", strings.Join(list, ", "), ".")
}

func (t *talk) readAssumed(string) {
	if len(t.card.Assumed) == 0 {
		t.voice.say("Nothing is assumed.")
	}
	for _, a := range t.card.Assumed {
		t.voice.say(first(strings.ReplaceAll(a.Field, "_", " ")), " ", a.Value, ": ", sentence(a.Why))
	}
}

func (t *talk) readCautions(string) {
	for i := range t.card.Warnings {
		w := &t.card.Warnings[i]
		t.voice.line(t.voice.marked(spell(lead(w.Severity)+sentence(w.Text))) + " " + spell("Source: "+w.Basis+"."))
	}
}
