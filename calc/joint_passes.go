package calc

import (
	"fmt"
	"math"

	"brazebooth/calc/formula"
	"brazebooth/tables"
)

// passes is how many beads like this one the joint takes, where that may be more than one: for a bevelled butt in plate
// its groove, for other joints the metal that they need.
func (b *board) passes(card *Card, s *spread) (Figure, bool) {
	fill := FillOf(card)
	if b.chain.plug || b.chain.timed || !fill.Vee && fill.Section <= tables.OnePass.V {
		return Figure{}, false
	}
	return fill.Passes(s.value[oBead], s.low[oBead], s.high[oBead]), true
}

// Passes is how many beads of an area with its interval, mm2, the joint takes.
func (f *Fill) Passes(bead, low, high float64) Figure {
	formula := "max(1, {A}/{a}), rounded up"
	if f.Section <= tables.OnePass.V {
		formula = "one bead lays that much well"
	}
	n := passes(f.Section, bead)
	return NewFigure("passes", "1", n, min(n, passes(f.Low, high)), max(n, passes(f.High, low)),
		OwnBasis(formula, "mass balance; one bead where it is asked for no more than about 11 mm², "+
			"which it lays well: "+tables.OnePass.Source, Derived("A", "section of the joint", f.Section, "mm2"),
			Derived("a", "one bead", bead, "mm2")))
}

// passes is how many beads of an area, mm2, a section takes: one where it needs no more than one bead lays well.
func passes(section, bead float64) float64 {
	if section <= tables.OnePass.V {
		return 1
	}
	return formula.Beads(section, bead)
}

// Grooved reports whether a joint is bevelled before it is filled: a butt in plate.
func Grooved(card *Card) bool {
	return card.Used.Joint == "butt" && MinCore(card.Setup.Joined()) > tables.SheetThickest.V
}

// Lies is the joint that a card's bead is computed as. Under an upper sheet of plate that is clearly higher than one
// bead, a lap's bead lies in the corner like a tee's: the sheet's edge stands above the lower member.
func Lies(card *Card) string {
	if t := card.Setup.Members[0].Core; card.Used.Joint == "lap" && t > tables.SheetThickest.V &&
		t > cornerFrom*lapReach(card) {
		return "tee"
	}
	return card.Used.Joint
}

// cornerFrom is how many times higher than a bead's leg the edge above it must be, so that the arc can only point into
// the corner. A three-dimensional reference wets edges of 5 and 6 mm to the top, as a tee whose standing member ends
// there does; between that and a lap, whose arc points at the edge, the lower width jumps by a third.
const cornerFrom = 1.5

// lapReach is how high an edge one bead of a lap covers, mm.
func lapReach(card *Card) float64 {
	return min(legAsked(card, card.Setup.Members[0].Core), math.Sqrt(2*tables.OnePass.V)) + 1e-9
}

// buried says why the bead of a thick lap, edge or corner is not judged, "" where it is: it lies under an edge that is
// hardly higher, or deep between two edges, whose heat flow nothing here computes.
func buried(card *Card) string {
	m := card.Setup.Members
	if t := m[0].Core; card.Used.Joint == "lap" && t > tables.SheetThickest.V && t > lapReach(card) &&
		Lies(card) == "lap" {
		return fmt.Sprintf("the upper sheet is hardly higher than one bead: with the arc over its edge or in the "+
			"corner under it widths differ by a third, and nothing here says which it is; try an upper sheet of up to "+
			"%.1f mm or over %.1f mm, or chamfer that edge down to a bead's height", lapReach(card),
			cornerFrom*lapReach(card))
	}
	if MinCore(card.Setup.Joined()) <= tables.SheetThickest.V {
		return ""
	}
	if c := m[0].Core + m[1].Core; card.Used.Joint == "edge" && c*c/8 > tables.OnePass.V {
		return orTry(card, "the two edges together are wider than one bead covers", joined("lap"), joined("tee"))
	}
	if card.Used.Joint == "corner" && m[0].Core*m[1].Core/2 > tables.OnePass.V {
		return orTry(card, "one bead lies deep between edges this thick and reaches no outer face", joined("tee"),
			joined("lap"))
	}
	return ""
}

// Fill is the metal that a joint takes.
type Fill struct {
	Groove    formula.Groove // of a butt in plate
	Vee       bool           // bevelled
	Section   float64        // mm2
	Low, High float64        // by how well the edges are prepared
}

// FillOf is the metal that a card's joint takes. For a butt in plate it is the groove, with the job's root opening or
// the usual one; for other joints the fillet of the leg that was asked for, or one as high as the thinner sheet.
func FillOf(card *Card) Fill {
	t := MinCore(card.Setup.Joined())
	if card.Used.Joint != "butt" || t < tables.GrooveLeast.V {
		need := wantedOf(card)
		a := need.area(need.in)
		return Fill{Section: a, Low: a, High: a}
	}
	g := formula.Groove{Depth: t, Opening: tables.SquareOpening.V * t, Face: t}
	f := Fill{Vee: t > tables.SheetThickest.V}
	if f.Vee {
		g.Opening, g.Face, g.Angle = tables.VeeOpening.V, tables.VeeFace.V, tables.Bevel.V
	}
	if card.Job.Gap.Set {
		g.Opening = card.Job.Gap.V
	}
	f.Groove, f.Section = g, g.Area()
	f.Low, f.High = prepared(g, f.Vee)
	return f
}

// prepared is the interval of a groove's section: opening, root face and angle each at the ends of how exactly they are
// prepared, joined by root-sum-square.
func prepared(g formula.Groove, vee bool) (low, high float64) {
	mid := g.Area()
	edge, angle := tables.GrooveEdgeHeld.V, tables.GrooveAngleHeld.V
	var moved Sides
	for _, off := range [2]float64{-1, 1} {
		changed := []formula.Groove{g, g, g}
		changed[0].Opening = max(0, g.Opening+off*edge)
		if vee {
			changed[1].Face = max(0, g.Face+off*edge)
			changed[2].Angle += off * angle
		}
		for _, c := range changed {
			moved.Add(c.Area() - mid)
		}
	}
	return mid - moved.Down, mid + moved.Up
}
