package calc

import (
	"brazebooth/calc/formula"
	"brazebooth/tables"
)

// Fill is the metal that a joint takes.
type Fill struct {
	Groove    formula.Groove // of a butt in plate
	Vee       bool           // bevelled
	Section   float64        // mm2
	Low, High float64        // by how well the edges are prepared
}

// FillOf is the metal that a card's joint takes: the groove of a butt in plate, with the job's root opening or the
// usual one; of every other joint what a fillet of the leg that was asked for, or as high as the thinner sheet, needs.
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

// prepared is the section between which a groove comes out: opening, root face and angle each at the ends of how well
// they are held, joined by root-sum-square.
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

// Passes is how many beads of an area, mm2, the joint takes: one where one is asked for no more than it lays.
func (f *Fill) Passes(bead float64) float64 {
	if f.Section <= tables.OnePass.V {
		return 1
	}
	return formula.Beads(f.Section, bead)
}
