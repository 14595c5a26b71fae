package canvas

// part is what a drawing shows at a place.
type part uint8

// The parts.
const (
	partAir part = iota
	partBacking
	partFirst
	partSecond
	partTip
	partBluing
	partBead
	partWire
	partMelted // zinc
	partBoiled // zinc
	partHole   // like air, but shown even where it is small
	parts      = iota
)

// textures stand for the parts where there is no colour.
var textures = [parts]string{
	partBacking: "=", partFirst: "▒", partSecond: "░", partTip: "▓", partBluing: "≈", partBead: "█", partWire: "║",
	partMelted: "·", partBoiled: "x",
}

func (p part) role() Role { return partInk + Role(p) }

// rank says which part of a cell is kept first: a thin part that tells something comes before a large one.
func (p part) rank() int {
	switch {
	case p >= partMelted:
		return 2
	case p >= partTip:
		return 1
	}
	return 0
}

// texture is the part that stands for a cell where there is no colour: the most frequent one. Where two are as
// frequent, zinc comes before sheet and sheet before bead, so that a thin sheet under a bead is seen. What was melted
// and what boiled are both zinc.
func texture(four [4]uint8) part {
	zinc := func(v uint8) bool { return part(v) == partMelted || part(v) == partBoiled }
	weight := func(v uint8) int {
		same, alike := 0, 0
		for _, u := range four {
			if u == v {
				same++
			}
			if u == v || zinc(u) && zinc(v) {
				alike++
			}
		}
		first := 0
		switch p := part(v); {
		case p == partAir:
			return 0
		case p >= partMelted:
			first = 2
		case p.rank() == 0:
			first = 1
		}
		return 100*alike + 10*first + same
	}
	most := four[0]
	for _, v := range four[1:] {
		if weight(v) > weight(most) {
			most = v
		}
	}
	return part(most)
}

// picture draws a function over a rectangle of cells: at gives the part at a place, in columns from the left and in
// lines from the top. With colours a cell holds four dots of two colours, or two where there are no quadrants;
// without, one texture.
func picture(c *Cells, th *Theme, x, y, w, h int, at func(column, line float64) part) {
	d := newDots(w, h)
	for j := range d.h {
		for i := range d.w {
			across := (float64(i) + 0.5) / 2
			if th.coarse {
				across = float64(i/2) + 0.5
			}
			d.list[j*d.w+i] = uint8(at(across, (float64(j)+0.5)/2))
		}
	}
	if th.ground {
		for i, v := range d.list {
			if part(v) == partHole {
				d.list[i] = uint8(partAir)
			}
		}
		d.colours(c, x, y, func(v uint8) Role { return part(v).role() }, func(v uint8) int { return part(v).rank() })
		return
	}
	for line := range h {
		for column := range w {
			if p := texture(d.four(column, line)); p != partAir {
				c.Set(x+column, y+line, p.role().Ink(), textures[p])
			}
		}
	}
}

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
				third := v != 0 && v != a && v != b
				beside := b != 0 && four[i^1] == a // or a dot of the other part would stand alone in its row
				if v == a || third && (beside || nearer(rank(v), rank(a), b == 0)) {
					mask |= 1 << i
				}
			}
			switch {
			case a == 0:
			case b == 0, a == b:
				c.Set(x+column, y+line, role(a).Ink(), quadrants[mask])
			default:
				c.Set(x+column, y+line, role(a).On(role(b)), quadrants[mask])
			}
		}
	}
}

// nearer reports whether a third number, for which a cell has no colour left, takes that of the first one. In a full
// cell it does if both have the same rank. At an outline it does unless its rank is higher; then it is left out.
func nearer(rank, first int, outline bool) bool { return rank == first || outline && rank < first }

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
