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
}

// sane reports whether a joint can be drawn at all.
func (s *Joint) sane() bool {
	sum := s.Gap + s.Phi
	for i := range 2 {
		sum += s.Thick[i] + s.Wet[i] + s.Melted[i] + s.MeltedBack[i]
	}
	one := s.Kind == Overlay
	members := s.Thick[0] > 0 && (one || s.Thick[1] > 0)
	return s.Kind < jointKinds && members && s.Gap >= 0 && !math.IsNaN(sum) && !math.IsInf(sum, 0)
}

// frame is what a drawing shows, mm.
type frame struct{ left, right, low, top float64 }

// whole is a frame that holds the bead, the burnt zinc and a little of the members beyond.
func (s *Joint) whole() frame {
	return s.frame(func(i int) float64 { return max(s.Wet[i], s.Melted[i], s.MeltedBack[i]) + 2 })
}

// closeUp is a frame that holds the bead.
func (s *Joint) closeUp() frame {
	return s.frame(func(i int) float64 { return s.Wet[i] + 0.8 })
}

// frame is a frame that reaches so far along each member.
func (s *Joint) frame(reach func(member int) float64) frame {
	head := max(s.Wet[0], s.Wet[1], 1) * 0.8
	t := s.Thick
	switch s.Kind {
	case Lap:
		return frame{-reach(0), reach(1), -t[1], s.Gap + t[0] + head/2}
	case Tee:
		return frame{-t[0] - reach(1)/2, reach(1), -t[1], s.Gap + min(reach(0), 8+s.Wet[0])}
	case Corner:
		return frame{-reach(0), t[1] + head, -t[0] - min(reach(1), 6+s.Wet[1]), head}
	case Overlay:
		return frame{-reach(0), reach(0), -min(t[0], 5), head}
	}
	return frame{-s.Gap/2 - reach(0), s.Gap/2 + reach(1), -max(t[0], t[1]), head}
}

// both is an overlay as a joint whose two members are the same one, with a toe on either side of the bead; any other
// joint as it is.
func (s Joint) both() Joint {
	if s.Kind == Overlay {
		for _, pair := range [...]*[2]float64{&s.Thick, &s.Wet, &s.Melted, &s.Boiled, &s.MeltedBack, &s.BoiledBack} {
			pair[1] = pair[0]
		}
	}
	return s
}

// side is a member's face as the bead sees it: where the joint begins on it, which way it runs from there, and the way
// into the metal.
type side struct {
	from, along, in point
	on              bool // it runs on beyond the joint
}

func (s *Joint) sides() [2]side {
	left, right, up, down := point{-1, 0}, point{1, 0}, point{0, 1}, point{0, -1}
	switch s.Kind {
	case Lap:
		return [2]side{{point{0, s.Gap + s.Thick[0]}, left, down, false}, {point{}, right, down, true}}
	case Tee:
		return [2]side{{point{0, s.Gap}, up, left, false}, {point{}, right, down, true}}
	case Corner:
		return [2]side{{point{}, left, down, false}, {point{s.Thick[1], -s.Thick[0]}, down, left, false}}
	case Overlay:
		return [2]side{{point{}, left, down, true}, {point{}, right, down, true}}
	}
	return [2]side{{point{-s.Gap / 2, 0}, left, down, false}, {point{s.Gap / 2, 0}, right, down, false}}
}

// at is what stands at a place; a dot is so many mm wide and high.
func (s *Joint) at(c *segment, p point, dot float64) part {
	film := false
	for i, f := range s.sides() {
		depth, along := p.minus(f.from).dot(f.in), p.minus(f.from).dot(f.along)
		if depth >= 0 && depth <= s.Thick[i] && (f.on || along >= 0) {
			return s.surface(i, depth, math.Abs(along), dot)
		}
		// A toe runs out thinner than a dot, and its end would not be seen: the wetted width is itself a dot high.
		film = film || -dot <= depth && depth < 0 && along >= 0 && along <= s.Wet[i]
	}
	if film || s.bead(c, p) {
		return partBead
	}
	return partAir
}

// surface is a member, or on its outermost dot what became of its zinc: so deep under the face that the bead sees, so
// far from the joint.
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
