package linear

import (
	"slices"
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/field"
)

// change puts a choice on the job, where that has a card, and says what changed.
func (t *talk) change(f *field.Field, text string) bool {
	job, card, err := t.with(f, text)
	if err != nil {
		t.fault(err)
		return false
	}
	t.changed(job, card, "", f.Name)
	return true
}

// changed makes another job the present one: what was said of it or the choice that is another now comes first. Stops are
// read out each time, cautions when they are new, of the settings those that are others now.
func (t *talk) changed(job calc.Job, card calc.Card, what, name string) {
	before, heatBefore := t.settingLines(&t.card), heat(&t.card)
	if job.Metal != t.job.Metal || job.Joint != t.job.Joint { // as good as another card
		t.told = nil
	}
	t.job, t.card = job, card
	t.part = nil
	own := t.settingLine(name)
	switch {
	case own != "":
		t.voice.say(own)
	case name != "":
		t.voice.say(first(strings.ReplaceAll(name, "-", " ")), ": ", t.now(name), ".")
	default:
		t.voice.say(what)
	}
	same := t.dangers(func(w *calc.Warning) bool { return !slices.Contains(t.told, w.Code) })
	for _, l := range t.settingLines(&t.card) {
		if l != own && !slices.Contains(before, l) {
			t.voice.say(l)
		}
	}
	if h := heat(&t.card); h != heatBefore || own != "" {
		t.voice.say(h)
	}
	if same > 0 {
		t.voice.say("The cautions that were read out still hold: cautions reads them again.")
	}
}

// settingLine is the sentence of the setting behind a choice, "" where the card has none.
func (t *talk) settingLine(name string) string {
	for _, s := range settings {
		if f, ok := t.card.Figure(s.figure); ok && s.field == name {
			return first(t.figure(&f, origin(&t.card, s.figure), t.remark(&f)))
		}
	}
	return ""
}

// now is a choice as the card has it, and whose it is.
func (t *talk) now(name string) string {
	c := &t.card
	for _, s := range settings {
		if f, ok := c.Figure(s.figure); ok && s.field == name {
			return t.value(&f) + ", " + origin(c, s.figure)
		}
	}
	text := t.chosen(name)
	switch {
	case text == "":
		return "not given"
	case assumedWhy(c, name) != "":
		return text + ", assumed"
	}
	return text
}

// chosen is a choice's own text, "" where nothing is chosen and nothing assumed.
func (t *talk) chosen(name string) string {
	c, u := &t.card, &t.card.Used
	switch name {
	case "metal":
		return u.Metal
	case "gauge":
		return t.sheet(0)
	case "coating":
		return u.Coating
	case "metal2", "gauge2", "coating2":
		return t.second(name)
	case "joint":
		return u.Joint
	case "filler":
		return c.Setup.Filler.Name
	case "wire":
		return wireName(u.Wire.V)
	case "mode":
		return u.Mode
	case "gas":
		return c.Setup.Gas.Name
	case "position":
		return u.Position
	case "use":
		return u.Use
	case "hazard":
		return strings.ReplaceAll(u.Hazard, ",", ", ")
	}
	f, ok := field.ByName(name)
	if !ok || f.At == nil || !f.At(u).Set {
		return ""
	}
	return f.Show(u, t.units)
}

func (t *talk) second(name string) string {
	u := &t.card.Used
	switch {
	case t.card.Setup.One:
		return "none: this joint has one member"
	case name == "metal2" && t.job.Metal2 == "":
		return "as the first"
	case name == "metal2":
		return u.Metal2
	case name == "coating2":
		return u.Coating2
	}
	return t.sheet(1)
}

// reset leaves a choice open again, or every setting where none is named.
func (t *talk) reset(name string) {
	job := t.job
	if name == "" {
		for _, s := range settings {
			mustField(s.field).Clear(&job)
		}
		job.Amps = calc.Opt{}
		t.swap(job, "All suggestions are back.")
		return
	}
	f, rest := t.fieldNamed(name)
	if f == nil || rest != "" {
		t.refuse("no choice is called "+quoted(name), "type reset feed, reset travel, reset joint ..., or reset alone for every setting")
		return
	}
	open(f, &job)
	if job == t.job {
		t.voice.say(first(f.Name), " is open already: ", t.now(f.Name), ".")
		return
	}
	t.swap(job, first(f.Name)+" is open again.")
}

// swap makes a job the present one if it has a card.
func (t *talk) swap(job calc.Job, said string) {
	card, err := calc.Answer(t.ctx, job, nil)
	if err != nil {
		t.fault(err)
		return
	}
	t.changed(job, card, said, "")
}

// open leaves a choice open.
func open(f *field.Field, j *calc.Job) {
	f.Clear(j)
	clearSize(f.Name, j)
	for _, s := range [...]struct {
		name string
		at   *string
	}{{"metal", &j.Metal}, {"metal", &j.Coating}, {"coating", &j.Coating}, {"metal2", &j.Metal2}, {"metal2", &j.Coating2}, {"coating2", &j.Coating2},
		{"joint", &j.Joint}, {"filler", &j.Filler}, {"mode", &j.Mode}, {"gas", &j.Gas}, {"position", &j.Position}, {"use", &j.Use}, {"hazard", &j.Hazard}} {
		if s.name == f.Name {
			*s.at = ""
		}
	}
}
