package calc

import (
	"cmp"
	"slices"

	"brazebooth/tables"
)

// HighStrength reports whether a metal, an id of tables, is a high-strength steel.
func HighStrength(metal string) bool {
	return metal == "dp600" || metal == "dp800" || metal == "dp1000" || metal == "boron-steel"
}

// AluminiumWire reports whether a filler, an id of tables, is an aluminium bronze.
func AluminiumWire(filler string) bool {
	return filler == "cual8" || filler == "cual10fe" || filler == "cual9ni5" || filler == "cumn13al8"
}

// Applies reports whether a rule is for this job; on is the place, use or metal that the rule is for.
func Applies(on string, card *Card) bool {
	if on == card.Used.Use || on == "overlay" && card.Setup.One {
		return true
	}
	for _, m := range card.Setup.Joined() {
		if on == m.Metal.ID || on == string(m.Metal.Family) || on == "zinc" && m.Coating.Zinc ||
			on == "high-strength" && HighStrength(m.Metal.ID) {
			return true
		}
	}
	return false
}

// RuledOut reports whether a rule of the trade, or the metal that melts first, excludes a filler on the metals of a
// card.
func RuledOut(f *tables.Filler, card *Card) bool {
	for _, rule := range tables.FillerRules {
		if rule.Filler == f.ID && rule.Out && Applies(rule.On, card) {
			return true
		}
	}
	first := MeltsFirst(card)
	return first.Family == tables.BrassFam || first.Solidus.V <= f.Liquidus.V && first.Family != tables.Bronze
}

// MeltsFirst is the metal with the lowest solidus.
func MeltsFirst(card *Card) tables.Metal {
	return slices.MinFunc(card.Setup.Joined(), func(a, b Member) int {
		return cmp.Compare(a.Metal.Solidus.V, b.Metal.Solidus.V)
	}).Metal
}

// usualFiller is the trade's first choice for a pair of metals; the reasons are practice rows of tables.
func usualFiller(s *Setup, use string) string {
	if s.One || use == "wear" || use == "bearing" { // an overlay, or a surface that rubs
		return "cual8"
	}
	for _, m := range s.Joined() {
		switch {
		case m.Metal.ID == "aluminized", m.Metal.Family == tables.Stainless, m.Metal.ID == "aluminium-bronze":
			return "cual8"
		case m.Metal.Family == tables.CastIron, HighStrength(m.Metal.ID):
			return "cual10fe"
		case m.Metal.Family == tables.CopperFam:
			return "cusn1"
		}
	}
	return "cusi3"
}

// MinCore is the thinnest member's thickness without coating, mm; maxCore the thickest's.
func MinCore(members []Member) float64 { return slices.MinFunc(members, byCore).Core }
func maxCore(members []Member) float64 { return slices.MaxFunc(members, byCore).Core }

func byCore(a, b Member) int { return cmp.Compare(a.Core, b.Core) }

// CoatDepth is a coating's thickness on one side, mm.
func CoatDepth(c tables.Coating) float64 {
	density := tables.ZincDensity.V
	if !c.Zinc {
		density = tables.AluSiliconDensity.V
	}
	return c.Side.V / density * 1e-3 // g/m2 over g/cm3 is um
}
