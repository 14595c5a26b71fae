package canvas

import "math"

// toes are the ends of the chord, the first on the first member.
func (s *Joint) toes() (ax, ay, bx, by float64) {
	w, t := s.Wet, s.Thick
	switch s.Kind {
	case Lap:
		return -w[0], s.Gap + t[0], w[1], 0
	case Tee:
		return 0, s.Gap + w[0], w[1], 0
	case Corner:
		return -w[0], 0, t[1], -t[0] - w[1]
	case Overlay:
		return -w[0], 0, w[0], 0
	}
	return -s.Gap/2 - w[0], 0, s.Gap/2 + w[1], 0
}

// segment is the bead over the chord from toe to toe: a segment of a circle.
type segment struct {
	drawn          bool
	x, y           float64 // the first toe
	ux, uy         float64 // toward the second one, a length of 1
	chord          float64
	radius, centre float64 // of the circle, and how far its centre lies below the chord
	hollow         bool
}

func (s *Joint) segment() segment {
	ax, ay, bx, by := s.toes()
	c := segment{x: ax, y: ay, chord: math.Hypot(bx-ax, by-ay)}
	c.drawn = s.Wet[0] > 0 && (s.Kind == Overlay || s.Wet[1] > 0) && c.chord > 0
	c.ux, c.uy = (bx-ax)/c.chord, (by-ay)/c.chord
	if phi := math.Abs(s.Phi); phi >= 1e-3 {
		c.radius = c.chord / 2 / math.Sin(phi)
		c.centre, c.hollow = c.radius*math.Cos(phi), s.Phi < 0
	}
	return c
}

// height is the height of the bead's surface over the chord at u from its middle.
func (c *segment) height(u float64) float64 {
	h := math.Sqrt(max(0, c.radius*c.radius-u*u)) - c.centre
	if c.radius == 0 {
		return 0
	}
	if c.hollow {
		return -h
	}
	return h
}

// bead reports whether a place outside the members lies in the filler: in the corner under the chord, or in the
// segment over it.
func (s *Joint) bead(c *segment, x, y float64) bool {
	if !c.drawn {
		return false
	}
	h := (y-c.y)*c.ux - (x-c.x)*c.uy // over the chord, away from the members
	u := (x-c.x)*c.ux + (y-c.y)*c.uy - c.chord/2
	if math.Abs(u) > c.chord/2 || h > c.height(u) {
		return false
	}
	return h > 0 || s.pocket(x, y)
}

// pocket is the room between the members that the bead fills under its chord.
func (s *Joint) pocket(x, y float64) bool {
	switch s.Kind {
	case Lap, Tee:
		return x > 0 && y > 0
	case Corner:
		return x > 0 && x < s.Thick[1] && y < 0 && y > -s.Thick[0]
	case Overlay:
		return false
	}
	return math.Abs(x) < s.Gap/2 && y > -min(s.Thick[0], s.Thick[1])
}

// film is the wetted width itself, a dot high: a toe runs out thinner than a dot, and its end would not be seen.
func (s *Joint) film(x, y, dot float64) bool {
	w, t := s.Wet, s.Thick
	over := func(height, along, wet float64) bool {
		return height > 0 && height <= dot && along >= 0 && along <= wet
	}
	switch s.Kind {
	case Lap:
		return over(y-s.Gap-t[0], -x, w[0]) || over(y, x, w[1])
	case Tee:
		return over(x, y-s.Gap, w[0]) || over(y, x, w[1])
	case Corner:
		return over(y, -x, w[0]) || over(x-t[1], -t[0]-y, w[1])
	case Overlay:
		return over(y, math.Abs(x), w[0])
	}
	return over(y, -x-s.Gap/2, w[0]) || over(y, x-s.Gap/2, w[1])
}
