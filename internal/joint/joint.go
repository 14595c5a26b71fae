// Package joint is the cross-section of a joint and its bead, for everything that draws it: which part lies where, and
// which area a picture has to show. Lengths are mm, x to the right and y up from where the joint begins; angles are
// rad.
package joint

import (
	"math"
)

// Kind is how the members are placed against each other.
type Kind uint8

// The kinds of joints.
const (
	Butt Kind = iota
	Lap
	Tee
	Corner
	Overlay
	Edge
	Kinds = iota
)

// KindOf finds a joint by its name. It returns Butt and false for a joint that has no cross-section of its own.
func KindOf(name string) (Kind, bool) {
	k, ok := map[string]Kind{"butt": Butt, "lap": Lap, "tee": Tee, "corner": Corner, "overlay": Overlay,
		"edge": Edge}[name]
	return k, ok
}

// Shape is a joint's members and its bead. Index 0 is the first member: the upper sheet of a lap, the standing one of a
// tee, the only one of an overlay.
type Shape struct {
	Kind  Kind
	Thick [2]float64
	Gap   float64    // between the members
	Wet   [2]float64 // wetted width on each member; without one there is no bead
	Phi   float64    // angle between the chord from toe to toe and the bead's surface; negative is concave
	// Backing is the thickness of a bar or strip behind a butt; 0 means none.
	Backing float64
}

// Point is a place in the cross-section.
type Point struct{ X, Y float64 }

func (p Point) minus(q Point) Point            { return Point{p.X - q.X, p.Y - q.Y} }
func (p Point) plus(q Point, by float64) Point { return Point{p.X + by*q.X, p.Y + by*q.Y} }
func (p Point) dot(q Point) float64            { return p.X*q.X + p.Y*q.Y }

// side is the face of a member that the bead lies on: where the joint begins on it, the direction in which it runs from
// there, and the direction into the metal.
type side struct {
	from, along, in Point
	on              bool // the member continues past the joint
}

// sides are the faces of both members. An overlay has its one face twice, one for the toe on each side of the bead.
func (s *Shape) sides() [2]side {
	left, right, up, down := Point{-1, 0}, Point{1, 0}, Point{0, 1}, Point{0, -1}
	switch s.Kind {
	case Lap:
		return [2]side{{Point{0, s.Gap + s.Thick[0]}, left, down, false}, {Point{}, right, down, true}}
	case Tee:
		return [2]side{{Point{0, s.Gap}, up, left, false}, {Point{}, right, down, true}}
	case Corner:
		return [2]side{{Point{}, left, down, false}, {Point{s.Thick[1], -s.Thick[0]}, down, left, false}}
	case Overlay:
		return [2]side{{Point{}, left, down, true}, {Point{}, right, down, true}}
	case Edge:
		l, r := s.outer()
		return [2]side{{Point{l, 0}, down, right, false}, {Point{r, 0}, down, left, false}}
	}
	return [2]side{{Point{-s.Gap / 2, 0}, left, down, false}, {Point{s.Gap / 2, 0}, right, down, false}}
}

// wet is the wetted width on each side.
func (s *Shape) wet() [2]float64 {
	if s.Kind == Overlay {
		return [2]float64{s.Wet[0], s.Wet[0]}
	}
	return s.Wet
}

// Member finds the member at a point: its index, the depth under its face, and the distance along the face from the
// joint. ok is false if no member is there.
func (s *Shape) Member(p Point) (i int, depth, along float64, ok bool) {
	for i, f := range s.sides() {
		depth, along = p.minus(f.from).dot(f.in), p.minus(f.from).dot(f.along)
		if depth >= 0 && depth <= s.Thick[i] && (f.on || along >= 0) {
			return i, depth, math.Abs(along), true
		}
	}
	return 0, 0, 0, false
}

// Film reports whether a point lies in a film of this height on the wetted width. Near its toes the bead is thinner
// than a dot of a drawing, so that without the film the wetted width would look too short.
func (s *Shape) Film(p Point, high float64) bool {
	wet := s.wet()
	for i, f := range s.sides() {
		height, along := -p.minus(f.from).dot(f.in), p.minus(f.from).dot(f.along)
		if height > 0 && height <= high && along >= 0 && along <= wet[i] {
			return true
		}
	}
	return false
}

// Behind reports whether a point lies in the backing of a butt.
func (s *Shape) Behind(p Point) bool {
	low := -max(s.Thick[0], s.Thick[1])
	return s.Kind == Butt && p.Y < low && p.Y >= low-s.Backing
}

// Frame is the area that a picture shows.
type Frame struct{ Left, Right, Low, Top float64 }

// Frame returns an area that holds the bead and the given length of each member beside it.
func (s *Shape) Frame(reach func(member int) float64) Frame {
	head, t := max(s.Wet[0], s.Wet[1], 1)*0.8, s.Thick
	switch s.Kind {
	case Lap:
		return Frame{-reach(0), reach(1), -t[1], s.Gap + t[0] + head/2}
	case Tee:
		return Frame{-t[0] - reach(1)/2, reach(1), -t[1], s.Gap + min(reach(0), 8+s.Wet[0])}
	case Corner:
		return Frame{-reach(0), t[1] + head, -t[0] - min(reach(1), 6+s.Wet[1]), head}
	case Overlay:
		return Frame{-reach(0), reach(0), -min(t[0], 5), head}
	case Edge:
		l, r := s.outer()
		head = 0.5
		if b := s.Bead(); b != nil && b.crown != nil {
			head += b.crown.top
		}
		return Frame{l - head, r + head, -min(max(reach(0), reach(1)), 10), head}
	}
	return Frame{-s.Gap/2 - reach(0), s.Gap/2 + reach(1), -max(t[0], t[1]) - s.Backing, head}
}

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
