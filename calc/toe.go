package calc

import (
	"math"

	"brazebooth/calc/section"
	"brazebooth/tables"
)

// beadSection is the geometry of the joint's bead.
func beadSection(card *Card) func(area, w1, w2 float64) (section.Toes, error) {
	t1, t2 := card.Setup.Members[0].Core, card.Setup.Members[1].Core
	gap := card.Used.Gap.V
	switch card.Used.Joint {
	case "lap":
		return func(a, w1, w2 float64) (section.Toes, error) { return section.Lap(a, w1, w2, t1) }
	case "tee":
		return section.Tee
	case "corner":
		return func(a, w1, w2 float64) (section.Toes, error) { return section.Corner(a, w1, w2, t1, t2) }
	case "overlay":
		return func(a, w1, _ float64) (section.Toes, error) { return section.Overlay(a, w1) }
	}
	return func(a, w1, w2 float64) (section.Toes, error) { return section.Butt(a, w1, w2, gap, min(t1, t2)) }
}

// coldAngle is the toe angle above which the joint's bead counts as a cold lap, rad.
func coldAngle(joint string) float64 {
	switch joint {
	case "lap", "tee", "corner":
		return tables.ColdAngleFillet.V * math.Pi / 180
	}
	return tables.ColdAngleButt.V * math.Pi / 180
}
