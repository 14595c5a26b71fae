package report

import (
	"math"
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/joint"
)

// A drawing of the joint in characters, to scale: a column is half as wide as a row is high. Members are
// / and \, the bead is o, a bar or strip behind a butt =; on a coated member's surface X marks boiled and z melted zinc.
const (
	inkFirst   = '/'
	inkSecond  = '\\'
	inkBead    = 'o'
	inkBacking = '='
	inkBoiled  = 'X'
	inkMelted  = 'z'
	inkAir     = ' '
)

// Drawing returns lines of at most w columns, at most h of them, and the millimetres that a column stands
// for; nothing where the joint is not modelled.
func Drawing(s *calc.Section, w, h int) (lines []string, perColumn float64) {
	if !s.Drawn || w < 20 || h < 4 {
		return nil, 0
	}
	kind, _ := joint.KindOf(s.Joint)
	shape := joint.Shape{Kind: kind, Thick: s.Thick, Gap: s.Gap, Wet: s.Wet, Phi: s.Phi, Backing: s.Backing}
	if kind == joint.Lap || kind == joint.Tee {
		shape.Gap = 0 // these are drawn closed
	}
	// The bead, the burnt zinc and a little of the members beyond.
	f := shape.Frame(func(i int) float64 { return max(s.Wet[i], s.Melted[i], s.MeltedBack[i]) + 2 })
	perColumn = math.Max((f.Right-f.Left)/float64(w), (f.Top-f.Low)/float64(h)/2)
	rows := int(math.Ceil((f.Top - f.Low) / (2 * perColumn)))
	cols := int(math.Ceil((f.Right - f.Left) / perColumn))
	bead := shape.Bead()
	for r := range min(rows, h) {
		line := make([]byte, min(cols, w))
		for c := range line {
			p := joint.Point{X: f.Left + (float64(c)+0.5)*perColumn, Y: f.Top - (float64(r)+0.5)*2*perColumn}
			line[c] = inkAir
			if i, depth, along, ok := shape.Member(p); ok {
				line[c] = surface(s, i, depth, along, perColumn)
			} else if bead.Holds(p) {
				line[c] = inkBead
			} else if shape.Behind(p) {
				line[c] = inkBacking
			}
		}
		lines = append(lines, strings.TrimRight(string(line), string(inkAir)))
	}
	return lines, perColumn
}

// surface draws a point of a member: its own ink, or on the outermost row what became of its zinc.
func surface(s *calc.Section, i int, depth, along, cell float64) byte {
	boiled, melted, back := s.Boiled[i], s.Melted[i], depth > s.Thick[i]/2
	if back {
		boiled, melted, depth = s.BoiledBack[i], s.MeltedBack[i], s.Thick[i]-depth
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
