package canvas

import "strings"

// Beat is one cycle of a timed arc, drawn over the whole width: how long the arc burns and how long it rests.
type Beat struct {
	On, Off         float64 // s
	OnText, OffText string  // "ARC ON  0.32 s"
	Playing         bool
	At              float64 // the present position of the playback, 0 to 1 of the beat
	Note            string  // at the right, if there is room: the spot, or that it plays slower than the arc
}

// Burns reports whether the arc burns at the present position.
func (b Beat) Burns() bool { return b.Playing && b.At*(b.On+b.Off) < b.On }

// Draw draws the beat: the part with the arc and the part without, a column apart. While it plays, the elapsed part is
// lit; otherwise the whole part with the arc is.
func (b Beat) Draw(th *Theme, w, h int) Block {
	if w < 12 || h < 1 || !(b.On > 0) || !(b.Off >= 0) || b.On+b.Off > 1e9 {
		return nil
	}
	c := NewCells(w, h)
	b.fill(c, th)
	return c.Lines(th)
}

func (b Beat) fill(c *Cells, th *Theme) {
	w := c.W
	on := max(1, min(w-2, int(b.On/(b.On+b.Off)*float64(w)+0.5)))
	lit, rest := on, 0
	if b.Playing {
		passed := int(max(0, min(1, b.At)) * float64(w))
		lit, rest = min(passed, on), max(0, passed-on-1)
	}
	c.beatPart(th, 0, on, lit, b.OnText, "")
	c.beatPart(th, on+1, w-on-1, rest, b.OffText, b.Note)
}

// beatPart draws one of the two parts, lit up to a column, with its words on the first line. On a terminal without
// background colours, dots are what is not lit.
func (c *Cells) beatPart(th *Theme, x, w, lit int, text, note string) {
	dark := Text.On(ChipGround)
	c.Fill(x, 0, w, c.H, dark)
	for y := range c.H {
		for i := max(0, lit); i < w && th.plain(dark); i++ {
			c.Set(x+i, y, dark, "·")
		}
	}
	if width(text)+1 > w {
		text = strings.TrimSpace(text[strings.LastIndex(text, "  ")+1:]) // the time alone
	}
	if width(text)+1 <= w {
		c.Put(x+1, 0, dark|Bold, text)
		if from := x + w - 1 - width(note); note != "" && from > x+width(text)+2 {
			c.Put(from, 0, dark|Bold, note)
		}
	}
	for y := range c.H {
		for i := range min(lit, w) {
			p := c.at(x+i, y)
			p.ink = Own.On(Swap) | p.ink&Bold
		}
	}
}

// Lamp is one word for a welder who looks up for a moment: a whole area that is lit or dark, with a note below the
// word.
type Lamp struct {
	Word, Note string
	Lit        bool
}

// Draw fills the area. The word is as large as possible.
func (l Lamp) Draw(th *Theme, w, h int) Block {
	if w < 4 || h < 1 {
		return nil
	}
	c, k, note := NewCells(w, h), Quiet.Ink(), Quiet.Ink()
	if l.Lit {
		k, note = Own.On(Swap), Own.On(Swap)
		c.Fill(0, 0, w, h, k)
	}
	room := h
	if h > 1 && l.Note != "" {
		room--
		c.PutCut(1, h-1, note, l.Note, w-2)
	}
	size, _ := Fit(l.Word, w-2, room)
	size.put(c, 1, max(0, room-size.Lines)/2, k|Bold, l.Word, false, th.coarse)
	return c.Lines(th)
}
