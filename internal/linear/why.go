package linear

import (
	"fmt"
	"math"
	"slices"

	"brazebooth/calc"
	"brazebooth/internal/choice"
)

// why says where a figure, a note or a choice comes from.
func (t *talk) why(name string) {
	if name == "" {
		t.refuse("why what?", "type why feed, why current, why joint")
		return
	}
	if f := t.figureNamed(name); f != nil {
		t.reason(f)
		return
	}
	key := choice.Plain(name)
	if t.page != nil && key == t.page.Name {
		for _, r := range t.page.Reasons {
			t.voice.say(sentence(capital(t.inUnits(r.Text))))
			t.source(r.Source, r.Known)
		}
		return
	}
	for _, n := range t.card.Notes {
		if choice.Plain(n.Name) == key {
			t.voice.say(capital(n.Name), ": ", sentence(t.inUnits(n.Text)))
			t.source(n.Source, n.Known)
			return
		}
	}
	if c, rest := t.choiceNamed(name); c != nil && rest == "" {
		t.voice.say(capital(c.Words()), ": ", t.now(c), ".")
		if why := c.Assumed(&t.card); why != "" {
			t.voice.say("It was not given: ", sentence(t.inUnits(why)))
		}
		return
	}
	t.refuse("no figure is called "+quoted(name),
		"type why feed, why volts, why travel, or why and a name that results reads out; "+
			"words "+literal(quoted(name))+" asks the glossary")
}

// figureNamed finds a figure of the card, or of the page that was read out last, by any of its names; nil if there is
// none.
func (t *talk) figureNamed(name string) *calc.Figure {
	key := choice.Plain(name)
	if c, rest := t.choiceNamed(name); c != nil && rest == "" && c.Figure != "" {
		key = choice.Plain(c.Figure)
	}
	list := t.card.Figures
	if t.page != nil {
		list = slices.Concat(list, t.page.Figures)
	}
	for i := range list {
		f := &list[i]
		for _, n := range [...]string{f.Name, label(f.Name), calc.FigureLabel(f.Name)} {
			if choice.Plain(n) == key {
				return f
			}
		}
	}
	return nil
}

// reason reads out a figure's formula, numbers, source and the inputs that move it most.
func (t *talk) reason(f *calc.Figure) {
	t.voice.say(t.setting(f))
	b := &f.Basis
	if b.Known == "given" {
		t.voice.say("You gave it.")
		return
	}
	t.voice.line(t.voice.marked(sentence("Formula: " + formula(b.Plain()))))
	if b.Substituted() != b.Plain() {
		t.voice.line(t.voice.marked(sentence("With the numbers: " + numbers(b))))
	}
	if c := choice.SettingOf(f.Name); c != nil && c.Assumed(&t.card) != "" {
		t.voice.say("Assumed: ", sentence(t.inUnits(c.Assumed(&t.card))))
	}
	t.source(b.Source, b.Known)
	t.topInputs(b)
}

func (t *talk) source(from, known string) {
	text := "Source: " + from
	if words := calc.KnownWords(known); words != from {
		text += "; " + words
	}
	t.voice.line(spell(sentence(text))) // the section 3.2 of a document keeps its point
}

// topInputs reads out the inputs that move a figure most.
func (t *talk) topInputs(b *calc.Basis) {
	list := b.Telling()
	if len(list) == 0 {
		return
	}
	t.voice.say("It depends on these, the strongest first:")
	for _, in := range list {
		text := in.Name + ", " + inUnit(fmt.Sprintf("%.4g", in.Value), in.Unit)
		if in.Assumed {
			text += ", assumed"
		}
		t.voice.say(text, fmt.Sprintf(": within its own band it moves the figure by %.1f per cent.",
			math.Abs(in.Sensitivity)))
	}
}
