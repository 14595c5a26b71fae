package section

import "math"

// A three-dimensional reference of a bead in a corner: a plate, and on it a block whose face is at right angles
// to it. A block as thick as a sheet that continues upward is a tee's standing member; one that continues
// sideways and ends above is the upper sheet of a lap. Finite volumes that travel with the arc, explicit in
// time, until the field is steady. The filler is a triangle of cells in the corner; arc and heat fall on the
// faces as in the section.

// piece is the part that a cell of the section across the seam belongs to.
type piece int8

const (
	nothing piece = iota
	plateCell
	blockCell
	fillerCell
)

// shape is a section across the seam: y from the corner across the plate, z up the block's face.
type shape struct {
	y, z   []float64 // middles
	dy, dz []float64
	kind   []piece
	cell   [][2]int // place of each cell
	links  []shapeLink
	share  []float64 // of the source, before any filler
	over   []float64 // and with all the filler
	metal  []float64 // of the filler, mm2
	floor  []int     // cells of the plate's face beyond the corner, outward
	wall   []int     // and of the block's face, upward
	air    []float64 // length of each cell's edge to the air, mm
	area   float64   // of the filler's cells, mm2
}

// shapeLink joins two cells: the length they share, and the distances of their middles from it.
type shapeLink struct {
	a, b       int
	long, x, y float64
}

// graded returns cells from low below zero to high above it, growing from a width by a ratio up to a greatest
// width.
func graded(from, ratio, most, low, high float64) (d, middle []float64) {
	down := fitted(spaced(from, ratio, most, low), low)
	for i := len(down) - 1; i >= 0; i-- {
		d = append(d, down[i])
	}
	d = append(d, fitted(spaced(from, ratio, most, high), high)...)
	at := -low
	for _, v := range d {
		middle = append(middle, at+v/2)
		at += v
	}
	return d, middle
}

// fitted stretches cells to a length.
func fitted(d []float64, length float64) []float64 {
	sum := 0.0
	for _, v := range d {
		sum += v
	}
	for i := range d {
		d[i] *= length / sum
	}
	return d
}

// cornerOf lays out a plate under a block of this depth and height, mm, around a bead; aside is how far the
// plate continues.
func cornerOf(in *Input, deep, high, aside, fine float64) *shape {
	s := &shape{}
	s.dy, s.y = graded(0.4*fine, 1.15, 4, deep, aside)
	if deep < aside { // the plate continues under and behind the block
		more := fitted(spaced(2, 1.2, 4, aside-deep), aside-deep)
		edge := -deep
		for _, v := range more {
			s.dy, s.y = append([]float64{v}, s.dy...), append([]float64{edge - v/2}, s.y...)
			edge -= v
		}
	}
	s.dz, s.z = graded(0.4*fine, 1.2, 3, in.Thick[1], high)
	number := s.fill(in, deep, high)
	s.join(number)
	s.shine(in, number, high)
	return s
}

// fill assigns the parts, numbers the cells and spreads the bead's metal over the filler's cells.
func (s *shape) fill(in *Input, deep, high float64) map[[2]int]int {
	number := map[[2]int]int{}
	leg := math.Sqrt(2 * in.Bead)
	for i, y := range s.y {
		for k, z := range s.z {
			kind := nothing
			switch {
			case z < 0:
				kind = plateCell
			case y < 0 && y > -deep && z < high:
				kind = blockCell
			case y > 0 && y+z < leg:
				kind = fillerCell
			}
			if kind == nothing {
				continue
			}
			number[[2]int{i, k}] = len(s.cell)
			s.kind, s.cell = append(s.kind, kind), append(s.cell, [2]int{i, k})
			s.share, s.air = append(s.share, 0), append(s.air, 0)
			s.metal = append(s.metal, 0)
			if kind == fillerCell {
				s.metal[len(s.metal)-1] = s.dy[i] * s.dz[k]
				s.area += s.dy[i] * s.dz[k]
			}
		}
	}
	for c := range s.metal {
		s.metal[c] *= in.Bead / max(s.area, 1e-9)
	}
	return number
}

