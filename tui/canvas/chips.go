package canvas

// Chip is a choice: what was chosen, and whether the program assumed it.
type Chip struct {
	Name    string // of the choice: metal, gauge
	Value   string
	Assumed bool
}

// Chips is the row of choices. They stand in pages, so that a chip keeps its place while the cursor moves in its
// page; ‹ and › say that there are more.
type Chips struct {
	List   []Chip
	Cursor int    // the chip under the cursor, -1 for none
	Hint   string // under that chip: what keys change it to
}

// Draw sets the row into a width and 1 to 3 lines: the values; from 2 lines on the hint below them; from 3 on the names
// above.
func (l Chips) Draw(th *Theme, w, h int) Block {
	page, ok := l.page(l.Cursor, w, h >= 3)
	if !ok || h < 1 {
		return nil
	}
	c := NewCells(w, min(h, 3))
	y := 0
	if h >= 3 {
		y = 1
	}
	if page.from > 0 {
		c.Put(0, y, Quiet.Ink(), "‹")
	}
	x, at := page.start(), 0
	for i := page.from; i < page.to; i++ {
		chip, room := l.List[i], w-x
		text := cut(chip.text(), room-2)
		if i == l.Cursor {
			at = x
		}
		if y > 0 {
			c.Put(x+1, 0, Quiet.Ink(), cut(chip.Name, min(l.wide(i, true), room)-2))
		}
		c.Put(x, y, l.ink(i), " "+text+" ")
		x += l.wide(i, h >= 3) + 1
	}
	if page.to < len(l.List) {
		c.Put(min(x, w-1), y, Quiet.Ink(), "›")
	}
	if h >= 2 && l.Cursor >= 0 && l.Hint != "" {
		hint := cut(l.Hint, w-2)
		c.Put(max(1, min(at+1, w-1-width(hint))), y+1, Quiet.Ink(), hint)
	}
	return c.Lines(th)
}

// text is the value as it is shown: ~ marks what was assumed.
func (c Chip) text() string {
	if c.Assumed {
		return "~" + c.Value
	}
	return c.Value
}

// wide is how many columns a chip takes; under its name at least as many as that.
func (l Chips) wide(i int, named bool) int {
	n := width(l.List[i].text())
	if named {
		n = max(n, width(l.List[i].Name))
	}
	return n + 2
}

func (l Chips) ink(i int) Ink {
	switch {
	case i == l.Cursor:
		return OnAccent.On(Accent) | Bold
	case l.List[i].Assumed:
		return Quiet.On(ChipGround)
	}
	return Text.On(ChipGround) | Bold
}

// span is the chips of a page.
type span struct{ from, to int }

// start is the column of the first chip of a page; before it stands ‹ on every page but the first.
func (p span) start() int {
	if p.from > 0 {
		return 2
	}
	return 0
}

// page is the page in which a chip stands; false where there is no room for chips.
func (l Chips) page(at, w int, named bool) (span, bool) {
	if len(l.List) == 0 || w < 12 {
		return span{}, false
	}
	at = max(0, min(at, len(l.List)-1))
	p := span{}
	for {
		x := p.start()
		for p.to < len(l.List) {
			end := x + l.wide(p.to, named)
			if more := p.to+1 < len(l.List); more {
				end += 2 // room for ›
			}
			if end > w && p.to > p.from {
				break
			}
			x += l.wide(p.to, named) + 1
			p.to++
		}
		if at < p.to {
			return p, true
		}
		p.from = p.to
	}
}

// At is the chip at a column of the row, -1 for none: where a mouse clicked.
func (l Chips) At(column, w, h int) int {
	page, ok := l.page(l.Cursor, w, h >= 3)
	if !ok {
		return -1
	}
	x := page.start()
	for i := page.from; i < page.to; i++ {
		n := l.wide(i, h >= 3)
		if column >= x && column < min(x+n, w) {
			return i
		}
		x += n + 1
	}
	return -1
}
