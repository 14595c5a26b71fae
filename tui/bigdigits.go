package tui

import "strings"

// glyph is a digit, a point, a comma or a minus on a grid five dots high: one string a row, # is ink; false where there is none.
func glyph(r rune) ([5]string, bool) {
	switch r {
	case '0':
		return [5]string{"###", "# #", "# #", "# #", "###"}, true
	case '1':
		return [5]string{" # ", "## ", " # ", " # ", "###"}, true
	case '2':
		return [5]string{"###", "  #", "###", "#  ", "###"}, true
	case '3':
		return [5]string{"###", "  #", "###", "  #", "###"}, true
	case '4':
		return [5]string{"# #", "# #", "###", "  #", "  #"}, true
	case '5':
		return [5]string{"###", "#  ", "###", "  #", "###"}, true
	case '6':
		return [5]string{"###", "#  ", "###", "# #", "###"}, true
	case '7':
		return [5]string{"###", "  #", "  #", "  #", "  #"}, true
	case '8':
		return [5]string{"###", "# #", "###", "# #", "###"}, true
	case '9':
		return [5]string{"###", "# #", "###", "  #", "###"}, true
	case '.':
		return [5]string{" ", " ", " ", " ", "#"}, true
	case ',':
		return [5]string{"  ", "  ", "  ", " #", "# "}, true
	case '-':
		return [5]string{"   ", "   ", "###", "   ", "   "}, true
	}
	return [5]string{}, false
}

// dot is the size of one dot of a digit: columns, and halves of a line. A cell of a terminal is about twice as high as wide,
// so that a dot of 2 by 2 is a square.
type dot struct{ wide, high int }

// larger reports whether digits of d can be read from further away: the higher ones, of two as high the wider ones.
func (d dot) larger(than dot) bool {
	return d.high > than.high || d.high == than.high && d.wide > than.wide
}

// lines is how many lines a digit takes.
func (d dot) lines() int { return (5*d.high + 1) / 2 }

// drawable reports whether every character of a number has its glyph.
func drawable(number string) bool {
	for _, r := range number {
		if _, ok := glyph(r); !ok {
			return false
		}
	}
	return number != ""
}

// digitsWidth is how many columns a number takes.
func digitsWidth(number string, d dot) int {
	n := -1
	for _, r := range number {
		g, _ := glyph(r)
		n += len(g[0]) + 1
	}
	return max(0, n) * d.wide
}

// digits draws a number in blocks.
func digits(number string, d dot) []string {
	rows := [5]string{}
	for n, r := range number {
		g, _ := glyph(r)
		for i := range rows {
			if n > 0 {
				rows[i] += " "
			}
			rows[i] += g[i]
		}
	}
	lines := make([]string, d.lines())
	for i := range lines {
		low := strings.Repeat(" ", len(rows[0]))
		if at := 2*i + 1; at < 5*d.high {
			low = rows[at/d.high]
		}
		lines[i] = halves(rows[2*i/d.high], low, d.wide)
	}
	return lines
}

// halves puts two rows of dots into one line, each dot some columns wide.
func halves(up, low string, wide int) string {
	var b strings.Builder
	for i := range up {
		block := " "
		switch u, l := up[i] == '#', low[i] == '#'; {
		case u && l:
			block = "█"
		case u:
			block = "▀"
		case l:
			block = "▄"
		}
		b.WriteString(strings.Repeat(block, wide))
	}
	return b.String()
}
