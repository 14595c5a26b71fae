package tui

import (
	"fmt"

	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
	"brazebooth/calc/practice"
	"brazebooth/internal/quantity"
	"brazebooth/internal/report"
)

// program is the row of beads that the program's own corrections laid.
func (p *practicePage) program(th *theme, units quantity.System, w int) block {
	var b block
	b.add(newRow(w).put(th.bold, "the program's own beads, from the same start").line())
	for i := range p.run.Steps {
		s := &p.run.Steps[i]
		b.addAll(beadLine(th, i+1, &s.Bead, units, w))
		if text := report.CorrectionText(s.Change, s.Do, units.Lead()); text != "" {
			b.say(th.bold, 5, "change "+text, w)
		}
	}
	b.say(th.quiet, 0, "good in this booth: "+report.SettingText(&p.job.Best, units.Lead()), w)
	return b
}

// truth is what the booth hid and how it moved the last bead.
func (p *practicePage) truth(th *theme, w int, units quantity.System) block {
	var b block
	sys := units.Lead()
	b.add(newRow(w).put(th.bold, "what this booth hid").line())
	for i := range p.revealed.Hidden {
		h := &p.revealed.Hidden[i]
		value, band := quantity.Band(h.Value, h.Low, h.High, h.Unit, sys)
		unit := quantity.Label(h.Unit, sys)
		b.hang(th.plain, 0, "• ", fmt.Sprintf("%s %s; the cards have %s (%s): %s", calc.FigureLabel(h.Name),
			spaced(report.TrueValue(&h.Figure, h.True, sys), unit), spaced(value, unit), band, h.Basis.Formula), w)
	}
	b.add(newRow(w).put(th.bold, "how it moved your last bead").line())
	for i := range p.revealed.Moved {
		m := &p.revealed.Moved[i]
		v := report.ValueOf(&m.Figure, sys)
		alone := func(k int) string { return report.TrueValue(&m.Figure, m.Alone[k], sys) }
		b.hang(th.plain, 0, "• ", fmt.Sprintf("%s here %s; by the card %s (%s), with the voltage alone %s, "+
			"efficiency alone %s, stick-out alone %s", calc.FigureLabel(m.Name),
			spaced(report.TrueValue(&m.Figure, m.True, sys), v.Unit), v, v.Band(), alone(0), alone(1), alone(2)), w)
	}
	return b
}

// cautions are those of the job's own card, under that of the practice.
func (p *practicePage) cautions(m *root) tea.Cmd {
	card := p.card
	m.read("cautions of this practice job", func(th *theme, w int) block {
		return append(cautionLines(th, &practice.Caution, w), cautionPage(th, &card, w)...)
	})
	return nil
}

// keepText says what is kept, and that nothing is unasked.
func (p *practicePage) keepText(b *block, th *theme, keeps bool, w int) {
	switch {
	case !keeps:
	case p.keeping:
		b.say(th.quiet, 0, "being kept …", w)
	case p.kept:
		b.say(th.good, 0, "✓ kept in the book", w)
	default:
		b.say(th.bold, 0, "k: keep level, booth, your beads and the program's in the book; else nothing is kept", w)
	}
}
