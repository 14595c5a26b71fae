package calc

import (
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

// buried says why the bead of a thick lap or corner is not judged, "" where it is: over an edge higher than one bead
// reaches it lies in the corner below, whose heat flow nothing here computes.
func buried(card *Card) string {
	m := card.Setup.Members
	if MinCore(card.Setup.Joined()) <= tables.SheetThickest.V {
		return ""
	}
	if c := m[0].Core + m[1].Core; card.Used.Joint == "edge" && c*c/8 > tables.OnePass.V {
		return "the two edges together are wider than one bead covers; try a lap or a tee"
	}
	switch leg := min(legWanted(card), math.Sqrt(2*tables.OnePass.V)); card.Used.Joint {
	case "lap":
		if m[0].Core > leg+1e-9 {
			return "the upper sheet is higher than one bead, which then lies in the corner below its edge; try a tee, or " +
				"chamfer that edge down to a bead's height"
		}
	case "corner":
		if m[0].Core*m[1].Core/2 > tables.OnePass.V {
			return "one bead lies deep between edges this thick and reaches no outer face; try a tee or a lap of thinner " +
				"metal, or a test bead"
		}
	}
	return ""
}
