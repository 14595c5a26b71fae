package canvas

import "math"

// segment is the bead over the chord from toe to toe: a segment of a circle.
type segment struct {
	drawn  bool
	toe    point // the first one
	along  point // toward the second one, a length of 1
	chord  float64
	radius float64
	centre float64 // how far the circle's centre lies below the chord
}

func (s *Joint) segment() segment {
	f, w := s.sides(), s.both().Wet
	a, b := f[0].from.plus(f[0].along, w[0]), f[1].from.plus(f[1].along, w[1])
	to := b.minus(a)
	c := segment{toe: a, chord: math.Hypot(to.x, to.y)}
	c.drawn = w[0] > 0 && w[1] > 0 && c.chord > 0
	c.along = point{to.x / c.chord, to.y / c.chord}
	if phi := math.Abs(s.Phi); phi >= 1e-3 {
		c.radius = c.chord / 2 / math.Sin(phi)
		c.centre = c.radius * math.Cos(phi)
	}
	return c
}

// bead reports whether a place outside the members lies in the filler: in the corner under the chord, or in the
// segment over it.
func (s *Joint) bead(c *segment, p point) bool {
	at := p.minus(c.toe)
	h, u := at.y*c.along.x-at.x*c.along.y, at.dot(c.along)-c.chord/2 // over the chord, from its middle
	if !c.drawn || math.Abs(u) > c.chord/2 {
		return false
	}
	surface := 0.0
	if c.radius > 0 {
		surface = math.Copysign(math.Sqrt(max(0, c.radius*c.radius-u*u))-c.centre, s.Phi)
	}
	return h <= surface && (h > 0 || s.pocket(p.x, p.y))
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
