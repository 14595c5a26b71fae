package canvas

import (
	"math"

	"brazebooth/internal/joint"
)

// Joint is a joint's cross-section with what became of its zinc, mm from the joint outward on each member; 0 without
// zinc.
type Joint struct {
	joint.Shape
	Melted     [2]float64 // on the bead's face
	Boiled     [2]float64
	MeltedBack [2]float64 // on the other face
	BoiledBack [2]float64
	Least      float64 // what a column stands for at least: the greater scale of two drawings beside each other
}

// sane reports whether a joint can be drawn at all.
func (s *Joint) sane() bool {
	sum := s.Gap + s.Phi + s.Backing
	for i := range 2 {
		sum += s.Thick[i] + s.Wet[i] + s.Melted[i] + s.MeltedBack[i]
	}
	members := s.Thick[0] > 0 && (s.Kind == joint.Overlay || s.Thick[1] > 0)
	return s.Kind < joint.Kinds && members && s.Gap >= 0 && !math.IsNaN(sum) && !math.IsInf(sum, 0)
}

// whole is a frame that holds the bead, the burnt zinc and a little of the members beyond.
func (s *Joint) whole() joint.Frame {
	return s.Frame(func(i int) float64 { return max(s.Wet[i], s.Melted[i], s.MeltedBack[i]) + 2 })
}

// closeUp is a frame that holds the bead.
func (s *Joint) closeUp() joint.Frame {
	return s.Frame(func(i int) float64 { return s.Wet[i] + 0.8 })
}

// at is what stands at a place; a dot is so many mm wide and high.
func (s *Joint) at(bead *joint.Bead, p joint.Point, dot float64) part {
	if i, depth, along, ok := s.Member(p); ok {
		return s.surface(i, depth, along, dot)
	}
	switch {
	case bead.Holds(p), s.Film(p, dot):
		return partBead
	case s.Behind(p):
		return partBacking
	}
	return partAir
}

// surface is a member, or on its outermost dot what became of its zinc.
func (s *Joint) surface(i int, depth, along, dot float64) part {
	boiled, melted, back := s.Boiled[i], s.Melted[i], depth > s.Thick[i]/2
	if back {
		boiled, melted, depth = s.BoiledBack[i], s.MeltedBack[i], s.Thick[i]-depth
	}
	thin := s.Thick[i] < 2.5*dot && s.MeltedBack[i] > 0 // its two faces would hide the metal between them
	if depth <= dot && (back || along > s.Wet[i] && !thin) {
		switch {
		case along < boiled:
			return partBoiled
		case along < melted:
			return partMelted
		}
	}
	if i == 1 {
		return partSecond
	}
	return partFirst
}
