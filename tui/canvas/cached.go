package canvas

import "reflect"

// Part is something that can be drawn into a rectangle.
type Part interface {
	Draw(th *Theme, w, h int) Block
}

// Cached remembers the last drawing of a part, so that an unchanged part is not drawn again. A part must not be
// modified after it was drawn: a changed part is a new value. The zero Cached is ready to use.
type Cached[P Part] struct {
	part  P
	th    *Theme
	w, h  int
	lines Block
}

// Draw returns the drawing of a part.
func (k *Cached[P]) Draw(p P, th *Theme, w, h int) Block {
	if k.th != th || k.w != w || k.h != h || !reflect.DeepEqual(k.part, p) {
		k.part, k.th, k.w, k.h, k.lines = p, th, w, h, p.Draw(th, w, h)
	}
	return k.lines
}
