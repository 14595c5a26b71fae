package tui

import (
	"strings"

	"brazebooth/calc"
)

// The large figures are for a screen some steps away: what the hand sets, in digits three or five
// lines high. Up, down, less and more work as on the card.

// glyphs are digits on a grid of three by five: one string a row, # is ink.
func glyph(r rune) [5]string {
	switch r {
	case '0':
		return [5]string{"###", "# #", "# #", "# #", "###"}
	case '1':
		return [5]string{" # ", "## ", " # ", " # ", "###"}
	case '2':
		return [5]string{"###", "  #", "###", "#  ", "###"}
	case '3':
		return [5]string{"###", "  #", "###", "  #", "###"}
	case '4':
		return [5]string{"# #", "# #", "###", "  #", "  #"}
	case '5':
		return [5]string{"###", "#  ", "###", "  #", "###"}
	case '6':
		return [5]string{"###", "#  ", "###", "# #", "###"}
	case '7':
		return [5]string{"###", "  #", "  #", "  #", "  #"}
	case '8':
		return [5]string{"###", "# #", "###", "# #", "###"}
	case '9':
		return [5]string{"###", "# #", "###", "  #", "###"}
	case '.':
		return [5]string{" ", " ", " ", " ", "#"}
	}
	return [5]string{"   ", "   ", "###", "   ", "   "}
}

// digits draws a number five lines high, two cells to a dot, or three lines high with half blocks.
func digits(number string, tall bool) []string {
	if tall {
		return tallDigits(number)
	}
	lines := make([]string, 3)
	for n, r := range number {
		g := glyph(r)
		for i := range lines {
			if n > 0 {
				lines[i] += " "
			}
			low := strings.Repeat(" ", len(g[0]))
			if 2*i+1 < len(g) {
				low = g[2*i+1]
			}
			lines[i] += halves(g[2*i], low)
		}
	}
	return lines
}

func tallDigits(number string) []string {
	lines := make([]string, 5)
	for n, r := range number {
		g := glyph(r)
		for i := range lines {
			if n > 0 {
				lines[i] += "  "
			}
			for _, dot := range g[i] {
				if dot == '#' {
					lines[i] += "██"
				} else {
					lines[i] += "  "
				}
			}
		}
	}
	return lines
}

// halves puts two rows of dots into one line.
func halves(up, low string) string {
	var b strings.Builder
	for i := range up {
		switch u, l := up[i] == '#', low[i] == '#'; {
		case u && l:
			b.WriteRune('█')
		case u:
			b.WriteRune('▀')
		case l:
			b.WriteRune('▄')
		default:
			b.WriteByte(' ')
		}
	}
	return b.String()
}

// isLarge picks the settings that the hand turns or times.
func isLarge(name string) bool {
	switch name {
	case "wire_feed", "volts", "travel", "arc_on", "arc_off":
		return true
	}
	return false
}

// largeView draws the large figures with the stops and the test bead under them.
func (p *cardPage) largeView(th *theme, c *calc.Card, w, h int) block {
	band := cautionBand(th, c, w, h/2, false)
	n := 0
	for i := range p.rows {
		if isLarge(p.rows[i].name) {
			n++
		}
	}
	tall := w >= besideWidth && n*6+len(band) <= h
	var b block
	first, last := 0, 0
	for i := range p.rows {
		r := &p.rows[i]
		if !isLarge(r.name) {
			continue
		}
		lines := r.large(th, i == p.at, tall, w)
		if i == p.at {
			first, last = len(b), len(b)+len(lines)-1
		}
		b.addAll(lines)
		b.skip()
	}
	all := len(b)
	b = p.all.marked(th, p.all.show(b, first, last, h-len(band)), all, w)
	return append(b.fit(h-len(band)), band...)
}

// largeAt is the column at which the digits begin.
const largeAt = 12

// large is one figure: its name, its digits, and beside them unit, other system and remark.
func (r *cardRow) large(th *theme, chosen, tall bool, w int) block {
	aside := [3]string{r.cell.unit, r.cell.alt(), r.short}
	if r.tag != "" {
		aside[0] += "  " + r.tag
	}
	if r.name != "travel" {
		aside[2] = ""
	}
	lines := digits(r.cell.number, tall)
	b := make(block, 0, len(lines))
	for i, l := range lines {
		line := newRow(w)
		if i == 0 && chosen {
			line.put(th.strong, "▸")
		}
		if i == 0 {
			line.to(2).put(th.quiet, r.label)
		}
		line.to(largeAt).put(th.strong, l)
		if i < len(aside) && aside[i] != "" && width(aside[i])+2 <= line.left() {
			line.blank(2).put(th.plain, aside[i])
			aside[i] = ""
		}
		b.add(line.line())
	}
	for _, rest := range aside {
		b.say(th.plain, largeAt, rest, w)
	}
	return b
}
