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
	return max(s.Least, fit(s.closeUp()), min(fit(s.whole()), thin/2))
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
	f, all := s.closeUp(), s.whole()
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

// Joint is a joint's cross-section and the state of its zinc, in mm from the joint outward on each member; 0 without
// zinc.
type Joint struct {
	joint.Shape
	Melted     [2]float64 // on the face with the bead
	Boiled     [2]float64
	MeltedBack [2]float64 // on the other face
	BoiledBack [2]float64
	Least      float64 // the least width of a column in mm: the larger one of two drawings beside each other
}

// whole is the area with the bead, the burnt zinc and a little of the members beside it.
func (s *Joint) whole() joint.Frame {
	return s.Frame(func(i int) float64 { return max(s.Wet[i], s.Melted[i], s.MeltedBack[i]) + 2 })
}

// closeUp is the area with the bead.
func (s *Joint) closeUp() joint.Frame { return s.Frame(func(i int) float64 { return s.Wet[i] + 0.8 }) }

// at is the part at a place. dot is the size of a dot in mm.
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

// surface is a member, or the state of its zinc on its outermost dot.
func (s *Joint) surface(i int, depth, along, dot float64) part {
	boiled, melted, back := s.Boiled[i], s.Melted[i], depth > s.Thick[i]/2
	if back {
		boiled, melted, depth = s.BoiledBack[i], s.MeltedBack[i], s.Thick[i]-depth
	}
	thin := s.Thick[i] < 2.5*dot && s.MeltedBack[i] > 0 // zinc on both faces would hide the metal between them
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
