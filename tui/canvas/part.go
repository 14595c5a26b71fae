package canvas

import (
	"cmp"
	"slices"
)

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
	partHole   // like air, but visible even if it is small
	parts      = iota
)

// textures are the characters for the parts on a terminal without colour.
var textures = [parts]string{
	partBacking: "=", partFirst: "▒", partSecond: "░", partTip: "▓", partBluing: "≈", partBead: "█", partWire: "║",
	partMelted: "·", partBoiled: "x",
}

func (p part) role() Role { return partInk + Role(p) }

// rank says which part of a cell is kept first: a thin but important part comes before a large one.
func (p part) rank() int {
	switch {
	case p >= partMelted:
		return 2
	case p >= partTip:
		return 1
	}
	return 0
}

// picture draws a function over a rectangle of cells: at gives the part at a place, in columns from the left and in
// lines from the top. With colours a cell shows four dots in two colours, or two dots on a terminal without quadrants;
// without colours it shows one texture.
func (c *Cells) picture(th *Theme, x, y, w, h int, at func(column, line float64) part) {
	for line := range h {
		for column := range w {
			var four [4]part
			for i := range four {
				across := float64(column) + 0.25 + float64(i%2)/2
				if th.coarse {
					across = float64(column) + 0.5
				}
				four[i] = at(across, float64(line)+0.25+float64(i/2)/2)
			}
			if th.ground {
				c.colours(x+column, y+line, four)
			} else if p := texture(four); p != partAir {
				c.Set(x+column, y+line, p.role().Ink(), textures[p])
			}
		}
	}
}

// texture is the part that a cell shows without colour: the most frequent one. Of equally frequent ones, zinc comes
// before sheet and sheet before bead, so that a thin sheet below a bead stays visible. Melted and boiled zinc are
// counted together.
func texture(four [4]part) part {
	zinc := func(p part) bool { return p == partMelted || p == partBoiled }
	weight := func(p part) (n int) {
		for _, q := range four {
			if q == p {
				n++
			}
			if q == p || zinc(q) && zinc(p) {
				n += 100
			}
		}
		switch {
		case p == partAir:
			return 0
		case p >= partMelted:
			n += 20
		case p.rank() == 0:
			n += 10
		}
		return n
	}
	return slices.MaxFunc(four[:], func(p, q part) int { return weight(p) - weight(q) })
}

// colours draws the four dots of a cell in at most two colours. An outline is more important than the parts inside it:
// if a dot of a cell is empty, the others have one colour.
func (c *Cells) colours(x, y int, four [4]part) {
	for i, p := range four {
		if p == partHole {
			four[i] = partAir
		}
	}
	a, b := topTwo(four)
	mask := 0
	for i, p := range four {
		third := p != partAir && p != a && p != b
		beside := b != partAir && four[i^1] == a // otherwise a dot of the other part would be alone in its row
		if p == a || third && (beside || nearer(p, a, b == partAir)) {
			mask |= 1 << i
		}
	}
	switch {
	case a == partAir:
	case b == partAir, a == b:
		c.Set(x, y, a.role().Ink(), quadrants.signs[mask])
	default:
		c.Set(x, y, a.role().On(b.role()), quadrants.signs[mask])
	}
}

// nearer reports whether a third part, for which a cell has no colour left, gets the colour of the first one. In a full
// cell it does if both have the same rank. At an outline it does unless its rank is higher; then it is left out.
func nearer(p, first part, outline bool) bool {
	return p.rank() == first.rank() || outline && p.rank() < first.rank()
}

// topTwo are the two parts that a cell shows. In a full cell these are the part of the highest rank and the most
// frequent of the others; at an outline, where a dot is empty, the most frequent part and air. In an empty cell a is
// air.
func topTwo(four [4]part) (a, b part) {
	best := func(but part, byRank int) (most part) {
		weight := 0
		for _, p := range four {
			if p == partAir || p == but {
				continue
			}
			n := 1 + byRank*p.rank()
			for _, q := range four {
				if q == p {
					n += 4
				}
			}
			if n > weight {
				most, weight = p, n
			}
		}
		return most
	}
	if slices.Contains(four[:], partAir) {
		return best(partAir, 1), partAir
	}
	a = best(partAir, 100)
	return a, cmp.Or(best(a, 1), a)
}
