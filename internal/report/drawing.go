package report

import (
	"math"
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/joint"
)

// A drawing of the joint in characters, to scale: a column is half as wide as a row is high. Members are / and \, the
// bead is o, a bar or strip behind a butt is =. On the surface of a coated member X marks boiled and z melted zinc.
const (
	inkFirst   = '/'
	inkSecond  = '\\'
	inkBead    = 'o'
	inkBacking = '='
	inkBoiled  = 'X'
	inkMelted  = 'z'
	inkAir     = ' '
)

// drawn is a cross-section and the area that a drawing shows: the bead, the burnt zinc and a little of the members
// beside them.
type drawn struct {
	*calc.Section
	shape joint.Shape
	bead  *joint.Bead
	frame joint.Frame
}

func newDrawn(s *calc.Section) drawn {
	kind, _ := joint.KindOf(s.Joint)
	shape := joint.Shape{Kind: kind, Thick: s.Thick, Gap: s.Gap, Wet: s.Wet, Phi: s.Phi, Backing: s.Backing}
	if kind == joint.Lap || kind == joint.Tee {
		shape.Gap = 0 // these joints are drawn closed
	}
	return drawn{s, shape, shape.Bead(),
		shape.Frame(func(i int) float64 { return max(s.Wet[i], s.Melted[i], s.MeltedBack[i]) + 2 })}
}

// at is the character at a place. The zinc's state is drawn as thick as coat, mm.
func (d *drawn) at(p joint.Point, coat float64) byte {
	if i, depth, along, ok := d.shape.Member(p); ok {
		return d.surface(i, depth, along, coat)
	}
	switch {
	case d.bead.Holds(p):
		return inkBead
	case d.shape.Behind(p):
		return inkBacking
	}
	return inkAir
}

// Drawing returns at most h lines of at most w columns, and how many millimetres a column is wide. It returns no lines
// if the joint is not modelled.
func Drawing(s *calc.Section, w, h int) (lines []string, perColumn float64) {
	if !s.Drawn || w < 20 || h < 4 {
		return nil, 0
	}
	d := newDrawn(s)
	f := d.frame
	perColumn = math.Max((f.Right-f.Left)/float64(w), (f.Top-f.Low)/float64(h)/2)
	rows := int(math.Ceil((f.Top - f.Low) / (2 * perColumn)))
	cols := int(math.Ceil((f.Right - f.Left) / perColumn))
	for r := range min(rows, h) {
		line := make([]byte, min(cols, w))
		for c := range line {
			p := joint.Point{X: f.Left + (float64(c)+0.5)*perColumn, Y: f.Top - (float64(r)+0.5)*2*perColumn}
			line[c] = d.at(p, 2*perColumn)
		}
		lines = append(lines, strings.TrimRight(string(line), string(inkAir)))
	}
	return lines, perColumn
}

// surface is the character at a point of a member: the state of its zinc near its face, otherwise the member's own.
func (d *drawn) surface(i int, depth, along, coat float64) byte {
	boiled, melted, back := d.Boiled[i], d.Melted[i], depth > d.Thick[i]/2
	if back {
		boiled, melted, depth = d.BoiledBack[i], d.MeltedBack[i], d.Thick[i]-depth
	}
	if depth <= min(coat, d.Thick[i]/2) && (back || along > d.Wet[i]) {
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
