package joint

import "math"

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
