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

// colours draws each dot in the role of its number, two at most in a cell. An outline comes before what lies in it:
// where a dot of a cell is empty, the rest of it has one colour.
func (d *dots) colours(c *Cells, x, y int, role func(uint8) Role, rank func(uint8) int) {
	for line := range d.h / 2 {
		for column := range d.w / 2 {
			four := d.four(column, line)
			a, b := topTwo(four, rank)
			mask := 0
			for i, v := range four {
				if v == a || v != 0 && v != b && nearer(rank(v), rank(a), b == 0) {
					mask |= 1 << i
				}
			}
			switch {
			case a == 0:
			case b == 0:
				c.Set(x+column, y+line, role(a).Ink(), quadrants[mask])
			default:
				c.Set(x+column, y+line, role(a).On(role(b)), quadrants[mask])
			}
		}
	}
}

// nearer reports whether a third number, for which a cell has no colour left, takes that of the first one. In a full
// cell it does if both have the same rank. At an outline it does unless its rank is higher; then it is left out.
func nearer(rank, first int, outline bool) bool {
	return rank == first || outline && rank < first
}

// topTwo are the two numbers that a cell shows: in a full one that of the highest rank and, of the others, the most
// frequent one; at an outline, where a dot is empty, the most frequent one and 0. a is 0 where the cell is empty.
func topTwo(four [4]uint8, rank func(uint8) int) (a, b uint8) {
	outline := four[0] == 0 || four[1] == 0 || four[2] == 0 || four[3] == 0
	best := func(but uint8, byRank int) (most uint8) {
		weight := 0
		for _, v := range four {
			if v == 0 || v == but {
				continue
			}
			n := 1 + byRank*rank(v)
			for _, u := range four {
				if u == v {
					n += 4
				}
			}
			if n > weight {
				most, weight = v, n
			}
		}
		return most
	}
	if outline {
		return best(0, 1), 0
	}
	a = best(0, 100)
	if b = best(a, 1); b == 0 {
		b = a
	}
	return a, b
}
