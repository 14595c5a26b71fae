package canvas

// dots are how a cell is divided, and the character for each set of its dots: bit n stands for the nth of them, row by
// row.
type dots struct {
	wide, high int
	signs      []string
}

// What cells are divided into. A coarse terminal has halves only.
var (
	quadrants = &dots{2, 2, []string{"", "▘", "▝", "▀", "▖", "▌", "▞", "▛", "▗", "▚", "▐", "▜", "▄", "▙", "▟", "█"}}
	halves    = &dots{1, 2, []string{"", "▀", "▄", "█"}}
	braille   = &dots{2, 4, brailles()}
)

// brailles are the 256 characters of braille. In the character set the lowest row comes last, each column by itself
// before it.
func brailles() []string {
	list := make([]string, 256)
	for mask := range list {
		r := rune(0x2800)
		for n, bit := range [...]rune{1, 8, 2, 16, 4, 32, 64, 128} {
			if mask>>n&1 != 0 {
				r += bit
			}
		}
		list[mask] = string(r)
	}
	return list
}

// dot sets one dot, counted from the field's upper left corner, beside the others of its cell, which takes the ink.
func (c *Cells) dot(d *dots, x, y int, k Ink) {
	if x < 0 || y < 0 {
		return
	}
	column, line := x/d.wide, y/d.high
	if p := c.at(column, line); p != nil {
		mask := p.dots | 1<<(y%d.high*d.wide+x%d.wide)
		c.Set(column, line, k, d.signs[mask])
		p.dots = mask
	}
}

// stripes are diagonal bands as on a barrier: a stop without words.
func (c *Cells) stripes(x, y, w, h int, k Ink) {
	for down := range 2 * h {
		for across := range 2 * w {
			if (across+2*down)/4%2 == 0 {
				c.dot(quadrants, 2*x+across, 2*y+down, k)
			}
		}
	}
}

// bar is half a line high, to half a column: a share of a width, never nothing where the share is something.
func (c *Cells) bar(th *Theme, x, y, w int, share float64, k Ink) {
	if w < 1 || !(share > 0) {
		return
	}
	n := max(1, int(min(1, share)*float64(2*w)+0.5))
	if th.coarse {
		n += n % 2
	}
	for i := range n {
		c.dot(quadrants, 2*x+i, 2*y+1, k)
	}
}
