package joint

import (
	"math"
)

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

// crown is the bead of an edge joint: it covers both edges and runs down the outer faces. With these unfolded into one
// face, its height is a parabola from toe to toe. Around the corners it keeps the height that it has at them.
type crown struct {
	of           *Shape
	middle, half float64 // the wetted part, along the unfolded face from the gap's middle: centre and half-width
	top          float64
}

// crown gives the bead the area of the segment above the chord, minus the part of the segment that the sheets fill: the
// chord runs through them.
func (s *Shape) crown(chord float64) *crown {
	sheets := s.Thick[0]*s.Wet[0] + s.Thick[1]*s.Wet[1] + s.Gap*(s.Wet[0]+s.Wet[1])/2
	sin, cos := math.Sincos(s.Phi)
	area := chord*chord/4*(s.Phi-sin*cos)/(sin*sin) - sheets
	if !(area > 0) {
		return nil
	}
	left, right := s.outer()
	c := &crown{of: s, middle: (left - s.Wet[0] + right + s.Wet[1]) / 2, half: (right + s.Wet[1] - left + s.Wet[0]) / 2}
	l, r := c.share(left), c.share(right)
	// area = 4/3 half top + pi/4 (l² + r²) top²: a parabola, and a quarter of a circle around each corner.
	straight, corners := 4*c.half/3, math.Pi/4*(l*l+r*r)
	c.top = 2 * area / (straight + math.Sqrt(straight*straight+4*corners*area))
	return c
}

// outer returns the x positions of the outer faces of an edge joint's sheets.
func (s *Shape) outer() (left, right float64) { return -s.Gap/2 - s.Thick[0], s.Gap/2 + s.Thick[1] }

// share is the bead's height at a place along the face as a share of its greatest height. It is negative beyond the
// toes.
func (c *crown) share(along float64) float64 {
	u := (along - c.middle) / c.half
	return 1 - u*u
}

// holds reports whether a point outside the members lies in the bead.
func (c *crown) holds(p Point) bool {
	if c == nil {
		return false
	}
	left, right := c.of.outer()
	beside, over, down := max(left-p.X, p.X-right, 0), max(p.Y, 0), max(-p.Y, 0)
	along := p.X
	switch {
	case beside == 0 && over == 0:
		return c.of.pocket(p.X, p.Y)
	case p.X < left:
		along = left - down
	case p.X > right:
		along = right + down
	}
	return math.Hypot(beside, over) <= c.top*c.share(along)
}
