package canvas

import "math"

// SpanKind is what a dial's span means.
type SpanKind uint8

// The kinds: no span is known; every value in it is good; the right value likely lies in it.
const (
	NoSpan SpanKind = iota
	GoodSpan
	LikelySpan
)

// Bar is a value on its range.
type Bar struct {
	Low, High float64 // the ends of the track
	Value     float64
	Span      [2]float64
	Kind      SpanKind
	Off       bool // grey: nothing is to be dialled
	Empty     bool // the value is still to come: the track alone
	under     bool // right under digits
}

// draw sets the bar on a line. Track, span and value differ in height, so that no colour is needed; a value beyond
// the track shows as an arrow at its end.
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
		k, text := b.ink(), "_" // of one byte: a bar is sent anew with most keys
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
		k = b.ink() // not that of the verdict, or a verdict that turns would send every bar anew
	}
	c.Set(x+min(at, w-1), y, k, mark)
}

// ink is that of the track and of the span in words: the terminal's own, which costs no bytes to switch on, since most
// keys send them anew. It is grey where nothing is to be dialled, and where the value would read as a stroke of the
// digit above it.
func (b Bar) ink() Ink {
	if b.Off || b.under {
		return Quiet.Ink()
	}
	return Text.Ink()
}

// spanInk: a good span is green whatever the verdict is; a likely one has no colour, since it promises nothing.
func (b Bar) spanInk() Ink {
	if b.Kind == GoodSpan && !b.Off {
		return Good.Ink()
	}
	return b.ink()
}

// beyond reports a value outside its good span.
func (b Bar) beyond() bool { return b.Kind == GoodSpan && (b.Value < b.Span[0] || b.Value > b.Span[1]) }

// spanWords say the span, the longest first.
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
	if d.Bar.Kind == GoodSpan { // never a range alone beside "yours": it would read as what the hand set
		short := "✓ " + d.Span
		if d.Bar.beyond() {
			short = "→ " + d.Span
		}
		return []string{full + " · yours", short + " · yours", short + " yours", full, short, "yours"}
	}
	return []string{full + " · yours", "yours"}
}
