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

// picture draws a function over a rectangle of cells: at gives the part at a place, in columns from the left and in
// lines from the top. With colours a cell holds four dots of two colours, or two where there are no quadrants;
// without, one texture.
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

// texture is the part that stands for a cell where there is no colour: the most frequent one. Where two are as
// frequent, zinc comes before sheet and sheet before bead, so that a thin sheet under a bead is seen. What was melted
// and what boiled are both zinc.
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

// colours draws the four dots of a cell, two colours at most. An outline comes before what lies in it: where a dot of a
// cell is empty, the rest of it has one colour.
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
		beside := b != partAir && four[i^1] == a // or a dot of the other part would stand alone in its row
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

// nearer reports whether a third part, for which a cell has no colour left, takes that of the first one. In a full
// cell it does if both have the same rank. At an outline it does unless its rank is higher; then it is left out.
func nearer(p, first part, outline bool) bool {
	return p.rank() == first.rank() || outline && p.rank() < first.rank()
}

// topTwo are the two parts that a cell shows: in a full one that of the highest rank and, of the others, the most
// frequent one; at an outline, where a dot is empty, the most frequent one and air. a is air where the cell is empty.
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
