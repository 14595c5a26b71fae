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
