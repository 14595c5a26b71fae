package tui

// boothCell is one figure of the booth view: huge digits under its name.
type boothCell struct {
	label, number, unit string
	alt, band           string // the other system, the range: each in every cell or in none
	pace                string // shown where there is room
}

// words are what stands over the digits or beside them, the name and the unit first.
func (c *boothCell) words() []string {
	list := []string{c.label, c.unit}
	for _, word := range [...]string{c.alt, c.band} {
		if word != "" {
			list = append(list, word)
		}
	}
	return list
}

// heads are the lines over the digits in a column: its words, as many on a line as it is wide.
func (c *boothCell) heads(w int) [][]string {
	var lines [][]string
	used := w
	for _, word := range c.words() {
		if used += 2 + width(word); used <= w {
			lines[len(lines)-1] = append(lines[len(lines)-1], word)
		} else {
			lines, used = append(lines, []string{word}), width(word)
		}
	}
	return lines
}

// style is how the n-th word looks: the name and the unit stand out, what is said besides does not.
func (c *boothCell) style(th *theme, n int) paint {
	if n < 2 {
		return th.bold
	}
	return th.quiet
}

// least is the narrowest column for the cell.
func (c *boothCell) least(d dot) int {
	n := digitsWidth(c.number, d)
	for _, word := range c.words() {
		n = max(n, width(word))
	}
	return n
}

// boothGrid is how the cells stand: so many beside each other, at a size of dot.
type boothGrid struct {
	columns int
	dot     dot
	widths  [][]int // of each row's cells
	heights []int
}

// gapColumns keep two figures apart.
const gapColumns = 2

// gridOf finds the largest digits that fit; false where not even the smallest do.
func gridOf(cells []boothCell, w, h int) (boothGrid, bool) {
	for high := h * 2 / 5; high >= 1; high-- {
		for wide := max(2, high*3/2); 3*wide >= 2*high; wide-- {
			for _, columns := range [...]int{3, 2, 1, 5} {
				g := boothGrid{columns: columns, dot: dot{wide, high}}
				if g.lay(cells, w) && g.height() <= h {
					return g, true
				}
			}
		}
	}
	return boothGrid{}, false
}

func (g *boothGrid) height() int {
	n := 0
	for _, h := range g.heights {
		n += h
	}
	return n
}

// lay gives each row its widths and its height, and reports whether it is wide enough.
func (g *boothGrid) lay(cells []boothCell, w int) bool {
	for from := 0; from < len(cells); from += g.columns {
		row := cells[from:min(len(cells), from+g.columns)]
		widths := g.share(row, w)
		if widths == nil {
			return false
		}
		heads := 0
		for i := range row {
			heads = max(heads, len(row[i].heads(widths[i])))
		}
		if g.aside(row, w) {
			heads = 0
		}
		g.widths, g.heights = append(g.widths, widths), append(g.heights, heads+g.dot.lines())
	}
	return true
}

// share splits the width: evenly where that is enough for each cell, else by what each needs; nil where it is too narrow.
func (g *boothGrid) share(row []boothCell, w int) []int {
	even := (w+gapColumns)/g.columns - gapColumns
	need, sum, fits := make([]int, len(row)), -gapColumns, true
	for i := range row {
		need[i] = row[i].least(g.dot)
		sum += need[i] + gapColumns
		fits = fits && need[i] <= even
	}
	switch {
	case sum > w:
		return nil
	case fits:
		for i := range need {
			need[i] = even
		}
	default:
		for i := range need {
			need[i] += (w - sum) / len(row)
		}
	}
	return need
}

// aside reports whether a row is one figure with its name beside the digits.
func (g *boothGrid) aside(row []boothCell, w int) bool {
	c, beside := &row[0], 0
	for _, word := range c.words() {
		beside = max(beside, width(word))
	}
	return len(row) == 1 && len(c.words()) <= g.dot.lines() && digitsWidth(c.number, g.dot)+gapColumns+beside <= w
}

// draw sets the cells in at most h lines; what is left over stands between the rows.
func (g *boothGrid) draw(th *theme, cells []boothCell, w, h int) block {
	var b block
	spare := h - g.height()
	for i, widths := range g.widths {
		row := cells[i*g.columns : i*g.columns+len(widths)]
		if g.aside(row, w) {
			b.addAll(row[0].besideDigits(th, g.dot, w))
		} else {
			b.addAll(g.row(th, row, widths, w))
		}
		if left := len(g.widths) - 1 - i; left > 0 && spare > 0 {
			gap := min(2, (spare+left-1)/left)
			spare -= gap
			b.addAll(make(block, gap))
		}
	}
	return b
}

func (g *boothGrid) row(th *theme, row []boothCell, widths []int, w int) block {
	heads := 0
	for i := range row {
		heads = max(heads, len(row[i].heads(widths[i])))
	}
	b := make(block, 0, heads+g.dot.lines())
	for n := range heads + g.dot.lines() {
		l, at := newRow(w), 0
		for i := range row {
			l.to(at)
			row[i].line(th, l, n, heads, g.dot, at+widths[i])
			at += widths[i] + gapColumns
		}
		b.add(l.line())
	}
	return b
}

// line puts the n-th line of a cell; the last line over the digits takes what else there is room for.
func (c *boothCell) line(th *theme, l *row, n, heads int, d dot, end int) {
	if n >= heads {
		l.put(th.bold, digits(c.number, d)[n-heads])
		return
	}
	own := c.heads(end - l.used)
	if n >= len(own) {
		return
	}
	before := 0
	for _, line := range own[:n] {
		before += len(line)
	}
	for i, word := range own[n] {
		if i > 0 {
			l.blank(2)
		}
		l.put(c.style(th, before+i), word)
	}
	if n == len(own)-1 && c.pace != "" && l.used+2+width(c.pace) <= end {
		l.blank(2).put(th.quiet, c.pace)
	}
}

// besideDigits is a row of one figure with its name beside its digits.
func (c *boothCell) besideDigits(th *theme, d dot, w int) block {
	var b block
	words := c.words()
	if c.pace != "" {
		words = append(words, c.pace)
	}
	for i, l := range digits(c.number, d) {
		r := newRow(w).put(th.bold, l)
		if i < len(words) && r.used+gapColumns+width(words[i]) <= w {
			r.blank(gapColumns).put(c.style(th, i), words[i])
		}
		b.add(r.line())
	}
	return b
}
