package calc

import "brazebooth/tables"

// RuledOut reports whether a rule of the trade, or what melts first, excludes a filler on a card's metals.
func RuledOut(f *tables.Filler, card *Card) bool {
	for _, rule := range tables.FillerRules() {
		if rule.Filler == f.ID && rule.Out && Applies(rule.On, card) {
			return true
		}
	}
	first := MeltsFirst(card)
	return first.Family == tables.BrassFam || first.Solidus.V <= f.Liquidus.V && first.Family != tables.Bronze
}

// MeltsFirst is the metal with the lowest solidus.
func MeltsFirst(card *Card) tables.Metal {
	members := card.Setup.Joined()
	first := members[0].Metal
	for _, m := range members[1:] {
		if m.Metal.Solidus.V < first.Solidus.V {
			first = m.Metal
		}
	}
	return first
}
