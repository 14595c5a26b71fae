package joint

import "math"

// Bead is the cross-section of the filler above the chord from toe to toe: a segment of a circle, or the crown of an
// edge joint.
type Bead struct {
	of     *Shape
	toe    Point // the first toe
	along  Point // unit vector toward the second toe
	chord  float64
	radius float64 // of the surface's circle; 0 for a flat surface
	centre float64 // how far the circle's centre lies below the chord
	crown  *crown
}

// Bead returns the bead, or nil if the joint has none.
func (s *Shape) Bead() *Bead {
	f, w := s.sides(), s.wet()
	a, b := f[0].from.plus(f[0].along, w[0]), f[1].from.plus(f[1].along, w[1])
	to := b.minus(a)
	chord := math.Hypot(to.X, to.Y)
	if !(w[0] > 0 && w[1] > 0 && chord > 0) {
		return nil
	}
	c := &Bead{of: s, toe: a, along: Point{to.X / chord, to.Y / chord}, chord: chord}
	if phi := math.Abs(s.Phi); phi >= 1e-3 {
		c.radius = chord / 2 / math.Sin(phi)
		c.centre = c.radius * math.Cos(phi)
	}
	if s.Kind == Edge {
		c.crown = s.crown(chord)
	}
	return c
}

// Holds reports whether a point outside the members lies in the bead: in the corner below the chord, or in the segment
// above it. The segment bulges out over the toes if its angle is over 90°.
func (c *Bead) Holds(p Point) bool {
	if c == nil {
		return false
	}
	if c.of.Kind == Edge {
		return c.crown.holds(p)
	}
	if c.of.Kind == Corner && p.X < 0 && p.Y < -c.of.Thick[0] {
		return false // inside the corner, behind both members: a chord between far toes passes through this place
	}
	at := p.minus(c.toe)
	// Height above the chord, and position along it from its middle.
	h, u := at.Y*c.along.X-at.X*c.along.Y, at.dot(c.along)-c.chord/2
	if h > 0 && c.radius > 0 && c.of.Phi > 0 {
		return math.Hypot(u, h+c.centre) <= c.radius
	}
	if math.Abs(u) > c.chord/2 {
		return false
	}
	surface := 0.0
	if c.radius > 0 {
		surface = math.Copysign(math.Sqrt(max(0, c.radius*c.radius-u*u))-c.centre, c.of.Phi)
	}
	return h <= surface && (h > 0 || c.of.pocket(p.X, p.Y))
}

// pocket reports whether a point lies between the members, where the bead fills the space below its chord.
func (s *Shape) pocket(x, y float64) bool {
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
