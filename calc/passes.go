package calc

import (
	"math"

	"brazebooth/calc/formula"
	"brazebooth/tables"
)

// passes is how many beads like this one the joint takes, where that is more than one at the smaller end of the bead's
// interval: a bevelled butt in plate its groove, other joints the metal that they need.
func (b *board) passes(card *Card, s *spread) (Figure, bool) {
	if b.chain.plug || b.chain.timed {
		return Figure{}, false
	}
	bead, low, high := s.value[oBead], s.low[oBead], s.high[oBead]
	one := Derived("A", "one bead", bead, "mm2")
	if t := MinCore(card.Setup.Joined()); grooved(card) {
		a := tables.Bevel
		n := formula.GroovePasses(t, a.V, bead)
		return NewFigure("passes", "1", n, min(n, formula.GroovePasses(t, a.Low, high)),
			max(n, formula.GroovePasses(t, a.High, low)),
			RowBasis("max(1, {t}²·tan({a}/2)/{A}), rounded up", a.Origin, In("t", "thinner member", t, "mm"),
				Assumed("a", "groove's angle", a.V, "deg"), one)), true
	}
	need := wantedOf(card)
	whole := need.area(need.in)
	if whole <= tables.OnePass.V {
		return Figure{}, false
	}
	beads := func(a float64) float64 { return math.Ceil(whole/a - 1e-9) }
	return NewFigure("passes", "1", beads(bead), beads(high), beads(low), OwnBasis("{W}/{A}, rounded up",
		"mass balance; one bead lays about 11 mm² with a clean shape: "+tables.OnePass.Source,
		In("W", "metal that the joint needs", whole, "mm2"), one)), true
}

// grooved reports whether a joint is bevelled before it is filled: a butt in plate.
func grooved(card *Card) bool {
	return card.Used.Joint == "butt" && MinCore(card.Setup.Joined()) > tables.SheetThickest.V
}

// buried says why the bead of a thick lap or corner is not judged, "" where it is: over an edge higher than one bead
// reaches it lies in the corner below, whose heat flow nothing here computes.
func buried(card *Card) string {
	m := card.Setup.Members
	if MinCore(card.Setup.Joined()) <= tables.SheetThickest.V {
		return ""
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
