package tui

import (
	"fmt"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

// reason is one line of what a choice rests on.
type reason struct{ label, value, source, known string }

// datum is the reason that a table's figure gives.
func datum(label string, d tables.Datum, sys quantity.System) reason {
	first := oneSystem(sys)
	number, band := quantity.Band(d.V, d.Low, d.High, d.Unit, first)
	value := spaced(number, quantity.Label(d.Unit, first))
	if d.Low != d.High {
		value += " (" + band + ")"
	}
	return reason{label, value, d.Source, string(d.Known)}
}

// reasonPage is a choice in full: its sentence, then each figure with its source.
func reasonPage(th *theme, c *choice, lines []reason, w int) block {
	var b block
	b.say(th.plain, 0, c.sentence(), w)
	col := 0
	for _, l := range lines {
		col = max(col, min(width(l.label), w/2))
	}
	for i, l := range lines {
		if i == 0 || l.source != "" {
			b.skip()
		}
		style := th.plain
		if l.value == "" {
			style = th.bold
		}
		b.addAll(flow(newRow(w).put(style, l.label), []piece{{col + 2, th.bold, l.value}}, 2, w))
		if l.source != "" {
			text := l.source
			if words := calc.KnownWords(l.known); words != text {
				text = fmt.Sprintf("%s; %s", text, words)
			}
			b.say(th.quiet, 2, text, w)
		}
	}
	return b
}
