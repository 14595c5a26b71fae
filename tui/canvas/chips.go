package canvas

// Chip is a choice: its value, and whether the program assumed it.
type Chip struct {
	Name    string // of the choice: metal, gauge
	Value   string
	Assumed bool
}

// Chips is the row of choices. They are divided into pages, so that a chip keeps its place while the cursor moves
// within a page; ‹ and › show that there are more.
type Chips struct {
	List   []Chip
	Cursor int    // the chip under the cursor, -1 for none
	Hint   string // below that chip: the keys that change it, and to what
}

// Draw draws the row in 1 to 3 lines: the values; with 2 lines also the hint below them; with 3 also the names above.
func (l Chips) Draw(th *Theme, w, h int) Block {
	page := l.page(w, h >= 3)
	if len(page) == 0 || h < 1 {
		return nil
	}
	c := NewCells(w, min(h, 3))
	y := 0
	if h >= 3 {
		y = 1
	}
	if page[0].i > 0 {
		c.Put(0, y, Quiet.Ink(), "‹")
	}
	for _, p := range page {
		if y > 0 {
			c.Put(p.x+1, 0, Quiet.Ink(), cut(l.List[p.i].Name, min(p.wide, w-p.x)-2))
		}
		c.Put(p.x, y, l.ink(p.i), " "+cut(l.List[p.i].text(), w-p.x-2)+" ")
		if h >= 2 && p.i == l.Cursor && l.Hint != "" {
			hint := cut(l.Hint, w-2)
			c.Put(max(1, min(p.x+1, w-1-width(hint))), y+1, Quiet.Ink(), hint)
		}
	}
	if last := page[len(page)-1]; last.i+1 < len(l.List) {
		c.Put(min(last.x+last.wide+1, w-1), y, Quiet.Ink(), "›")
	}
	return c.Lines(th)
}

// text is the value as it is shown: ~ marks an assumed value.
func (c Chip) text() string {
	if c.Assumed {
		return "~" + c.Value
	}
	return c.Value
}

// wide is how many columns a chip takes, at least the width of its name if that is shown.
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

// placed is a chip and its position.
type placed struct{ i, x, wide int }

// page is the page with the cursor's chip, or the first page without a cursor. It is empty if there is no room for
// chips. Every page but the first begins with ‹, and a page that is not the last keeps room for › at its end. The last
// page is full: it begins with chips of the page before, so that one chip does not stand alone.
func (l Chips) page(w int, named bool) (page []placed) {
	if w < 12 {
		return nil
	}
	x := 0
	for i := range l.List {
		wide, more := l.wide(i, named), 0
		if i+1 < len(l.List) {
			more = 2
		}
		if x+wide+more > w && len(page) > 0 {
			if l.Cursor < i {
				return page
			}
			page, x = nil, 2
		}
		page = append(page, placed{i, x, wide})
		x += wide + 1
	}
	return l.filled(page, w-(x-1), named)
}

// filled is the last page with as many chips of the page before as there is room for.
func (l Chips) filled(page []placed, room int, named bool) []placed {
	for len(page) > 0 && page[0].i > 0 {
		first := placed{page[0].i - 1, page[0].x, l.wide(page[0].i-1, named)}
		by := first.wide + 1
		if room -= by; room < 0 {
			break
		}
		for i := range page {
			page[i].x += by
		}
		page = append([]placed{first}, page...)
	}
	return page
}

// At is the chip at a column of the row, -1 for none: for a mouse click.
func (l Chips) At(column, w, h int) int {
	for _, p := range l.page(w, h >= 3) {
		if column >= p.x && column < min(p.x+p.wide, w) {
			return p.i
		}
	}
	return -1
}
