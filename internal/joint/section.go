package joint

// Section is a joint with its bead and the state of its zinc: how far it melted and boiled on each member, from the
// joint outward; 0 without zinc.
type Section struct {
	Shape
	Melted     [2]float64 // on the face with the bead
	Boiled     [2]float64
	MeltedBack [2]float64 // on the other face
	BoiledBack [2]float64
}

// Part is what lies at a place.
type Part uint8

// The parts.
const (
	Air Part = iota
	First
	Second
	Filler
	Backing
	Boiled
	Melted
	Parts = iota
)

// Whole is the area with the bead, the burnt zinc and a little of the members beside it.
func (s *Section) Whole() Frame {
	return s.Frame(func(i int) float64 { return max(s.Wet[i], s.Melted[i], s.MeltedBack[i]) + 2 })
}

// At is the part at a place. The zinc's state is drawn as thick as coat, mm.
func (s *Section) At(bead *Bead, p Point, coat float64) Part {
	if i, depth, along, ok := s.Member(p); ok {
		return s.surface(i, depth, along, coat)
	}
	switch {
	case bead.Holds(p):
		return Filler
	case s.Behind(p):
		return Backing
	}
	return Air
}

// surface is a member, or the state of its zinc near its face.
func (s *Section) surface(i int, depth, along, coat float64) Part {
	boiled, melted, back := s.Boiled[i], s.Melted[i], depth > s.Thick[i]/2
	if back {
		boiled, melted, depth = s.BoiledBack[i], s.MeltedBack[i], s.Thick[i]-depth
	}
	if depth <= coat && (back || along > s.Wet[i]) {
		switch {
		case along < boiled:
			return Boiled
		case along < melted:
			return Melted
		}
	}
	return First + Part(i)
}
