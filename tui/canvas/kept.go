package canvas

import "slices"

// Part is what can be drawn into a rectangle, and knows whether another one looks the same.
type Part[P any] interface {
	Draw(th *Theme, w, h int) Block
	Same(other P) bool
}

// Kept remembers the last drawing of a part: what did not change is not drawn again. A part that was drawn must not
// be changed afterwards, but made anew. The zero Kept is ready.
type Kept[P Part[P]] struct {
	part  P
	th    *Theme
	w, h  int
	lines Block
	drawn int // how often it was, for tests
}

// Draw is the drawing of a part.
func (k *Kept[P]) Draw(p P, th *Theme, w, h int) Block {
	if k.th != th || k.w != w || k.h != h || !k.part.Same(p) {
		k.part, k.th, k.w, k.h, k.lines = p, th, w, h, p.Draw(th, w, h)
		k.drawn++
	}
	return k.lines
}

// Same reports whether two strips look the same.
func (s Strip) Same(other Strip) bool { return s == other }

// Same reports whether two dials look the same.
func (d Dial) Same(other Dial) bool { return d == other }

// Same reports whether two rows of dials look the same.
func (l Dials) Same(other Dials) bool { return slices.Equal(l, other) }

// Same reports whether two rows of chips look the same.
func (l Chips) Same(other Chips) bool {
	return l.Cursor == other.Cursor && l.Hint == other.Hint && slices.Equal(l.List, other.List)
}

// Same reports whether two joints look the same.
func (s Joint) Same(other Joint) bool { return s == other }

// Same reports whether two lists of edges look the same.
func (l Edges) Same(other Edges) bool { return slices.Equal(l, other) }

// Same reports whether it is the same map: comparing its points would take longer than drawing it.
func (m *Map) Same(other *Map) bool { return m == other }

// Same reports whether it is the same chart.
func (ch *Chart) Same(other *Chart) bool { return ch == other }
