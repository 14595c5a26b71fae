package tui

import (
	"fmt"
	"strings"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/internal/report"
	"brazebooth/tui/canvas"
)

// changeText shows the one change, its reason, and the possible causes of the bead.
func (m *root) changeText(b *block, a *advice.Page, w int) {
	th, c := &m.th, a.Correction
	b.addAll(m.bigChange(c.Change, w))
	if text := report.CorrectionText(c.Change, c.Do, m.Units.Lead()); text != "" {
		mark, paint := "change ", th.bold
		switch {
		case m.fix.applied:
			mark, paint = "✓ changed ", th.good
		case c.Change == nil: // something else to do than a setting
			mark = "change: "
		}
		b.say(paint, 0, mark+text, w)
	}
	b.addAll(chanceBars(th, c, w))
	b.say(th.plain, 0, th.inUnits(c.Why), w)
	b.skip()
	switch {
	case c.Change != nil && !m.fix.applied:
		b.say(th.bold, 0, "enter: put this change on the card", w)
	default:
		b.say(th.bold, 0, "enter: lay the next bead and say what it shows", w)
	}
	m.keepText(b, w)
	rest := *a
	rest.Correction = nil
	b.skip()
	b.addAll(m.session.finding(th, report.Page(&rest, nil), w, m.part.why))
}

// bigChange is the change in big letters that can be read from the booth: which way, from what, to what. It is empty if
// there is no room, or if the change is not a number.
func (m *root) bigChange(c *advice.Change, w int) (b block) {
	if c == nil || c.What == "mode" || m.h < lowHeight {
		return nil
	}
	value := func(v float64) report.Value {
		return report.ValueOf(&calc.Figure{Name: c.What, Value: v, Low: v, High: v, Unit: c.Unit}, m.Units.Lead())
	}
	from, to := value(c.From), value(c.To)
	words := handSettings[c.What].less
	if c.To > c.From {
		words = handSettings[c.What].more
	}
	draw := func(ink canvas.Ink, text string, lines int) {
		if size, ok := canvas.Fit(text, w-1-width(to.Unit), lines); ok {
			b.addAll(block(canvas.BigText(m.th.Theme, size, ink, text)))
		}
	}
	draw(canvas.Quiet.Ink(), strings.ToUpper(words), canvas.SizeM.Lines)
	draw(canvas.Text.Ink(), m.th.look.number(from.Number+" > "+to.Number), max(canvas.SizeM.Lines, m.h/6))
	return b
}

// chanceBars show how likely the next bead is good, with the change and without.
func chanceBars(th *theme, c *advice.Correction, w int) (b block) {
	const name, number = 24, 12
	bar := min(40, w-name-number)
	if c.GoodAfter == 0 || bar < 8 {
		return nil
	}
	row := func(what string, ink canvas.Ink, percent float64) {
		left := newRow(name).put(th.quiet, what).line()
		line := join(left, canvas.Share(th.Theme, ink, bar, percent/100), name, th.quiet, "")
		b.add(join(line, newRow(number).put(th.bold, fmt.Sprintf("%.0f", percent)).put(th.quiet, " in 100").line(),
			name+bar+2, th.quiet, ""))
	}
	row("good next time with it", canvas.Good.Ink(), c.GoodAfter)
	row("as it is", canvas.Quiet.Ink(), c.GoodBefore)
	return b
}
