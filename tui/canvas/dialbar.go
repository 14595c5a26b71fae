package canvas

import "math"

// SpanKind is the meaning of a dial's span.
type SpanKind uint8

// The kinds: no span is known; every value in the span is good; the right value is probably in the span.
const (
	NoSpan SpanKind = iota
	GoodSpan
	LikelySpan
)

// Bar is a value on its range.
type Bar struct {
	Low, High  float64 // the ends of the track
	Value      float64
	Span       [2]float64
	Kind       SpanKind
	Off        bool // grey, because nothing should be set
	Empty      bool // only the track: the value is not known yet
	nearDigits bool // right below digits
}

// draw draws the bar on a line. Track, span and value differ in height, so that no colour is needed. A value beyond the
// track is an arrow at its end.
func (b Bar) draw(c *Cells, x, y, w int) {
	if w < 4 || !(b.High > b.Low) || math.IsNaN(b.Value) {
		return
	}
	place := func(v float64) float64 { return (v - b.Low) / (b.High - b.Low) * float64(w) }
	from, to := 0, -1
	if b.Kind != NoSpan && !b.Empty && b.Span[1] >= b.Span[0] {
		from, to = int(max(0, place(b.Span[0]))), int(math.Ceil(min(float64(w), place(b.Span[1]))))-1
		to = max(to, min(from, w-1))
		if b.Span[0] > b.High || b.Span[1] < b.Low {
			to = -1
		}
	}
	for i := range w {
		k, text := b.ink(), "_" // of one byte, because most keys change a bar, which is then sent again
		if i >= from && i <= to {
			k, text = b.spanInk(), "▄"
		}
		c.Set(x+i, y, k, text)
	}
	if b.Empty {
		return
	}
	at, mark := int(place(b.Value)), "█"
	switch {
	case b.Value < b.Low:
		at, mark = 0, "◂"
	case b.Value > b.High:
		at, mark = w-1, "▸"
	}
	k := b.spanInk()
	if b.beyond() {
		k = b.ink() // not the verdict's, otherwise every bar would be sent again when the verdict changes
	}
	c.Set(x+min(at, w-1), y, k, mark)
}

// ink is the ink of the track and of the words of the span: the terminal's own colour, because most keys cause these to
// be sent again and switching on a colour costs bytes. It is grey if nothing should be set, or if the value would look
// like a stroke of the digit above.
func (b Bar) ink() Ink {
	if b.Off || b.nearDigits {
		return Quiet.Ink()
	}
	return Text.Ink()
}

// spanInk makes a good span green, whatever the verdict is. A likely span has no colour, because it promises nothing.
func (b Bar) spanInk() Ink {
	if b.Kind == GoodSpan && !b.Off {
		return Good.Ink()
	}
	return b.ink()
}

// beyond reports whether the value is outside its good span.
func (b Bar) beyond() bool { return b.Kind == GoodSpan && (b.Value < b.Span[0] || b.Value > b.Span[1]) }

// spanWords are the forms of the span in words, the longest first.
func (d Dial) spanWords() []string {
	full := d.Span
	switch d.Bar.Kind {
	case GoodSpan:
		full = "good " + full
	case LikelySpan:
		full += " likely"
	}
	switch {
	case !d.Yours && d.Span == "":
		return nil
	case !d.Yours:
		return []string{full, d.Span}
	case d.Span == "":
		return []string{"yours"}
	}
	if d.Bar.Kind == GoodSpan { // a range alone beside "yours" would be read as the range that the user set
		short := "✓ " + d.Span
		if d.Bar.beyond() {
			short = "→ " + d.Span
		}
		return []string{full + " · yours", short + " · yours", short + " yours", full, short, "yours"}
	}
	return []string{full + " · yours", "yours"}
}
