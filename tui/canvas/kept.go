package canvas

import "reflect"

// Part is what can be drawn into a rectangle.
type Part interface {
	Draw(th *Theme, w, h int) Block
}

// Kept remembers the last drawing of a part: what did not change is not drawn again. A part that was drawn must not
// be changed afterwards, but made anew. The zero Kept is ready.
type Kept[P Part] struct {
	part  P
	th    *Theme
	w, h  int
	lines Block
}

// Draw is the drawing of a part.
func (k *Kept[P]) Draw(p P, th *Theme, w, h int) Block {
	if k.th != th || k.w != w || k.h != h || !reflect.DeepEqual(k.part, p) {
		k.part, k.th, k.w, k.h, k.lines = p, th, w, h, p.Draw(th, w, h)
	}
	return k.lines
}
