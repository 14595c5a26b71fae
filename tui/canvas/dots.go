package canvas

// dots is a division of a cell, with the character for each set of its dots: bit n stands for dot n, row by row.
type dots struct {
	wide, high int
	signs      []string
}

// The divisions of a cell. A coarse terminal has only halves.
var (
	quadrants = &dots{2, 2, []string{"", "▘", "▝", "▀", "▖", "▌", "▞", "▛", "▗", "▚", "▐", "▜", "▄", "▙", "▟", "█"}}
	halves    = &dots{1, 2, []string{"", "▀", "▄", "█"}}
	braille   = &dots{2, 4, brailles()}
)

// brailles are the 256 characters of braille. Their code counts the dots of the upper three rows by columns, then those
// of the lowest row.
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

// dot adds one dot to its cell and gives the cell the ink. x and y count dots from the grid's upper left corner.
func (c *Cells) dot(d *dots, x, y int, k Ink) {
	column, line := x/d.wide, y/d.high
	if p := c.at(column, line); p != nil {
		mask := p.dots | 1<<(y%d.high*d.wide+x%d.wide)
		c.Set(column, line, k, d.signs[mask])
		p.dots = mask
	}
}

// stripes are diagonal bands as on a barrier: they say stop without words.
func (c *Cells) stripes(x, y, w, h int, k Ink) {
	for down := range 2 * h {
		for across := range 2 * w {
			if (across+2*down)/4%2 == 0 {
				c.dot(quadrants, 2*x+across, 2*y+down, k)
			}
		}
	}
}

// bar shows a share of a width, half a line high and exact to half a column. It shows something for every share above
// zero.
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
