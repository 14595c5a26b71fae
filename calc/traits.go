package calc

func HighStrength(metal string) bool {
	return metal == "dp600" || metal == "dp800" || metal == "dp1000" || metal == "boron-steel"
}

func AluminiumWire(filler string) bool {
	return filler == "cual8" || filler == "cual10fe" || filler == "cual9ni5" || filler == "cumn13al8"
}

// Applies reports whether a rule's place is this job.
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
