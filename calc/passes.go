package calc

import (
	"fmt"
	"math"

	"brazebooth/tables"
)

// OneBead stands in the place of a formula where a joint is asked for no more than one bead lays well.
const OneBead = "one bead lays that much well"

// passes is how many beads like this one the joint takes, where that is more than one at the smaller end of the bead's
// interval: a bevelled butt in plate its groove, other joints the metal that they need.
func (b *board) passes(card *Card, s *spread) (Figure, bool) {
	if b.chain.plug || b.chain.timed {
		return Figure{}, false
	}
	bead, low, high := s.value[oBead], s.low[oBead], s.high[oBead]
	fill := FillOf(card)
	if !fill.Vee && fill.Section <= tables.OnePass.V {
		return Figure{}, false
	}
	formula := "max(1, {A}/{a}), rounded up"
	if fill.Section <= tables.OnePass.V {
		formula = OneBead
	}
	n, few, many := fill.Passes(bead), Fill{Section: fill.Low}, Fill{Section: fill.High}
	return NewFigure("passes", "1", n, min(n, few.Passes(high)), max(n, many.Passes(low)),
		OwnBasis(formula, "mass balance; one bead where it is asked for no more than about 11 mm², "+
			"which it lays well: "+tables.OnePass.Source, Derived("A", "section of the joint", fill.Section, "mm2"),
			Derived("a", "one bead", bead, "mm2"))), true
}

// Grooved reports whether a joint is bevelled before it is filled: a butt in plate.
func Grooved(card *Card) bool {
	return card.Used.Joint == "butt" && MinCore(card.Setup.Joined()) > tables.SheetThickest.V
}

// Lies is the joint by which a card's bead lies. Under an upper sheet of plate that is clearly higher than one bead
// reaches a lap's bead lies in the corner, as a tee's does: the sheet's edge stands over the lower member and ends
// above.
func Lies(card *Card) string {
	if t := card.Setup.Members[0].Core; card.Used.Joint == "lap" && t > tables.SheetThickest.V &&
		t > cornerFrom*lapReach(card) {
		return "tee"
	}
	return card.Used.Joint
}

// cornerFrom is how much higher than a bead's leg the edge over it is where the bead is clear of it, so that the arc
// can only point into the corner. A three-dimensional reference wets 5 and 6 mm of edge to the top, as a tee whose
// standing member ends there does; between that and a lap, whose arc stands over the edge, the lower width jumps by a
// third.
const cornerFrom = 1.5

// lapReach is how high an edge one bead of a lap covers, mm.
func lapReach(card *Card) float64 {
	return min(legAsked(card, card.Setup.Members[0].Core), math.Sqrt(2*tables.OnePass.V)) + 1e-9
}

// buried says why the bead of a thick lap or corner is not judged, "" where it is: it lies under an edge that is hardly
// higher, or deep between two, whose heat flow nothing here computes.
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
		return "the two edges together are wider than one bead covers; try a lap or a tee"
	}
	if card.Used.Joint == "corner" && m[0].Core*m[1].Core/2 > tables.OnePass.V {
		return "one bead lies deep between edges this thick and reaches no outer face; try a tee or a lap of thinner " +
			"metal, or a test bead"
	}
	return ""
}
