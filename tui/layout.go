package tui

// The smallest terminal that holds a choice and the figures.
const (
	leastWidth  = 32
	leastHeight = 10
)

// Least is the smallest terminal that the screens fit.
func Least() (width, height int) { return leastWidth, leastHeight }

// Widths at which the screen is laid out differently.
const (
	narrowWidth = 60 // below: one thing at a time
	besideWidth = 78 // from here the card stands beside the list
	wideWidth   = 98 // from here the reasons stand beside the card
)

// textWidth is how wide a text to read is at most.
const textWidth = 88

// lowHeight is the height below which lists and figures go before what explains them.
const (
	lowHeight = 18 // of the terminal
	lowBody   = 13 // of the open screen in it
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

// marked shows at the right edge of a window whether there is more above and below it: on its first and its last line,
// or on the nearest to them that has room.
func (v *window) marked(th *theme, b block, all, w int) block {
	out := append(block{}, b...)
	n := len(out)
	mark := func(sign string, i, by int) {
		for ; i >= 0 && i < n; i += by {
			if out[i].Width <= w-3 {
				out[i] = join(out[i], line{}, w-1, th.quiet, sign)
				return
			}
		}
	}
	if v.top > 0 {
		mark("↑", 0, 1)
	}
	if v.top+n < all {
		mark("↓", n-1, -1)
	}
	return out
}
