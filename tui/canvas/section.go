package canvas

import "math"

// JointKind is the shape of a joint.
type JointKind uint8

// The joints.
const (
	Butt JointKind = iota
	Lap
	Tee
	Corner
	Overlay
	jointKinds = iota
)

// Joint is a joint's cross-section, mm and rad. Index 0 is the first member: the upper one of a lap, the one that
// stands in a tee.
type Joint struct {
	Kind       JointKind
	Thick      [2]float64
	Gap        float64    // between the members
	Wet        [2]float64 // wetted width on each member; 0 draws no bead
	Phi        float64    // between the chord from toe to toe and the bead's surface; below zero is concave
	Melted     [2]float64 // zinc melted from the joint outward on the bead's face; 0 without zinc
	Boiled     [2]float64 // zinc boiled
	MeltedBack [2]float64 // the same on the other face
	BoiledBack [2]float64
	Backing    float64 // thickness of a bar behind the joint; 0 is none
	Least      float64 // what a column stands for at least: the greater scale of two drawings beside each other
}

// sane reports whether a joint can be drawn at all.
func (s *Joint) sane() bool {
	sum := s.Gap + s.Phi + s.Backing
	for i := range 2 {
		sum += s.Thick[i] + s.Wet[i] + s.Melted[i] + s.MeltedBack[i]
	}
	one := s.Kind == Overlay
	members := s.Thick[0] > 0 && (one || s.Thick[1] > 0)
	return s.Kind < jointKinds && members && s.Gap >= 0 && !math.IsNaN(sum) && !math.IsInf(sum, 0)
}

// frame is what a drawing shows, mm.
type frame struct{ left, right, low, top float64 }

// whole is a frame that holds the bead, the burnt zinc, the backing, and a little of the members beyond.
func (s *Joint) whole() frame {
	return s.frame(func(i int) float64 { return max(s.Wet[i], s.Melted[i], s.MeltedBack[i]) + 2 })
}

// closeUp is a frame that holds the bead and the backing.
func (s *Joint) closeUp() frame {
	return s.frame(func(i int) float64 { return s.Wet[i] + 0.8 })
}

// frame is a frame that reaches so far along each member.
func (s *Joint) frame(reach func(member int) float64) frame {
	head := max(s.Wet[0], s.Wet[1], 1) * 0.8
	t := s.Thick
	var f frame
	switch s.Kind {
	case Lap:
		f = frame{-reach(0), reach(1), -t[1], s.Gap + t[0] + head/2}
	case Tee:
		f = frame{-t[0] - reach(1)/2, reach(1), -t[1], s.Gap + min(reach(0), 8+s.Wet[0])}
	case Corner:
		f = frame{-reach(0), t[1] + head, -t[0] - min(reach(1), 6+s.Wet[1]), head}
	case Overlay:
		f = frame{-reach(0), reach(0), -min(t[0], 5), head}
	default:
		f = frame{-s.Gap/2 - reach(0), s.Gap/2 + reach(1), -max(t[0], t[1]), head}
	}
	if s.Kind != Corner {
		f.low -= s.Backing
	}
	return f
}

// face is a place in a member: which one, how deep under the nearer of its two faces, how far from the joint, and
// whether that face is the one away from the bead.
type face struct {
	member       int
	depth, along float64
	back         bool
}

// member finds the member at a place, false where there is none.
func (s *Joint) member(x, y float64) (face, bool) {
	t := s.Thick
	in := func(i int, across, along float64) (face, bool) { // across: from the bead's face
		return face{i, min(across, t[i]-across), along, across > t[i]/2}, across >= 0 && across <= t[i] && along >= 0
	}
	switch s.Kind {
	case Lap:
		if y >= s.Gap {
			return in(0, s.Gap+t[0]-y, -x)
		}
		return in(1, -y, math.Abs(x))
	case Tee:
		if y >= s.Gap {
			return in(0, -x, y-s.Gap)
		}
		return in(1, -y, math.Abs(x))
	case Corner:
		if x <= 0 {
			return in(0, -y, -x)
		}
		return in(1, t[1]-x, -t[0]-y)
	case Overlay:
		return in(0, -y, math.Abs(x))
	}
	if x < 0 {
		return in(0, -y, -x-s.Gap/2)
	}
	return in(1, -y, x-s.Gap/2)
}

// at is what stands at a place; a dot is so many mm wide and high.
func (s *Joint) at(c *segment, x, y, dot float64) part {
	if f, ok := s.member(x, y); ok {
		return s.surface(f, dot)
	}
	switch {
	case s.bead(c, x, y), s.film(x, y, dot):
		return partBead
	case s.bar(x, y):
		return partBacking
	}
	return partAir
}

// surface is the member itself, or on its outermost dot what became of its zinc.
func (s *Joint) surface(f face, dot float64) part {
	boiled, melted := s.Boiled[f.member], s.Melted[f.member]
	if f.back {
		boiled, melted = s.BoiledBack[f.member], s.MeltedBack[f.member]
	}
	thin := s.Thick[f.member] < 2.5*dot && s.MeltedBack[f.member] > 0 // its two faces would hide the metal between them
	if f.depth <= dot && (f.back || f.along > s.Wet[f.member] && !thin) {
		switch {
		case f.along < boiled:
			return partBoiled
		case f.along < melted:
			return partMelted
		}
	}
	if f.member == 1 {
		return partSecond
	}
	return partFirst
}

// bar is the backing behind the joint.
func (s *Joint) bar(x, y float64) bool {
	if s.Backing <= 0 || s.Kind == Corner {
		return false
	}
	low := -s.Thick[0]
	if s.Kind == Lap || s.Kind == Tee {
		low = -s.Thick[1]
	}
	if s.Kind == Butt {
		low = -max(s.Thick[0], s.Thick[1])
	}
	return y < low && y >= low-s.Backing
}
