package canvas

import "slices"

// Dials are drawn beside each other, all with digits of one size, or below each other if the terminal is too narrow.
type Dials []Dial

// dialGap is the room between two dials. Below 60 columns it contains a thin rule.
const dialGap = 2

// ruledWidth is the width below which a rule separates dials.
const ruledWidth = 56

// Draw draws the dials. If big digits do not fit beside each other, each dial gets a row: with three lines each, big
// digits with name, span and bar beside them; otherwise one line. Without a line for each dial it draws nothing.
func (l Dials) Draw(th *Theme, w, h int) Block {
	if len(l) == 0 || h < 1 || w < 20 {
		return nil
	}
	each := (w+dialGap)/len(l) - dialGap
	l = l.smallNames(each)
	if size := l.size(each, h, w < ruledWidth); size.Lines > 0 || h < len(l) && each >= 12 {
		return l.beside(th, w, h, each, size)
	}
	if h < len(l) {
		return nil
	}
	return l.rows(th, w, min(3, h/len(l)))
}

// smallNames makes all names small if one of them does not fit in big letters.
func (l Dials) smallNames(each int) Dials {
	for _, d := range l {
		if _, ok := d.bigName(each); d.Loud && !ok {
			quiet := slices.Clone(l)
			for i := range quiet {
				quiet[i].smallName = true
			}
			return quiet
		}
	}
	return l
}

func (l Dials) beside(th *Theme, w, h, each int, size Size) Block {
	if size.Lines == 0 {
		h = min(h, 3)
	}
	c := NewCells(w, h)
	for i := range l {
		x := i * (each + dialGap)
		if i > 0 && w < ruledWidth {
			for y := range c.H {
				c.Set(x-1, y, Rule.Ink(), "▏")
			}
		}
		l[i].put(c, th, x, 0, each, c.H, size)
	}
	return c.Lines(th)
}

// size is the largest size that fits every dial; ruled means that rules separate the dials.
func (l Dials) size(w, h int, ruled bool) Size {
	var least Size
	for i := range l {
		s := l[i].size(w, h)
		// Figures as wide as their place would be read as one number with the figures beside them.
		if !ruled && s.Lines > 0 && s.Width(l[i].widest()) > w-1 {
			s = l[i].size(w-1, h)
		}
		if i == 0 || s.Lines < least.Lines || s.Lines == least.Lines && s.Columns < least.Columns {
			least = s
		}
	}
	return least
}

// rows draws the dials below each other, each on this many lines.
func (l Dials) rows(th *Theme, w, lines int) Block {
	name, digits, unit := 0, 0, width("m/min")
	for i := range l {
		name = max(name, width(l[i].label(w/3)))
		digits = max(digits, width(l[i].widest()))
		unit = max(unit, width(l[i].Unit))
	}
	c := NewCells(w, lines*len(l))
	for i := range l {
		if lines < SizeM.Lines {
			l[i].row(c, i*lines, name, digits, unit)
			continue
		}
		l[i].tall(c, th, i*lines)
	}
	return c.Lines(th)
}

// row is a dial on one line: name, figure, unit, and its bar if there is room. Name, figure and unit get the same
// columns in all rows, so that the bars stand below each other.
func (d Dial) row(c *Cells, y, name, digits, unit int) {
	c.PutCut(0, y, d.nameInk(OnAccent.On(Accent)), d.label(c.W/3), name)
	x := c.PutCut(name+1+max(0, digits-width(d.Number)), y, d.ink()|Bold, d.Number, c.W)
	if x+1+width(d.Unit) <= c.W {
		c.Put(x+1, y, Quiet.Ink(), d.Unit)
	}
	if at := name + 1 + digits + 1 + unit + 2; c.W-at >= 8 {
		d.Bar.draw(c, at, y, c.W-at)
	}
}

// tall is a dial on three lines: big digits, with name, span and bar beside them.
func (d Dial) tall(c *Cells, th *Theme, y int) {
	size, ok := Fit(d.widest(), c.W/2, SizeM.Lines)
	x := size.Width(d.widest()) + 2
	if ok {
		size.put(c, 0, y, d.ink(), d.Number, false, th.coarse)
	} else {
		c.PutCut(0, y+1, d.ink()|Bold, d.Number, x)
	}
	d.putName(c, th, x, y, c.W-x, 1)
	d.putSpan(c, x, y+1, c.W-x)
	d.Bar.draw(c, x, y+2, c.W-x)
}
