package tui

import (
	"strings"

	"charm.land/bubbles/v2/key"

	"brazebooth/calc"
	"brazebooth/internal/choice"
	"brazebooth/internal/quantity"
)

// titleLine names the program and says whose job stands on the screen.
func titleLine(th *theme, s *session, w int) line {
	long, short := ownTitle, ownTitle
	if s.example {
		long, short = ExampleTitle, exampleShort
	}
	units := string(s.units)
	if s.units == quantity.Both {
		units = "both units"
	}
	r := newRow(w)
	if w >= narrowWidth {
		r.put(th.bold, "brazebooth").blank(2)
	}
	if width(long)+2+width(units) <= r.left() {
		short = long
	}
	r.put(th.plain, short)
	if s.old {
		r.put(th.watch, "  ▲ card is of the last job")
	}
	if r.left() > width(units)+1 {
		r.to(w-width(units)).put(th.quiet, units)
	}
	return r.line()
}

// pathStep is one word of the path: what was chosen, and whether it was.
type pathStep struct {
	text  string
	guess bool
}

func pathSteps(s *session, c *calc.Card, long bool) [5]pathStep {
	var steps [5]pathStep
	for i, q := range pathChoices() {
		text := q.Shown(c, s.units)
		if q.Name == "wire" && long {
			text += " " + fillerShort(c)
		}
		steps[i] = pathStep{text, q.Assumed(c) != ""}
	}
	steps[4] = pathStep{"card", false}
	return steps
}

// fillerShort is the alloy's symbol, as on a spool.
func fillerShort(c *calc.Card) string {
	words := strings.Fields(c.Setup.Filler.Name)
	if len(words) == 0 {
		return c.Used.Filler
	}
	if last := words[len(words)-1]; strings.HasPrefix(last, "Cu") {
		return last
	}
	return c.Used.Filler
}

// pathLines are the way from the metal to the card with what was chosen on it. The step at hand stands in brackets; ~
// marks what nobody chose yet. A way too long for one line goes on in a second one.
func pathLines(th *theme, s *session, c *calc.Card, at, w int) block {
	for _, form := range [...]struct {
		arrow string
		long  bool
	}{{" › ", true}, {" › ", false}, {"›", false}} {
		steps := pathSteps(s, c, form.long)
		if pathWidth(steps, at, form.arrow) <= w || form.arrow == "›" {
			return drawPath(th, steps, at, form.arrow, w)
		}
	}
	return nil
}

func pathWidth(steps [5]pathStep, at int, arrow string) int {
	n := 4*width(arrow) + 2
	for _, p := range steps {
		n += width(p.text)
		if p.guess {
			n++
		}
	}
	return n
}

func drawPath(th *theme, steps [5]pathStep, at int, arrow string, w int) block {
	var b block
	r := newRow(w)
	guessed := false
	for i, p := range steps {
		text, style := p.text, th.plain
		if p.guess {
			text, style, guessed = "~"+text, th.quiet, true
		}
		if i == at {
			text, style = "["+text+"]", th.bold
		}
		if i > 0 {
			r.put(th.quiet, arrow)
		}
		if r.left() < width(text) {
			b.add(r.line())
			r = newRow(w)
		}
		r.put(style, text)
	}
	if legend := "~ assumed"; guessed && r.left() > width(legend)+2 {
		r.to(w-width(legend)).put(th.quiet, legend)
	}
	return append(b, r.line())
}

// restLines are the rest of the job, quiet, on one line where that is enough: what waits on the card to be changed.
func restLines(th *theme, s *session, c *calc.Card, w int) block {
	var words []string
	for _, q := range choice.Named("joint", "gap", "position", "coating", "metal2", "gauge2") {
		text := brief(q, c, s.units)
		if text == "" || !q.Applies(c) {
			continue
		}
		if q.Assumed(c) != "" {
			text = "~" + text
		}
		words = append(words, text)
	}
	var b block
	b.say(th.quiet, 0, strings.Join(words, " · "), w)
	if len(b) == 0 {
		b.skip()
	}
	return b
}

// footLine shows the keys that count here, as many as there is room for; help is always among them.
func footLine(th *theme, keys []key.Binding, help key.Binding, w int) line {
	r := newRow(w)
	need := keyWidth(help)
	for _, k := range keys {
		if r.used+keyWidth(k)+2+need > w {
			break
		}
		putKey(th, r, k)
		r.blank(2)
	}
	putKey(th, r, help)
	return r.line()
}

func keyWidth(k key.Binding) int { return width(k.Help().Key) + 1 + width(k.Help().Desc) }

func putKey(th *theme, r *row, k key.Binding) {
	r.put(th.bold, k.Help().Key).blank(1).put(th.quiet, k.Help().Desc)
}

// named gives a key other words where a screen has better ones.
func named(k key.Binding, shown, does string) key.Binding {
	k.SetHelp(shown, does)
	return k
}
