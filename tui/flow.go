package tui

import (
	"strings"

	"brazebooth/internal/report"
)

// piece is one part of a row: where it would like to stand and how it looks.
type piece struct {
	col   int
	paint paint
	text  string
}

// draw sets the row's parts side by side; those without room stand under the value, whole.
func (r *cardRow) draw(th *theme, c columns, chosen bool, w int) block {
	from := c.label + 2
	head := newRow(w).put(th.under(chosen, th.plain), r.label).to(from)
	if !r.numbered() {
		return flow(head, []piece{{from, th.plain, r.words}}, from, w)
	}
	v := &r.fig.Value
	head.to(from+c.number-width(v.Number)).put(th.plain, v.Number+" "+v.Unit)
	at := from + c.number + 1 + c.unit + 2
	parts := []piece{{at, th.plain, r.fig.Other.String()}}
	if c.alt > 0 {
		at += c.alt + 2
	}
	return flow(head, append(parts, piece{at, th.plain, v.Band()}), from, w)
}

func guessMark(tag string) string {
	if tag == "assumed" {
		return "~"
	}
	return ""
}

// flow puts the parts behind head, in their columns where that fits, closer where it does not, and on
// further lines from column from on where the line is full.
func flow(head *row, parts []piece, from, w int) (b block) {
	for _, p := range parts {
		if p.text == "" {
			continue
		}
		at, need := from, width(p.text)
		if head.used > from {
			at = max(p.col, head.used+2)
			if at+need > w {
				at = head.used + 2
			}
		}
		if at+need > w && head.used > from {
			b.add(head.line())
			head, at = newRow(w), from
			if need <= w-2 {
				at = min(from, w-need)
			}
		}
		for i, l := range wrap(p.text, w-at) {
			if i > 0 {
				b.add(head.line())
				head = newRow(w)
			}
			head.to(at).put(p.paint, l)
		}
	}
	b.add(head.line())
	return b
}

func spaced(number, unit string) string { return report.Value{Number: number, Unit: unit}.String() }

// headline is the first clause of an advice: what to do, without the reason.
func headline(s string) string {
	if i := strings.IndexAny(s, ";:"); i > 0 {
		return s[:i]
	}
	return s
}
