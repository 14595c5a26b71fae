package linear

import (
	"fmt"
	"slices"

	"brazebooth/calc"
	"brazebooth/internal/choice"
	"brazebooth/internal/quantity"
	"brazebooth/internal/report"
	"brazebooth/tables"
)

// change puts a choice on the job, if the result has a card, and says what changed.
func (t *talk) change(c *choice.Choice, text string) bool {
	job, card, err := t.with(c, text)
	if t.failed("", err) {
		return false
	}
	t.changed(job, card, "", c)
	return true
}

// changed replaces the present job. It says first what was changed, then every stop, the new cautions, and the settings
// that moved.
func (t *talk) changed(job calc.Job, card calc.Card, what string, c *choice.Choice) {
	before, heatBefore := t.settings(), heat(&t.card)
	if job.Metal != t.job.Metal || job.Joint != t.job.Joint { // a new card
		t.told = nil
	}
	t.before = append(t.before, past{t.job, t.taught})
	t.job, t.card = job, card
	t.page = nil
	own := ""
	if f, ok := t.settingFigure(c); ok {
		own = t.setting(&f)
	}
	switch {
	case own != "":
		t.voice.say(own)
	case c != nil:
		t.voice.say(capital(c.Words()), ": ", t.now(c), ".")
	default:
		t.voice.say(what)
	}
	same := t.dangers(func(w *calc.Warning) bool { return !slices.Contains(t.told, w.Code) })
	for _, l := range t.settings() {
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

// settingFigure is the figure that a choice sets. It returns false if the choice is no setting, or the card has no such
// figure.
func (t *talk) settingFigure(c *choice.Choice) (calc.Figure, bool) {
	if c == nil || choice.SettingOf(c.Figure) != c {
		return calc.Figure{}, false
	}
	return t.card.Figure(c.Figure)
}

// now is a choice's value on the card, and whether it was given, assumed or suggested.
func (t *talk) now(c *choice.Choice) string {
	if f, ok := t.settingFigure(c); ok {
		return value(t.row(&f)) + ", " + origin(&t.card, f.Name)
	}
	text := t.chosen(c)
	switch {
	case text == "":
		return "not given"
	case c.Assumed(&t.card) != "":
		return text + ", assumed"
	}
	return text
}

// chosen is the text of a choice's value, "" if it is neither chosen nor assumed.
func (t *talk) chosen(c *choice.Choice) string {
	switch {
	case c.Name == "backing" && !c.Applies(&t.card):
		return "none: only a butt has a backing"
	case !c.Applies(&t.card):
		return "none: this joint has one member"
	case c.Name == "metal2" && !c.Given(&t.job):
		return "as the first"
	case c.Kind == quantity.FieldSize && c.Second():
		return t.sheet(1)
	case c.Kind == quantity.FieldSize:
		return t.sheet(0)
	case c.Kind == quantity.FieldWire:
		mm := t.card.Used.Wire.V
		if w, ok := tables.WireNear(mm); !ok || w.Inch == 0 { // a spool's "0.9mm" would be read letter by letter
			return quantity.Show(mm, "mm", quantity.Metric)
		}
		return report.WireText(mm)
	case c.Kind != 0:
		return c.Show(&t.card.Used, t.units)
	}
	return c.Shown(&t.card, t.units)
}

func (t *talk) sheet(i int) string {
	m := &t.card.Setup.Members[i]
	size := quantity.Show(m.Thickness, "mm", t.units)
	if m.Gauge == 0 {
		return size
	}
	return fmt.Sprintf("%d ga, %s", m.Gauge, size)
}

// rows are the answers to a choice that a question lists, none for a number of any size.
func (t *talk) rows(c *choice.Choice) []choice.Row {
	solve := func(job calc.Job) (calc.Card, error) { return answer(t.ctx, job, nil) }
	return c.Standard(&choice.Present{Card: &t.card, Job: t.job, Units: t.units, Solve: solve})
}

// listed is how many answers a question lists. It does not compute whether each has a good setting.
func (t *talk) listed(c *choice.Choice) int {
	unasked := func(calc.Job) (calc.Card, error) { return calc.Card{}, nil }
	return len(c.Standard(&choice.Present{Card: &t.card, Job: t.job, Units: t.units, Solve: unasked}))
}

// reset leaves a choice open again; without a name, every setting.
func (t *talk) reset(name string) {
	job := t.job
	if name == "" {
		for _, c := range choice.Settings() {
			c.Clear(&job)
		}
		job.Amps = calc.Opt{}
		t.swap(job, "All suggestions are back.")
		return
	}
	c, rest := t.choiceNamed(name)
	if c == nil || rest != "" {
		t.refuse("no choice is called "+quoted(name),
			"type reset feed, reset travel, reset joint ..., or reset alone for every setting")
		return
	}
	c.Clear(&job)
	if job == t.job {
		t.voice.say(capital(c.Name), " is open already: ", t.now(c), ".")
		return
	}
	t.swap(job, capital(c.Name)+" is open again.")
}

// swap replaces the present job if the new one has a card.
func (t *talk) swap(job calc.Job, said string) {
	card, err := answer(t.ctx, job, nil)
	if t.failed("", err) {
		return
	}
	t.changed(job, card, said, nil)
}

func (t *talk) undo(string) {
	n := len(t.before) - 1
	if n < 0 {
		t.refuse("nothing was changed on this card", "type feed and a number, or help")
		return
	}
	was := t.before[n]
	t.swap(was.job, "Taken back.")
	t.before, t.taught = t.before[:n], was.taught
}
