package advice

import "brazebooth/calc"

// failing says why the card's setting makes no sound joint; "" if nothing computed says so.
func failing(card *calc.Card) string {
	switch card.Zone {
	case "cold", "hot", "burn-through":
		return "At this setting the bead is computed as " + card.Zone
	}
	for i := range card.Edges {
		if e := &card.Edges[i]; !e.Met && (e.Name == "joint filled" || e.Name == "gap bridged" ||
			e.Name == "metal stays up") {
			return "At this setting “" + e.Name + "” is not met"
		}
	}
	return ""
}

// asIfSound warns that the page's figures mean little because the setting makes no sound joint.
func (p *Page) asIfSound(card *calc.Card) {
	if why := failing(card); why != "" {
		p.Warn("unsound-setting", ownSection.Source, "%s: the figures are those of its heat and metal alone, not of a "+
			"seam that holds. Change the setting first; the window computes which opens a good zone.", why)
	}
}

// repairTime adds the time, h, to repair the coat beside the seam. Bronze needs this as steel does, as soon as
// zinc boils off. It returns false if no zinc boils off or no time was given.
func (p *Page) repairTime(card *calc.Card, length float64) (calc.Figure, bool) {
	z := card.Used.ZincRepair
	if !z.Set {
		return calc.Figure{}, false
	}
	if !boilsZinc(card) {
		p.Because(Own("the card's coatings"), "no zinc boils off here: the time of zinc repair is charged to neither "+
			"bronze nor steel")
		return calc.Figure{}, false
	}
	p.Because(ownJob, "the zinc beside the seam is repaired after bronze as after steel: the bronze's heat takes "+
		"it too")
	h := z.V / 60 * length / 1000
	return p.add("zinc_repair_time", "h", h, h, h, calc.OwnBasis("{z}/60·{L}/1000", "the user's time",
		calc.In("z", "zinc repair", z.V, "min/m"), calc.In("L", "seam in all", length, "mm"))), true
}

// boilsZinc reports whether a zinc coat boils off beside the bead. It is true if that is not computed for a coat.
func boilsZinc(card *calc.Card) bool {
	for i, m := range card.Setup.Joined() {
		band, ok := card.Figure("zinc_boiled_halfwidth" + members[i])
		if m.Coating.Zinc && (!ok || band.High > 0) {
			return true
		}
	}
	return false
}
