package joint

import "math"

// crown is the bead of an edge joint: it lies on both edges and runs down the outer faces. Over them, unfolded into one
// face, its height is a parabola from toe to toe; around the corners it is as thick as it is at them.
type crown struct {
	of           *Shape
	middle, half float64 // of what is wetted, along the face, from the middle of the gap
	top          float64
}

// crown has the area of the segment over the chord, which runs through the sheets, without what they take of it.
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

// outer is where the outer faces of an edge joint's sheets are.
func (s *Shape) outer() (left, right float64) { return -s.Gap/2 - s.Thick[0], s.Gap/2 + s.Thick[1] }

// share is which part of its greatest height the bead has at a place along the face; below zero is beyond its toes.
func (c *crown) share(along float64) float64 {
	u := (along - c.middle) / c.half
	return 1 - u*u
}

// holds reports whether a place outside the members lies in the bead.
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
