package canvas

import (
	"math"

	"brazebooth/internal/joint"
)

// Scale is how many millimetres one column of the drawing is wide; 0 if there is no drawing. A line is twice as high.
func (s *Joint) Scale(w, h int) float64 {
	if w < 12 || h < 3 {
		return 0
	}
	fit := func(f joint.Frame) float64 { return max((f.Right-f.Left)/float64(w), (f.Top-f.Low)/float64(h)/2) }
	thin := s.Thick[0]
	if s.Kind != joint.Overlay {
		thin = min(thin, s.Thick[1])
	}
	// Large enough for the thinner member to be two dots thick, as long as the whole bead is visible.
	return max(s.Least, fit(s.closeUp()), min(fit(s.Whole()), thin/2))
}

// Draw draws the joint to scale, in the middle, with its lower edge on the last line.
func (s Joint) Draw(th *Theme, w, h int) Block {
	scale := s.Scale(w, h)
	if scale == 0 {
		return nil
	}
	shown := s
	for i := range shown.Thick { // a foil is drawn one dot thick, otherwise it could not be seen
		shown.Thick[i] = max(shown.Thick[i], scale)
	}
	shown.steady(scale)
	f := shown.shownIn(float64(w)*scale, float64(h)*2*scale)
	for i := range shown.Thick { // zinc on both faces of a thin member would hide the metal between them
		if shown.Thick[i] < 2.5*scale && shown.MeltedBack[i] > 0 {
			shown.Melted[i], shown.Boiled[i] = 0, 0
		}
	}
	// The first member ends between two columns, and the joint lies between two dots: half a dot would be a large part
	// of a thin sheet or of a gap, and a column with two different halves costs bytes.
	end := 0.0
	if s.Kind == joint.Butt || s.Kind == joint.Edge {
		end = -s.Gap / 2
	}
	left := end - math.Ceil((end-f.Left)/scale-1e-9)*scale
	columns := min(w, int(math.Ceil((f.Right-left)/scale-1e-9)))
	lines := min(h, int(math.Ceil((f.Top-f.Low)/(2*scale)-1e-9)))
	top := float64(2*lines)*scale - math.Ceil(-f.Low/scale-1e-9)*scale
	c, bead := NewCells(w, h), shown.Bead()
	c.picture(th, (w-columns)/2, h-lines, columns, lines, func(column, line float64) part {
		return shown.at(bead, joint.Point{X: left + column*scale, Y: top - line*2*scale}, scale)
	})
	return c.Lines(th)
}

// jointParts are the parts as they are drawn.
var jointParts = [joint.Parts]part{joint.Air: partAir, joint.First: partFirst, joint.Second: partSecond,
	joint.Filler: partBead, joint.Backing: partBacking, joint.Boiled: partBoiled, joint.Melted: partMelted}

// steady rounds the widths along the members to columns, and the bead's angle to tenths of a radian, about a dot of its
// height. Otherwise a tenth of a millimetre would change the picture, and it would be sent again with nearly every key.
func (s *Joint) steady(scale float64) {
	s.Phi = math.Round(s.Phi*10) / 10
	for i := range s.Wet {
		for _, v := range [...]*float64{&s.Wet[i], &s.Melted[i], &s.Boiled[i], &s.MeltedBack[i], &s.BoiledBack[i]} {
			if *v > 0 {
				*v = max(1, math.Round(*v/scale)) * scale
			}
		}
	}
}

// shownIn is the area that a picture of this size, in mm, shows: the close-up, and as much around it as there is room
// for.
func (s *Joint) shownIn(wide, high float64) joint.Frame {
	f, all := s.closeUp(), s.Whole()
	f.Left, f.Right = widen(f.Left, f.Right, all.Left, all.Right, wide)
	f.Low, f.Top = widen(f.Low, f.Top, all.Low, all.Top, high)
	return f
}

// widen moves two ends apart evenly, toward their outer limits, until there is this much room between them.
func widen(low, high, lowest, highest, room float64) (float64, float64) {
	spare := max(0, room-(high-low))
	down := min(low-lowest, spare/2)
	up := min(highest-high, spare-down)
	down = min(low-lowest, spare-up)
	return low - max(0, down), high + max(0, up)
}

// Joint is a joint's cross-section.
type Joint struct {
	joint.Section
	Least float64 // the least width of a column in mm: the larger one of two drawings beside each other
}

// closeUp is the area with the bead.
func (s *Joint) closeUp() joint.Frame { return s.Frame(func(i int) float64 { return s.Wet[i] + 0.8 }) }

// at is the part at a place. dot is the size of a dot in mm.
func (s *Joint) at(bead *joint.Bead, p joint.Point, dot float64) part {
	at := s.At(bead, p, dot)
	if at == joint.Air && s.Film(p, dot) {
		at = joint.Filler
	}
	return jointParts[at]
}
