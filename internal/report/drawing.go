package report

import (
	"math"
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/joint"
)

// inks draw the parts of a joint in characters. On the surface of a coated member X marks boiled and z melted zinc.
const inks = ` /\o=Xz`

// drawn is a cross-section and the area that a drawing shows.
type drawn struct {
	joint.Section
	bead  *joint.Bead
	frame joint.Frame
}

func newDrawn(s *calc.Section) drawn {
	d := drawn{Section: SectionOf(s)}
	if d.Kind == joint.Lap || d.Kind == joint.Tee {
		d.Gap = 0 // these joints are drawn closed
	}
	d.bead, d.frame = d.Bead(), d.Whole()
	return d
}

// SectionOf is a joint as it is drawn.
func SectionOf(s *calc.Section) joint.Section {
	kind, _ := joint.KindOf(s.Joint)
	return joint.Section{
		Shape:  joint.Shape{Kind: kind, Thick: s.Thick, Gap: s.Gap, Wet: s.Wet, Phi: s.Phi, Backing: s.Backing},
		Melted: s.Melted, Boiled: s.Boiled, MeltedBack: s.MeltedBack, BoiledBack: s.BoiledBack}
}

// Drawing is a joint to scale in at most h lines of at most w columns, each half as wide as a line is high, and how many
// millimetres a column is wide. It returns no lines if the joint is not modelled.
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
			line[c] = inks[d.At(d.bead, p, 2*perColumn)]
		}
		lines = append(lines, strings.TrimRight(string(line), " "))
	}
	return lines, perColumn
}
