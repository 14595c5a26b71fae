package tui

import (
	"fmt"

	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
	"brazebooth/internal/report"
)

// openSection shows the cross-section.
func openSection(m *root) tea.Cmd {
	m.read("cross-section", sectionBody(&m.session))
	return nil
}

// sectionBody draws the joint's cross-section to scale, with what its signs mean and the edges of the
// operating window.
func sectionBody(s *session) func(th *theme, w int) block {
	return func(th *theme, w int) block {
		c := &s.card
		var b block
		lines, column := report.Drawing(&c.Section, w, 14)
		if lines == nil {
			b.say(th.plain, 0, "There is no drawing: "+zoneWhy(c), w)
			return b
		}
		for _, l := range lines {
			b.add(paintSection(th, l, w))
		}
		b.skip()
		b.say(th.quiet, 0, "/ first member  \\ second  o bead"+zincSigns(c), w)
		b.say(th.quiet, 0, fmt.Sprintf("to scale: ten columns are %s", quantity.Show(10*column, "mm", s.units)), w)
		b.skip()
		b.add(newRow(w).put(th.bold, "edges of the operating window").line())
		b.addAll(s.finding(th, []report.Block{report.Edges{Card: c}}, w, false))
		return b
	}
}

func zincSigns(c *calc.Card) string {
	if c.Section.Melted[0] == 0 && c.Section.Melted[1] == 0 {
		return ""
	}
	return "  X zinc boiled  z zinc melted"
}

// paintSection colours a line of the drawing: runs of one character share one style.
func paintSection(th *theme, l string, w int) line {
	r := newRow(w)
	for i := 0; i < len(l); {
		j := i
		for j < len(l) && l[j] == l[i] {
			j++
		}
		r.put(sectionPaint(th, l[i]), l[i:j])
		i = j
	}
	return r.line()
}

func sectionPaint(th *theme, c byte) paint {
	switch c {
	case 'o':
		return th.bold
	case 'X':
		return th.stop
	case 'z':
		return th.watch
	}
	return th.quiet
}

// zoneWhy is the reason why a card has no verdict.
func zoneWhy(c *calc.Card) string {
	for _, w := range c.Warnings {
		if w.Code == "not-modelled" {
			return w.Text
		}
	}
	return "this joint is not modelled."
}

// verdictWords is the verdict as a hand says it.
func verdictWords(c *calc.Card) string {
	if v := c.Verdict(); v != "not-modelled" {
		return v
	}
	return "no verdict: judge it on a test bead"
}
