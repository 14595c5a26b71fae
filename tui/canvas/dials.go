package canvas

// Dials stand beside each other, all with digits of one size.
type Dials []Dial

// dialGap is the room between two dials; below 60 columns a thin rule stands in it.
const dialGap = 2

// Draw sets the dials into a width and some lines; nothing where a dial would have fewer than 8 columns.
func (l Dials) Draw(th *Theme, w, h int) Block {
	if len(l) == 0 || h < 1 {
		return nil
	}
	each := (w+dialGap)/len(l) - dialGap
	size, ok := l.size(each, h)
	if !ok {
		return nil
	}
	c := NewCells(w, l[0].lines(size, h))
	for i := range l {
		x := i * (each + dialGap)
		if i > 0 && w < 60 {
			for y := range c.H {
				c.Set(x-1, y, Rule.Ink(), "▏")
			}
		}
		l[i].put(c, th, x, 0, each, c.H, size)
	}
	return c.Lines(th)
}

// size is the largest that every dial has room for.
func (l Dials) size(w, h int) (Size, bool) {
	var least Size
	for i := range l {
		s, ok := l[i].size(w, h)
		if !ok {
			return Size{}, false
		}
		if i == 0 || s.Lines < least.Lines || s.Lines == least.Lines && s.Columns < least.Columns {
			least = s
		}
	}
	return least, true
}
