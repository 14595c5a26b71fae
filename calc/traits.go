package calc

// HighStrength reports whether a metal, an id of tables, is a high-strength steel.
func HighStrength(metal string) bool {
	return metal == "dp600" || metal == "dp800" || metal == "dp1000" || metal == "boron-steel"
}

// AluminiumWire reports whether a filler, an id of tables, is an aluminium bronze.
func AluminiumWire(filler string) bool {
	return filler == "cual8" || filler == "cual10fe" || filler == "cual9ni5" || filler == "cumn13al8"
}

// Applies reports whether the place, use or metal that a rule is for is this job's.
func Applies(on string, card *Card) bool {
	if on == card.Used.Use || on == "overlay" && card.Setup.One {
		return true
	}
	for _, m := range card.Setup.Joined() {
		if on == m.Metal.ID || on == string(m.Metal.Family) || on == "zinc" && m.Coating.Zinc || on == "high-strength" && HighStrength(m.Metal.ID) {
			return true
		}
	}
	return false
}
