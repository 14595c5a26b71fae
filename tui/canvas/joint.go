package canvas

import (
	"math"

	"brazebooth/internal/joint"
)

// Scale is how many millimetres a column of the drawing stands for in a width and some lines; 0 where there is none.
// A line stands for twice as much.
func (s *Joint) Scale(w, h int) float64 {
	if w < 12 || h < 3 || !s.sane() {
		return 0
	}
	fit := func(f joint.Frame) float64 { return max((f.Right-f.Left)/float64(w), (f.Top-f.Low)/float64(h)/2) }
	thin := s.Thick[0]
	if s.Kind != joint.Overlay {
		thin = min(thin, s.Thick[1])
	}
	// Close enough for the thinner member to be two dots, as long as the bead is seen whole.
	return max(s.Least, fit(s.closeUp()), min(fit(s.whole()), thin/2))
}

// Draw sets the joint to scale into a width and some lines, standing on the last one, in the middle.
func (s Joint) Draw(th *Theme, w, h int) Block {
	scale := s.Scale(w, h)
	if scale == 0 {
		return nil
	}
	shown := s
	for i := range shown.Thick { // a foil is a dot thick, or it would not be seen
		shown.Thick[i] = max(shown.Thick[i], scale)
	}
	shown.steady(scale)
	f := shown.shownIn(float64(w)*scale, float64(h)*2*scale)
	// The first member ends on an edge between columns, the joint lies on one between dots: half a dot would be much of
	// a thin sheet and of a gap, and a half of a column that differs from the other costs bytes.
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

// steady rounds the widths along the members to columns and the bead's angle to tenths of a radian, about a dot of its
// height: a picture that a tenth of a millimetre changes would be sent anew with nearly every key.
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

// shownIn is what a picture of so many mm shows: the close-up, and of what lies around it as much as there is room for.
func (s *Joint) shownIn(wide, high float64) joint.Frame {
	f, all := s.closeUp(), s.whole()
	f.Left, f.Right = widen(f.Left, f.Right, all.Left, all.Right, wide)
	f.Low, f.Top = widen(f.Low, f.Top, all.Low, all.Top, high)
	return f
}

// widen moves two ends out to others, evenly, until they are so far apart.
func widen(low, high, lowest, highest, room float64) (float64, float64) {
	spare := max(0, room-(high-low))
	down := min(low-lowest, spare/2)
	up := min(highest-high, spare-down)
	down = min(low-lowest, spare-up)
	return low - max(0, down), high + max(0, up)
}

// Joint is a joint's cross-section with what became of its zinc, mm from the joint outward on each member; 0 without
// zinc.
type Joint struct {
	joint.Shape
	Melted     [2]float64 // on the bead's face
	Boiled     [2]float64
	MeltedBack [2]float64 // on the other face
	BoiledBack [2]float64
	Least      float64 // what a column stands for at least: the greater scale of two drawings beside each other
}

func (s *Joint) sane() bool {
	sum := s.Gap + s.Phi + s.Backing
	for i := range 2 {
		sum += s.Thick[i] + s.Wet[i] + s.Melted[i] + s.MeltedBack[i]
	}
	members := s.Thick[0] > 0 && (s.Kind == joint.Overlay || s.Thick[1] > 0)
	return s.Kind < joint.Kinds && members && s.Gap >= 0 && !math.IsNaN(sum) && !math.IsInf(sum, 0)
}

// whole is a frame that holds the bead, the burnt zinc and a little of the members beyond.
func (s *Joint) whole() joint.Frame {
	return s.Frame(func(i int) float64 { return max(s.Wet[i], s.Melted[i], s.MeltedBack[i]) + 2 })
}

// closeUp is a frame that holds the bead.
func (s *Joint) closeUp() joint.Frame { return s.Frame(func(i int) float64 { return s.Wet[i] + 0.8 }) }

// at is what stands at a place; a dot is so many mm wide and high.
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

// surface is a member, or on its outermost dot what became of its zinc.
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
