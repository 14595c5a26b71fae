package linear

import (
	"fmt"
	"slices"
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/choice"
	"brazebooth/internal/report"
)

// read reads the card out: what it is for, stops and dangers, then the settings, the heat, and what was assumed.
// Everything else can be asked for with one word.
func (t *talk) read() {
	t.say([]report.Block{report.Head{Card: &t.card}}, report.Options{Units: t.units, Heard: true})
	t.dangers(func(*calc.Warning) bool { return true })
	for _, l := range t.settings() {
		t.voice.say(l)
	}
	t.tell(report.Notes{List: t.card.Notes})
	t.voice.say(heat(&t.card))
	for i := range t.card.Warnings { // worth knowing, but no danger
		if w := &t.card.Warnings[i]; w.Severity == calc.Info && w.Code != "test-bead" {
			t.danger(w)
		}
	}
	if list := t.card.Assumed; len(list) > 0 {
		var said []string
		for _, a := range list {
			said = append(said, choice.Plain(a.Field)+" "+report.Typed(a.Field, a.Value, t.units))
		}
		t.voice.say("Assumed, since it was not given: ", strings.Join(said, ", "), ".")
	}
	t.voice.show(fmt.Sprintf("results reads the %d figures that follow from these. why and a name tells why. "+
		"help tells what else.", len(t.results())))
}

// dangers reads out every stop, the test bead, and the wanted cautions. It returns how many cautions were left out.
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

// danger reads out one warning with a word for its severity; the advice to lay a test bead needs no such word.
func (t *talk) danger(w *calc.Warning) {
	if w.Code == "test-bead" {
		t.voice.say(sentence(t.inUnits(w.Text)))
		return
	}
	t.tell(report.Cautions{List: []calc.Warning{*w}})
}

func (t *talk) settings() (list []string) {
	for i := range t.card.Figures {
		if f := &t.card.Figures[i]; choice.SettingOf(f.Name) != nil {
			list = append(list, t.setting(f))
		}
	}
	return list
}

// results are the figures that follow from the settings. The gun angle is read out among the notes.
func (t *talk) results() []calc.Figure {
	return slices.DeleteFunc(slices.Clone(t.card.Figures), func(f calc.Figure) bool {
		return choice.SettingOf(f.Name) != nil || f.Name == "gun_angle"
	})
}

func (t *talk) readResults(string) {
	t.tell(report.Figures{Card: &t.card, List: t.results()}, report.Edges{Card: &t.card})
}

// heat says in sentences what the verdict is, and which edges are not met or which edge is nearest.
func heat(c *calc.Card) string {
	switch {
	case c.Stopped():
		return "Stop: this job is not to be done, whatever the heat."
	case c.Zone == "" || c.Zone == "not-modelled" || len(c.Edges) == 0:
		return "No verdict on the heat is computed for this job: judge it on a test bead."
	}
	said := "Verdict: " + report.VerdictText(c) + "."
	var missed []string
	for i := range c.Edges {
		if e := &c.Edges[i]; !e.Met {
			missed = append(missed, e.Name)
		}
	}
	switch nearest := c.DecidingEdge(); {
	case nearest.Met:
		said += " Nearest edge: " + nearest.Name + ", " + report.EdgeRoom(nearest, false) + "."
	case c.Zone != "good" || len(missed) > 1: // else the verdict names it
		said += " Not met: " + strings.Join(missed, ", ") + "."
	}
	return said
}

func (t *talk) readAssumed(string) {
	if len(t.card.Assumed) == 0 {
		t.voice.say("Nothing is assumed.")
	}
	t.say([]report.Block{report.Assumed{List: t.card.Assumed}}, report.Options{Units: t.units})
}

func (t *talk) readCautions(string) {
	blocks := []report.Block{report.Cautions{List: t.card.Warnings}}
	for _, l := range report.Words(blocks, report.Options{Units: t.units}) {
		t.voice.line(t.voice.marked(spell(leads[l.Kind]+sentence(l.Text))) + " " + spell("Source: "+l.Source+"."))
	}
}
