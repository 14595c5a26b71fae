package tui

// The smallest terminal that holds a choice and the figures.
const (
	leastWidth  = 40
	leastHeight = 14
)

// Widths at which the screen is laid out differently.
const (
	narrowWidth = 60  // below: one thing at a time
	besideWidth = 80  // from here the card stands beside the list
	wideWidth   = 100 // from here the reasons stand beside the card
)

// window is the part of a longer block that is on the screen.
type window struct{ top int }

// show moves the window, no further than needed, until the lines from first to last are in it, and
// returns the part to draw.
func (v *window) show(b block, first, last, h int) block {
	if len(b) <= h {
		v.top = 0
		return b
	}
	if last-v.top >= h {
		v.top = last - h + 1
	}
	if first < v.top {
		v.top = first
	}
	v.top = max(0, min(v.top, len(b)-h))
	return b[v.top : v.top+h]
}

// marked shows at the right edge of a window whether there is more above and below it.
func (v *window) marked(th *theme, b block, all, w int) block {
	out := append(block{}, b...)
	if n := len(out); n > 0 && n < all {
		if v.top > 0 {
			out[0] = edgeMark(th, out[0], "↑", w)
		}
		if v.top+n < all {
			out[n-1] = edgeMark(th, out[n-1], "↓", w)
		}
	}
	return out
}

func edgeMark(th *theme, l line, mark string, w int) line {
	if l.w > w-3 {
		return l
	}
	return join(l, line{}, w-1, th.accent, mark)
}
