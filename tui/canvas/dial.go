package canvas

// Dial is a figure that is set by hand: its name above big digits, its range below them.
type Dial struct {
	Name, Short string // Short is used if Name does not fit; "" means Name
	Unit        string
	Number      string
	Widest      string // the widest number that it may show, which decides the size of digits; "" means Number
	Also        string // the same value in the other system of units
	Bar         Bar
	Span        string // the span in words, without its meaning: "3.12–4.77"
	Yours       bool   // the user set it
	Cursor      bool
	Loud        bool // its name is in big letters too, to be read from two metres
	Lit         bool // its digits have the colour of the verdict
	State       State
	smallName   bool // loud, but beside a dial whose name does not fit in big letters
}

// Draw draws a dial: name, digits, bar and words with 6 lines or more, fewer of them with less.
func (d Dial) Draw(th *Theme, w, h int) Block { return Dials{d}.beside(th, w, h, w, d.size(w, h)) }

// inset is the room to the left of a loud dial, where the cursor is drawn as a bar.
func (d Dial) inset() int {
	if d.Loud {
		return 2
	}
	return 0
}

func (d Dial) nameLines(w, h int) int {
	if _, ok := d.bigName(w); ok && d.Loud && !d.smallName && h >= 9 {
		return SizeM.Lines
	}
	return 1
}

// bigName is the name in big letters, or the short name if only that fits; false if neither does.
func (d Dial) bigName(w int) (string, bool) {
	for _, name := range [...]string{d.Name, d.Short} {
		if _, ok := Fit(name, w-d.inset(), SizeM.Lines); ok {
			return name, true
		}
	}
	return d.Name, false
}

// otherLines is how many lines the name, the bar and, if there is room, the words take.
func (d Dial) otherLines(w, h int) int {
	n := d.nameLines(w, h) + 1
	if h >= n+SizeM.Lines+1 && !d.Loud {
		n++
	}
	return n
}

// size is the size of the digits: the zero Size, ordinary text, if big ones do not fit.
func (d Dial) size(w, h int) Size {
	room := h - d.otherLines(w, h)
	w -= d.inset()
	if room > SizeM.Lines { // half a line above and below
		room--
	}
	widest := d.widest()
	size, _ := Fit(widest, w, room)
	// Two figures that are hardly further apart than their digits would be read as one number.
	if more := max(size.Columns-SizeL.Columns, 3*size.gap()/2-dialGap); size.Columns > SizeL.Columns {
		size, _ = Fit(widest, w-more, room)
	}
	return size
}

func (d Dial) widest() string {
	if width(d.Widest) < width(d.Number) {
		return d.Number
	}
	return d.Widest
}

func (d Dial) put(c *Cells, th *Theme, x, y, w, h int, size Size) {
	if size.Lines == 0 {
		d.putSmall(c, x, y, w, h)
		return
	}
	names, others := d.nameLines(w, h), d.otherLines(w, h)
	half := h-others > size.Lines
	if d.Loud {
		for i := 0; d.Cursor && i < h; i++ {
			c.Set(x, y+i, Accent.Ink(), "▌")
		}
		x, w = x+d.inset(), w-d.inset()
	}
	named := d.putName(c, th, x, y, w, names)
	size.put(c, x, y+names, d.ink(), d.Number, half, th.coarse)
	y += names + size.Lines
	if half {
		y++
	}
	bar := w
	if !named && d.Loud { // the unit goes after the bar then
		bar -= width(d.Unit) + 1
		c.PutCut(x+bar+1, y, Quiet.Ink(), d.Unit, w)
	}
	b := d.Bar
	b.nearDigits = !half
	b.draw(c, x, y, bar)
	if others > names+1 {
		d.putSpan(c, x, y+1, w)
	}
}

func (d Dial) ink() Ink {
	switch {
	case d.Bar.Off:
		return Quiet.Ink()
	case d.Lit:
		return d.State.Ink()
	}
	return Text.Ink()
}

// nameInk is the ink of the name. Under the cursor it is the accent, as text or as background.
func (d Dial) nameInk(cursor Ink) Ink {
	if d.Cursor {
		return cursor
	}
	return Quiet.Ink()
}

// label is the name, or the short name if that fits better.
func (d Dial) label(w int) string {
	if d.Short != "" && width(d.Name) > w {
		return d.Short
	}
	return d.Name
}

// putName writes name and unit. Under the cursor the background is the accent; a loud name has a bar of it on its left.
// putName reports whether there was room for the unit.
func (d Dial) putName(c *Cells, th *Theme, x, y, w, lines int) (unit bool) {
	if lines > 1 {
		return d.putLoud(c, th, x, y, w)
	}
	name := cut(d.label(w-3-width(d.Unit)), w)
	end := x + w
	if d.Cursor && width(name)+2 <= w {
		x = c.Put(x, y, OnAccent.On(Accent)|Bold, " "+name+" ")
	} else {
		x = c.Put(x, y, Text.Ink()|Bold, name)
	}
	for i, word := range [...]string{d.Unit, d.Also} {
		if word != "" && x+1+width(word) <= end {
			x = c.Put(x+1, y, Quiet.Ink(), word) + 1
			unit = unit || i == 0
		}
	}
	return unit
}

// putLoud writes the name in big letters, with the unit after it if there is room.
func (d Dial) putLoud(c *Cells, th *Theme, x, y, w int) (unit bool) {
	name, _ := d.bigName(w + d.inset())
	size, ok := Fit(name, w-1-width(d.Unit), SizeM.Lines)
	if !ok {
		size, _ = Fit(name, w, SizeM.Lines)
	}
	size.put(c, x, y, d.nameInk(Accent.Ink()), name, false, th.coarse)
	at := x + size.Width(name) + 1
	if unit = at+width(d.Unit) <= x+w; unit {
		c.Put(at, y+size.Lines-1, Quiet.Ink(), d.Unit)
	}
	return unit
}

// putSpan writes as many words of the span as there is room for.
func (d Dial) putSpan(c *Cells, x, y, w int) {
	for _, words := range d.spanWords() {
		if width(words) <= w {
			c.Put(x, y, d.Bar.ink(), words)
			return
		}
	}
}

// putSmall writes the dial as text: name, number and unit, with bar and words below.
func (d Dial) putSmall(c *Cells, x, y, w, h int) {
	number := d.Number + " " + d.Unit
	name := d.label(w - width(number) - 1)
	if width(name)+1+width(number) > w {
		number = d.Number
		name = cut(d.label(w-width(number)-1), w-width(number)-1)
	}
	at := c.Put(x, y, d.nameInk(OnAccent.On(Accent)), name)
	if name != "" {
		at++
	}
	if at+width(number) <= x+w {
		c.Put(at, y, d.ink()|Bold, number)
	}
	if h > 1 {
		d.Bar.draw(c, x, y+1, w)
	}
	if h > 2 {
		d.putSpan(c, x, y+2, w)
	}
}
