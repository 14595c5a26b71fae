package canvas

// dots is a raster of 2 by 2 dots a cell. A dot is a column's half wide and a line's half high: twice as high as wide.
type dots struct {
	w, h int
	list []uint8 // 0 is nothing
}

func newDots(columns, lines int) dots {
	return dots{2 * columns, 2 * lines, make([]uint8, 4*columns*lines)}
}

func (d *dots) set(x, y int, v uint8) {
	if x >= 0 && y >= 0 && x < d.w && y < d.h {
		d.list[y*d.w+x] = v
	}
}

// quadrants are the characters by which of the four dots are there: 1 up left, 2 up right, 4 down left, 8 down right.
var quadrants = [16]string{"", "▘", "▝", "▀", "▖", "▌", "▞", "▛", "▗", "▚", "▐", "▜", "▄", "▙", "▟", "█"}

// four are the dots of a cell.
func (d *dots) four(column, line int) [4]uint8 {
	i := 2*line*d.w + 2*column
	return [4]uint8{d.list[i], d.list[i+1], d.list[i+d.w], d.list[i+d.w+1]}
}

// ink draws every dot that is there in one ink: letters on a ground.
func (d *dots) ink(c *Cells, x, y int, k Ink) {
	for line := range d.h / 2 {
		for column := range d.w / 2 {
			mask := 0
			for i, v := range d.four(column, line) {
				if v != 0 {
					mask |= 1 << i
				}
			}
			if mask != 0 {
				c.Set(x+column, y+line, k, quadrants[mask])
			}
		}
	}
}

// colours draws each dot in the role of its number, two at most in a cell: the rest of a cell's dots take the one of the
// two that outweighs the other. Where rank is larger, a number is kept first.
func (d *dots) colours(c *Cells, x, y int, role func(uint8) Role, rank func(uint8) int) {
	for line := range d.h / 2 {
		for column := range d.w / 2 {
			four := d.four(column, line)
			a, b := topTwo(four, rank)
			mask := 0
			for i, v := range four {
				if v == a {
					mask |= 1 << i
				}
			}
			switch {
			case a == 0 && b == 0:
			case a == 0: // nothing cannot be drawn as ink: the other one is
				c.Set(x+column, y+line, role(b).Ink(), quadrants[15&^mask])
			case b == 0:
				c.Set(x+column, y+line, role(a).Ink(), quadrants[mask])
			default:
				c.Set(x+column, y+line, role(a).On(role(b)), quadrants[mask])
			}
		}
	}
}

// topTwo are the two numbers of a cell that weigh most: by rank first, then by how many dots they have. b is a where there is
// one only, and 0 where the other dots are empty.
func topTwo(four [4]uint8, rank func(uint8) int) (a, b uint8) {
	weight := func(v uint8) int {
		n := 0
		for _, u := range four {
			if u == v {
				n++
			}
		}
		return n + 8*rank(v)
	}
	a = four[0]
	for _, v := range four[1:] {
		if v != a && weight(v) > weight(a) {
			a = v
		}
	}
	found := false
	for _, v := range four {
		if v != a && (!found || weight(v) > weight(b)) {
			b, found = v, true
		}
	}
	if !found {
		b = a
	}
	return a, b
}
