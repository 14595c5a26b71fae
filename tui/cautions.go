package tui

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
)

func openPoints(m *root) tea.Cmd {
	return m.read("cautions", func(th *theme, w int) block { return cautionPage(th, &m.session.card, w) })
}

// sign is the mark before a warning: a shape and a colour, and on the page of cautions also the word.
func (th *theme) sign(s calc.Severity) (paint, string) {
	switch s {
	case calc.Stop:
		return th.stop, "■"
	case calc.Caution:
		return th.watch, "▲"
	}
	return th.bold, "•"
}

// cautionBand is the band below the settings: every stop in full, then this job's own dangers, what is wrong with the
// setting, and the dangers of every arc, as many as fit in full. What is wrong with the setting gets its room first,
// but comes after the dangers, so that these do not move when the verdict changes. That a setting is only just good
// takes no room from a danger, because the strip shows it too. The last line names the dangers that are not shown in
// full, or counts the warnings. said is the code of a warning that the strip shows in full.
func cautionBand(th *theme, c *calc.Card, w, h int, said string) block {
	var b, wrong block
	whole := map[string]bool{}
	h -= max(1, len(dangerBand(th, c, whole, w))) - 1 // for its last lines
	add := func(to *block, fits func(*calc.Warning) bool) {
		for i := range c.Warnings {
			x := &c.Warnings[i]
			if x.Code == said || whole[x.Code] || !fits(x) {
				continue
			}
			lines := cautionLines(th, unsaid(x, said), w)
			if len(b)+len(wrong)+len(lines)+1 > h {
				return
			}
			to.addAll(lines)
			whole[x.Code] = true
		}
	}
	add(&b, func(x *calc.Warning) bool { return x.Severity == calc.Stop })
	if stops := unsaidStops(c, said); len(b) == 0 && h > 1 && len(stops) > 0 {
		b = cautionPart(th, &stops[0], w, h-1) // no room for a whole stop: as many clauses of the first as fit
	}
	add(&wrong, func(x *calc.Warning) bool { return x.Severity == calc.Caution && ofTheSetting(c, x) })
	add(&b, func(x *calc.Warning) bool {
		return x.Severity == calc.Caution && !ofEveryArc(x) && !ofTheSetting(c, x) && !justGood(x)
	})
	b, wrong = append(b, wrong...), nil
	add(&b, justGood)
	add(&b, func(x *calc.Warning) bool { return x.Severity == calc.Info && !ofEveryArc(x) })
	add(&b, func(x *calc.Warning) bool { return x.Code == "test-bead" })
	add(&b, func(x *calc.Warning) bool { return x.Severity == calc.Caution && ofEveryArc(x) })
	if rows := dangerBand(th, c, whole, w); len(rows) > 0 {
		b.addAll(rows)
	} else {
		r := cautionTally(th, c, w).put(th.plain, " – ").put(th.bold, "c")
		if tail := " shows all"; width(tail) <= r.left() {
			r.put(th.plain, tail)
		}
		b.add(r.line())
	}
	return b
}

// unsaidStops are the stops that the strip does not show in full.
func unsaidStops(c *calc.Card, said string) []calc.Warning {
	return slices.DeleteFunc(calc.Stops(c.Warnings), func(x calc.Warning) bool { return x.Code == said })
}

// unsaid is a warning without the sentence that the strip already shows: the chance of a marginal setting.
func unsaid(x *calc.Warning, said string) *calc.Warning {
	if _, rest, ok := strings.Cut(x.Text, ". "); ok && x.Code == "marginal" && said == "test-bead" {
		return &calc.Warning{Severity: x.Severity, Text: rest}
	}
	return x
}

// ofTheSetting reports whether a warning says what is wrong with this setting.
func ofTheSetting(c *calc.Card, x *calc.Warning) bool {
	return slices.Contains([]string{c.Zone, "gap-not-bridged", "metal-runs", "no-good-setting", "timed-closed"}, x.Code)
}

// justGood reports whether a warning says that a setting is only just good, which the strip shows too.
func justGood(x *calc.Warning) bool { return x.Code == "marginal" || x.Code == "just-good" }

// ofEveryArc reports whether every card has this warning.
func ofEveryArc(x *calc.Warning) bool {
	return slices.Contains([]string{"stops", "shock", "solvent", "eyes", "fire", "strength", "test-bead"}, x.Code)
}

// cautionLines is one warning, wrapped behind its sign. A stop begins with the word STOP.
func cautionLines(th *theme, x *calc.Warning, w int) block {
	sign, mark := th.sign(x.Severity)
	p, text := th.plain, th.inUnits(x.Text)
	if x.Severity == calc.Stop {
		p, text = th.stop, "STOP: "+text
	}
	var b block
	b.pointed(sign, 0, mark, 2, p, text, w)
	return b
}

// cautionPart is as many whole clauses of a warning as fit on these lines, with a sign that there is more.
func cautionPart(th *theme, x *calc.Warning, w, lines int) block {
	part := *x
	said := func(text string) block { part.Text = text; return cautionLines(th, &part, w) }
	b := said(clauses(x.Text, ";:.", func(text string) bool { return len(said(text)) <= lines }))
	return b[:min(len(b), lines)]
}

// cautionTally counts the card's warnings of each severity.
func cautionTally(th *theme, c *calc.Card, w int) *row {
	n := map[calc.Severity]int{}
	for i := range c.Warnings {
		n[c.Warnings[i].Severity]++
	}
	r := newRow(w)
	put := func(p paint, n int, mark, what string) {
		if n == 0 {
			return
		}
		if r.used > 0 {
			r.blank(2)
		}
		text := mark + " " + quantity.Count(n, what)
		if width(text) > r.left() {
			text = fmt.Sprintf("%s %d", mark, n)
		}
		r.put(p, text)
	}
	put(th.stop, n[calc.Stop], "■", "stop")
	put(th.watch, n[calc.Caution], "▲", "caution")
	put(th.plain, n[calc.Info], "•", "note")
	return r
}

// cautionPage is every warning in full with its source.
func cautionPage(th *theme, c *calc.Card, w int) (b block) {
	for i := range c.Warnings {
		x := &c.Warnings[i]
		if i > 0 {
			b.skip()
		}
		p, mark := th.sign(x.Severity)
		word := string(x.Severity)
		if x.Severity == calc.Info {
			word = "note"
		}
		b.add(newRow(w).put(p, mark+" "+word).line())
		b.say(th.plain, 2, th.inUnits(x.Text), w)
		b.say(th.quiet, 2, x.Basis, w)
	}
	return b
}

// clauses is the first clauses of a text, as many as fit but at least one, with a sign that there is more. A clause
// ends with one of the characters in ends.
func clauses(text, ends string, fits func(string) bool) string {
	if fits(text) {
		return text
	}
	best := ""
	for i, r := range text {
		if !strings.ContainsRune(ends, r) || i+1 < len(text) && text[i+1] != ' ' {
			continue
		}
		if head := text[:i+1] + " …"; best == "" || best == "STOP: …" || fits(head) {
			best = head
		}
	}
	return cmp.Or(best, text)
}

// fewer drops words or clauses from the end of a text until it fits. They begin with one of the characters in ends.
func fewer(text, ends string, fits func(string) bool) string {
	for !fits(text) {
		i := strings.LastIndexAny(text, ends)
		if i < 0 {
			break
		}
		text = strings.TrimRight(text[:i], ",;: ")
	}
	return text
}
