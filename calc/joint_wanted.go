package calc

import (
	"math"

	"brazebooth/calc/hang"
	"brazebooth/calc/section"
	"brazebooth/tables"
)

// wanted is the metal that a joint needs.
type wanted struct {
	joint      string
	gap, leg   float64 // mm
	thick      [2]float64
	layer      float64
	most       float64 // what one bead lays well, mm2
	in, inMost float64 // how far metal runs into a gap, mm: where no heat is known, and at most
}

// wantedOf is the leg or throat that was asked for, or a fillet as high as the sheet that ends there, or a filled open
// root.
func wantedOf(card *Card) wanted {
	u, m := &card.Used, &card.Setup.Members
	w := wanted{joint: Lies(card), gap: u.Gap.V, leg: legWanted(card), thick: [2]float64{m[0].Core, m[1].Core},
		layer: min(1, u.Layer.Or(1)), inMost: math.Inf(1)} // a higher layer takes several beads
	w.most = tables.OnePass.V
	if Grooved(card) { // each of its beads is worth a pass
		w.most = tables.GroovePass.V
	}
	if w.joint == "tee" && u.Joint != "lap" {
		w.inMost = m[0].Core
	}
	w.in = min(tables.CreepsIn.V*w.leg, w.inMost)
	return w
}

// legWanted is the leg of a lap's or tee's fillet above its gap, mm. A leg that was asked for is measured from the
// lower member, so that the gap takes a part of it; a throat is not.
func legWanted(card *Card) float64 {
	m := &card.Setup.Members
	if Lies(card) == "tee" {
		return legAsked(card, min(m[0].Core, m[1].Core))
	}
	return legAsked(card, m[0].Core)
}

// legAsked is the leg by the leg or throat that was asked for, else the usual one, mm.
func legAsked(card *Card, usual float64) float64 {
	switch u := &card.Used; {
	case u.Leg.Set:
		return max(0, u.Leg.V-u.Gap.V)
	case u.Throat.Set:
		return u.Throat.V * math.Sqrt2
	}
	return usual
}

// area is the section of metal that the joint needs, mm2, where metal runs in millimetres into the gap.
func (w *wanted) area(in float64) float64 {
	t := min(w.thick[0], w.thick[1])
	switch w.joint {
	case "lap", "tee":
		return hang.NeedFillet(w.gap, w.leg, in)
	case "corner":
		return hang.NeedCorner(w.gap, w.thick[0], w.thick[1])
	case "butt":
		return max(w.gap*t, t*t/4)
	case "edge": // a flat cap over both edges
		c := w.thick[0] + w.thick[1] + w.gap
		return c * c / 8
	}
	return w.layer * 2 * w.layer
}

// bead is the section that one bead must lay, mm2: all that the joint needs, or as much as one pass lays well.
func (w *wanted) bead(in float64) float64 { return min(w.area(in), w.most) }

// creep is how far metal runs into the gap, mm, where the bead wets that wide.
func (w *wanted) creep(wet [2]float64) float64 {
	return min(tables.CreepsIn.V*min(wet[0], wet[1]), w.inMost)
}

// toes is the geometry of the joint's bead, from its area, mm2, and its wetted widths, mm.
func (w *wanted) toes(area, w1, w2 float64) (section.Toes, error) {
	t1, t2 := w.thick[0], w.thick[1]
	in := w.creep([2]float64{w1, w2})
	switch w.joint {
	case "lap":
		return section.Lap(area, w1, w2, t1, w.gap, in)
	case "tee":
		return section.Tee(area, w1, w2, w.gap, in)
	case "corner":
		return section.Corner(area, w1, w2, t1, t2, w.gap)
	case "edge":
		return section.Edge(area, w1, w2, t1, t2, w.gap)
	case "overlay":
		return section.Overlay(area, w1)
	}
	return section.Butt(area, w1, w2, w.gap, min(t1, t2))
}

// openFillet reports a lap or tee with a gap, whose need depends on how wide the metal wets.
func (w *wanted) openFillet() bool { return w.gap > 0 && (w.joint == "lap" || w.joint == "tee") }

// at is the bead that the joint needs at a state, mm2; the usual one where s is nil.
func (w *wanted) at(s *heatState) float64 {
	if s == nil {
		return w.bead(w.in)
	}
	return w.bead(w.creep(s.wet))
}
