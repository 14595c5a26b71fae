package tui

import (
	"fmt"

	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
	"brazebooth/internal/choice"
)

// explain shows what a row of a list rests on.
func explain(ask *choice.Choice, row *choice.Row) action {
	if row == nil {
		return nil
	}
	c := *row
	return func(m *root) tea.Cmd {
		m.read(c.Name, func(th *theme, w int) block { return reasonPage(th, &c, ask.Reasons(m.present(), c.ID), w) })
		return nil
	}
}

// reasonPage is a choice in full: its sentence, then each figure with its source.
func reasonPage(th *theme, c *choice.Row, lines []choice.Reason, w int) block {
	var b block
	b.say(th.plain, 0, rowSentence(c), w)
	col := 0
	for _, l := range lines {
		col = max(col, min(width(l.Label), w/2))
	}
	for i, l := range lines {
		if i == 0 || l.Source != "" {
			b.skip()
		}
		style := th.plain
		if l.Value == "" {
			style = th.bold
		}
		b.addAll(flow(newRow(w).put(style, l.Label), []piece{{col + 2, th.bold, l.Value}}, 2, w))
		if l.Source != "" {
			text := l.Source
			if words := calc.KnownWords(l.Known); words != text {
				text = fmt.Sprintf("%s; %s", text, words)
			}
			b.say(th.quiet, 2, text, w)
		}
	}
	return b
}
