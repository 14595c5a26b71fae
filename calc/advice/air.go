package advice

import (
	"fmt"
	"strings"

	"brazebooth/calc"
	"brazebooth/tables"
)

const airSource = "coating's mass times the computed bands on every heated face, both with their bands; not " +
	"validated on zinc"

// Air computes what goes into the air: the wire's fume and its metals, the zinc of a coating, the chromium of
// stainless sheet. It compares them with their exposure limits and says which hood, at which distance and
// suction, keeps them away from the welder.
func Air(card *calc.Card) (Page, error) {
	p := Page{Name: "air", Card: *card}
	f := plume{p: &p, operating: p.operating(card)}
	f.wire(card)
	travel, ok := card.Figure("travel")
	switch z, basis, found := zincPerLength(card); {
	case !calc.Applies("zinc", card):
		p.Because(Own("the card's coatings"), "no zinc on either member: nothing is computed for its fume")
	case found && ok:
		f.zinc(z, basis, travel)
	default:
		p.Because(Own(airSource), "it carries zinc, but its bands are not computed for this joint, so the amount of "+
			"fume is not known: use extraction and a respirator all the same")
	}
	f.compareLimits(card)
	p.shade(card)
	p.airWords()
	return p, nil
}

// zincPerLength is the zinc driven off each metre of seam, g/m: from the bands where it boils and from the
// strip beside them that stays hot long enough to give off much vapour. Zinc that only melts, further out,
// stays on the sheet. A sheet that continues past the joint is heated on both sides of it. found is false where
// the bands are not computed.
func zincPerLength(card *calc.Card) (z ends, basis calc.Basis, found bool) {
	var sum []string
	for i, m := range card.Setup.Joined() {
		if !m.Coating.Zinc {
			continue
		}
		arms := calc.Paths(card.Used.Joint)[i]
		boiled, ok1 := card.Figure("zinc_boiled_halfwidth" + members[i])
		melted, ok2 := card.Figure("zinc_melted_halfwidth" + members[i])
		if !ok1 || !ok2 {
			return ends{}, basis, false
		}
		found = true
		faces := 2 * arms * 1e-3 // g/m for each mm of half-width and g/m2
		side, edge := m.Coating.Side, tables.ZincEdge
		width := func(boiled, melted, edge float64) float64 { return boiled + edge*max(0, melted-boiled) }
		z.low += faces * width(boiled.Low, melted.Low, edge.Low) * side.Low
		z.mid += faces * width(boiled.Value, melted.Value, edge.V) * side.V
		z.high += faces * width(boiled.High, melted.High, edge.High) * side.High
		sum = append(sum, fmt.Sprintf("2·{n%[1]d}·({b%[1]d} + {e}·max(0, {m%[1]d} − {b%[1]d}))·{c%[1]d}/1000", i+1))
		for _, in := range [...]calc.Input{calc.In("n", "sides of the joint that it is heated on", arms, "1"),
			calc.Derived("b", "zinc boiled half-width", boiled.Value, "mm"),
			calc.Derived("m", "zinc melted half-width", melted.Value, "mm"),
			calc.In("c", "zinc on one face", side.V, "g/m2")} {
			in.Symbol, in.Name = fmt.Sprint(in.Symbol, i+1), fmt.Sprintf("%s, member %d", in.Name, i+1)
			basis.Inputs = append(basis.Inputs, in)
		}
	}
	basis.Formula, basis.Known = strings.Join(sum, " + "), calc.OwnCalc
	basis.Inputs = append(basis.Inputs, calc.In("e", "share of the melted strip that leaves", tables.ZincEdge.V, "1"))
	basis.Source = airSource + "; " + tables.ZincEdge.Source + "; the coating's spread is in its band"
	return z, basis, found
}

// ends is a figure's value with the low and high end of its interval.
type ends struct{ low, mid, high float64 }

// shade adds the filter shade for the eyes.
func (p *Page) shade(card *calc.Card) {
	amps, ok := card.Figure("current")
	if !ok {
		return
	}
	formula := "row of the shade table for the arc-on current"
	if peak, ok := calc.PulsePeak(card); ok {
		amps.Value, formula = peak, "row of the shade table for the pulses' peak"
	}
	row, ok := tables.ShadeFor(amps.Value)
	if !ok {
		return
	}
	if row.Suggested.V > 0 {
		p.row("shade_suggested", row.Suggested, formula)
	} else {
		p.Because(row.Suggested.Origin,
			"below 60 A no shade is suggested: start dark, 10 or 11, and go lighter until you see the puddle")
	}
	p.row("shade_minimum", row.Minimum, formula)
}

func (p *Page) airWords() {
	p.Because(tables.FireWatch.Origin, "fire watch %.0f minutes, then up to %.0f hours' monitoring; the older "+
		"minimum is 30 minutes", tables.FireWatch.V, tables.FireMonitoring.V)
	p.Warn("air-compare", "29 CFR 1910.252(c); common practice",
		"These figures compare set-ups. Air in a room mixes badly, and a nose in the plume breathes many times "+
			"the mean: they replace neither extraction at the joint nor a respirator nor air sampling.")
}