// join finds the links. Block and plate touch without contact, as in the section.
func (s *shape) join(number map[[2]int]int) {
	for c, at := range s.cell {
		i, k := at[0], at[1]
		right, isRight := number[[2]int{i + 1, k}]
		if isRight {
			s.links = append(s.links, shapeLink{c, right, s.dz[k], s.dy[i] / 2, s.dy[i+1] / 2})
		}
		above, isAbove := number[[2]int{i, k + 1}]
		if isAbove && !(s.kind[c] == plateCell && s.kind[above] == blockCell) {
			s.links = append(s.links, shapeLink{c, above, s.dy[i], s.dz[k] / 2, s.dz[k+1] / 2})
		}
		switch {
		case s.kind[c] == plateCell && k == 0, s.kind[c] != fillerCell && !isAbove:
			s.air[c] += s.dy[i]
		case s.kind[c] == blockCell && !isRight:
			s.air[c] += s.dz[k]
		}
	}
}

// shine sets each face cell's share of the source. The part that falls past the block's upper edge falls on its
// top.
func (s *shape) shine(in *Input, number map[[2]int]int, high float64) {
	sigma := in.Sigma * math.Sqrt2
	gauss := func(from, to, centre float64) float64 { return normal((to-centre)/sigma) - normal((from-centre)/sigma) }
	inner, low := lastBelow(s.y), lastBelow(s.z)
	sum := 0.0
	put := func(c int, v float64) { s.share[c] += v; sum += v }
	for i := inner + 1; i < len(s.y); i++ {
		c := number[[2]int{i, low}]
		s.floor = append(s.floor, c)
		put(c, gauss(s.y[i]-s.dy[i]/2, s.y[i]+s.dy[i]/2, in.Aim*math.Sqrt2))
	}
	top := 0
	for k := low + 1; k < len(s.z); k++ {
		c, ok := number[[2]int{inner, k}]
		if !ok {
			break
		}
		top = k
		s.wall = append(s.wall, c)
		put(c, gauss(s.z[k]-s.dz[k]/2, s.z[k]+s.dz[k]/2, -in.Aim*math.Sqrt2))
	}
	for i := inner; i >= 0; i-- {
		if c, ok := number[[2]int{i, top}]; ok {
			from := high - s.y[i] - s.dy[i]/2
			put(c, gauss(from, from+s.dy[i], -in.Aim*math.Sqrt2))
		}
	}
	for c := range s.share {
		s.share[c] /= sum
	}
	s.cover(in)
}

// lastBelow is the last of rising places below zero.
func lastBelow(list []float64) (last int) {
	for i, v := range list {
		if v < 0 {
			last = i
		}
	}
	return last
}

// cover moves the heat that falls on the faces under the filler up to its surface.
func (s *shape) cover(in *Input) {
	leg := math.Sqrt(2 * in.Bead)
	s.over = make([]float64, len(s.share))
	under, sum := 0.0, 0.0
	for c, at := range s.cell {
		y, z := s.y[at[0]], s.z[at[1]]
		if s.share[c] > 0 && (y > 0 && y < leg && z < 0 || z > 0 && z < leg && y < 0) {
			under += s.share[c]
		} else {
			s.over[c] = s.share[c]
		}
		if s.kind[c] == fillerCell && y+z+s.dy[at[0]]/2+s.dz[at[1]]/2 > leg-s.dz[at[1]] {
			u := (y - z) / math.Sqrt2
			s.over[c] = math.Exp(-u*u/(2*in.Sigma*in.Sigma)) * math.Hypot(s.dy[at[0]], s.dz[at[1]])
			sum += s.over[c]
		}
	}
	for c := range s.cell {
		if s.kind[c] == fillerCell {
			s.over[c] *= under / max(sum, 1e-12)
		}
	}
}
