package report

import (
	"math"

	"brazebooth/calc"
)

// A drawing of the joint in characters, to scale: a column is half as wide as a row is high. Members are
// / and \, the bead is o; on a coated member's surface X marks boiled and z melted zinc.
const (
	inkFirst  = '/'
	inkSecond = '\\'
	inkBead   = 'o'
	inkBoiled = 'X'
	inkMelted = 'z'
	inkAir    = ' '
)

// Drawing returns lines of at most w columns, at most h of them, and the millimetres that a column stands
// for; nothing where the joint is not modelled.
func Drawing(s *calc.Section, w, h int) (lines []string, perColumn float64) {
	if !s.Drawn || w < 20 || h < 4 {
		return nil, 0
	}
	f := frameOf(s)
	perColumn = math.Max((f.right-f.left)/float64(w), (f.top-f.low)/float64(h)/2)
	rows := int(math.Ceil((f.top - f.low) / (2 * perColumn)))
	cols := int(math.Ceil((f.right - f.left) / perColumn))
	for r := range min(rows, h) {
		line := make([]byte, 0, cols)
		y := f.top - (float64(r)+0.5)*2*perColumn
		for c := range min(cols, w) {
			x := f.left + (float64(c)+0.5)*perColumn
			line = append(line, inkAt(s, x, y, perColumn))
		}
		for len(line) > 0 && line[len(line)-1] == inkAir {
			line = line[:len(line)-1]
		}
		lines = append(lines, string(line))
	}
	return lines, perColumn
}

type area struct{ left, right, low, top float64 }

// frameOf is what the drawing shows: the bead, the burnt zinc and a little of the members beyond.
func frameOf(s *calc.Section) area {
	reach := func(i int) float64 { return max(s.Wet[i], s.Melted[i], s.MeltedBack[i]) + 2 }
	head := max(s.Wet[0], s.Wet[1], 1) * 0.8
	t := s.Thick
	switch s.Joint {
	case "lap":
		return area{-reach(0), reach(1), -t[1], t[0] + head/2}
	case "tee":
		return area{-t[0] - reach(1)/2, reach(1), -t[1], min(reach(0), 8+s.Wet[0])}
	case "corner":
		return area{-reach(0), t[1] + head, -t[0] - min(reach(1), 6+s.Wet[1]), head}
	case "edge":
		head = 0.8 * (t[0] + t[1])
		return area{-s.Gap/2 - t[0] - head/2, s.Gap/2 + t[1] + head/2, -min(max(reach(0), reach(1)), 10), head}
	case "overlay":
		return area{-reach(0), reach(0), -min(t[0], 5), head}
	}
	return area{-s.Gap/2 - reach(0), s.Gap/2 + reach(1), -max(t[0], t[1]), head}
}

// inkAt is the character at a point.
func inkAt(s *calc.Section, x, y, cell float64) byte {
	if i, depth, along, back := memberAt(s, x, y); i >= 0 {
		return surface(s, i, depth, along, back, cell)
	}
	if inBead(s, x, y) {
		return inkBead
	}
	return inkAir
}

type point struct{ x, y float64 }

func (p point) dot(q point) float64 { return p.x*q.x + p.y*q.y }

// side is a member's face as the bead sees it.
type side struct {
	from, along, in point // where the joint begins on it, which way it runs, and the way into the metal
	both            bool  // it runs on beyond the joint
}

// sides are the faces of both members. A joint with one member has that face twice, once for each toe.
func sides(s *calc.Section) [2]side {
	left, right, up, down := point{-1, 0}, point{1, 0}, point{0, 1}, point{0, -1}
	switch s.Joint {
	case "lap":
		return [2]side{{point{0, s.Thick[0]}, left, down, false}, {point{}, right, down, true}}
	case "tee":
		return [2]side{{point{}, up, left, false}, {point{}, right, down, true}}
	case "corner":
		return [2]side{{point{}, left, down, false}, {point{s.Thick[1], -s.Thick[0]}, down, left, false}}
	case "edge":
		return [2]side{{point{-s.Gap/2 - s.Thick[0], 0}, down, right, false},
			{point{s.Gap/2 + s.Thick[1], 0}, down, left, false}}
	case "overlay":
		return [2]side{{point{}, left, down, true}, {point{}, right, down, true}}
	}
	return [2]side{{point{-s.Gap / 2, 0}, left, down, false}, {point{s.Gap / 2, 0}, right, down, false}}
}

// memberAt returns which member a point lies in, -1 for none, how deep under the nearer of its two faces,
// how far from the joint, and whether that face is the one away from the bead.
func memberAt(s *calc.Section, x, y float64) (member int, depth, along float64, back bool) {
	for i, f := range sides(s) {
		at := point{x - f.from.x, y - f.from.y}
		across, along := at.dot(f.in), at.dot(f.along)
		if (f.both || along > 0) && across > 0 && across < s.Thick[i] {
			return i, min(across, s.Thick[i]-across), math.Abs(along), across > s.Thick[i]/2
		}
	}
	return -1, 0, 0, false
}

// surface draws a point of a member: its own ink, or on the outermost row what became of its zinc.
func surface(s *calc.Section, i int, depth, along float64, back bool, cell float64) byte {
	boiled, melted := s.Boiled[i], s.Melted[i]
	if back {
		boiled, melted = s.BoiledBack[i], s.MeltedBack[i]
	}
	if depth <= min(2*cell, s.Thick[i]/2) && (back || along > s.Wet[i]) {
		switch {
		case along < boiled:
			return inkBoiled
		case along < melted:
			return inkMelted
		}
	}
	if i == 1 {
		return inkSecond
	}
	return inkFirst
}

// inBead reports whether a point outside the members lies in the filler: in the corner under the chord from
// toe to toe, or in the circular segment over it.
func inBead(s *calc.Section, x, y float64) bool {
	if s.Wet[0] <= 0 || s.Wet[1] <= 0 {
		return false
	}
	f, w := sides(s), s.Wet
	if s.Joint == "overlay" {
		w[1] = w[0]
	}
	toe := func(i int) point { return point{f[i].from.x + w[i]*f[i].along.x, f[i].from.y + w[i]*f[i].along.y} }
	a, b := toe(0), toe(1) // the ends of the chord
	to, at := point{b.x - a.x, b.y - a.y}, point{x - a.x, y - a.y}
	chord := math.Hypot(to.x, to.y)
	// Height over the chord, on the side away from the members.
	h := (at.y*to.x - at.x*to.y) / chord
	u := at.dot(to)/chord - chord/2
	if u < -chord/2 || u > chord/2 {
		return false
	}
	return h <= arcHeight(s.Phi, chord, u) && (h > 0 || pocket(s, x, y))
}

// arcHeight is the height of the bead's surface over the chord at u from its middle.
func arcHeight(phi, chord, u float64) float64 {
	if math.Abs(phi) < 1e-3 {
		return 0
	}
	r := chord / 2 / math.Sin(math.Abs(phi))
	h := math.Sqrt(max(0, r*r-u*u)) - r*math.Cos(phi)
	if phi < 0 {
		return -h
	}
	return h
}

// pocket is the room between the members that the bead fills under its chord.
func pocket(s *calc.Section, x, y float64) bool {
	switch s.Joint {
	case "lap", "tee":
		return x > 0 && y > 0
	case "corner":
		return x > 0 && x < s.Thick[1] && y < 0 && y > -s.Thick[0]
	}
	return math.Abs(x) < s.Gap/2 && y > -min(s.Thick[0], s.Thick[1])
}
