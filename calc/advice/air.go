package advice

import (
	"fmt"
	"strings"

	"brazebooth/calc"
	"brazebooth/tables"
)

const airSource = "coating's mass times the computed bands on every heated face, both with their bands; not " +
	"validated on zinc"

// Air computes the zinc that goes into the air, and the clean air that would dilute it.
func Air(card *calc.Card) (Page, error) {
	p := Page{Name: "air", Card: *card}
	travel, ok := card.Figure("travel")
	switch z, basis, found := zincPerLength(card); {
	case !calc.Applies("zinc", card):
		p.Because(Own("the card's coatings"), "no zinc on either member: nothing is computed for its fume")
	case found && ok:
		p.zinc(z, basis, travel)
	default:
		p.Because(Own(airSource), "it carries zinc, but its bands are not computed for this joint, so the amount of "+
			"fume is not known: use extraction and a respirator all the same")
	}
	p.shade(card)
	p.others(card)
	p.airWords()
	return p, nil
}

// zincPerLength is the zinc driven off each metre of seam, g/m: between that of the boiled and that of the melted
// bands, from the low end of the first to the high end of the second. Sheets that run through the joint are heated on
// both sides of it. False where the bands are not computed.
func zincPerLength(card *calc.Card) (z ends, basis calc.Basis, found bool) {
	var sum []string
	names := [2]string{"", "_2"}
	through := 1.0
	if card.Used.Joint == "lap" || card.Used.Joint == "tee" {
		through = 2
	}
	for i, m := range card.Setup.Joined() {
		if !m.Coating.Zinc {
			continue
		}
		arms := 1.0
		switch {
		case card.Setup.One:
			arms = 2
		case i == 1:
			arms = through
		}
		boiled, ok1 := card.Figure("zinc_boiled_halfwidth" + names[i])
		melted, ok2 := card.Figure("zinc_melted_halfwidth" + names[i])
		if !ok1 || !ok2 {
			return ends{}, basis, false
		}
		found = true
		faces := 2 * arms * 1e-3 // g/m for each mm of half-width and g/m2
		side := m.Coating.Side
		z.low += faces * boiled.Low * side.Low
		z.mid += faces * (boiled.Value + melted.Value) / 2 * side.V
		z.high += faces * melted.High * side.High
		sum = append(sum, fmt.Sprintf("2·{n%[1]d}·({b%[1]d} + {m%[1]d})/2·{c%[1]d}/1000", i+1))
		basis.Inputs = append(basis.Inputs, zincInputs(i+1, arms, boiled.Value, melted.Value, side.V)...)
	}
	basis.Formula, basis.Known = strings.Join(sum, " + "), calc.OwnCalc
	basis.Source = airSource + "; in the middle of the boiled and the melted band, its own band from the low end of " +
		"the one to the high end of the other, the coating's spread in it"
	return z, basis, found
}

// zincInputs are what the zinc that a member gives off depends on.
func zincInputs(member int, arms, boiled, melted, coat float64) []calc.Input {
	in := func(symbol, name string, v float64, unit string) calc.Input {
		return calc.In(fmt.Sprintf("%s%d", symbol, member), fmt.Sprintf("%s, member %d", name, member), v, unit)
	}
	list := []calc.Input{in("n", "sides of the joint that it is heated on", arms, "1"),
		in("b", "zinc boiled half-width", boiled, "mm"),
		in("m", "zinc melted half-width", melted, "mm"), in("c", "zinc on one face", coat, "g/m2")}
	list[1].Derived, list[2].Derived = true, true
	return list
}

// ends is a figure's value and interval.
type ends struct{ low, mid, high float64 }

// zinc adds rates and the air for each limit.
func (p *Page) zinc(z ends, perLength calc.Basis, travel calc.Figure) {
	basis := func(formula string) calc.Basis {
		return calc.OwnBasis(formula, airSource+"; rates are those while the arc burns",
			calc.Derived("z", "zinc driven off", z.mid, "g/m"), travel.As("v"))
	}
	zinc := p.add("zinc_per_length", "g/m", z.mid, z.low, z.high, perLength)
	rate := p.scaled("zinc_rate", "g/h", zinc, travel.Value*3.6, basis("3.6·{z}·{v}")) // by the m/h of arc
	p.cleanAir(p.scaled("zinc_oxide_rate", "g/h", rate, tables.ZincOxideRatio.V, basis("1.245·3.6·{z}·{v}")))
}

// cleanAir adds the flow for the strictest limit and states the others'.
func (p *Page) cleanAir(oxide calc.Figure) {
	least := 0.0
	for _, l := range tables.ExposureLimits() {
		if l.Agent != "zinc-oxide" || l.Span != tables.ShiftMean {
			continue
		}
		p.Because(l.Limit.Origin, "%s %.3g mg/m³ of %s, %s: %.0f m³/h of clean air (%.0f to %.0f)", l.Body,
			l.Limit.V, l.Name, l.Form, CleanAir(oxide.Value, l.Limit.V), CleanAir(oxide.Low, l.Limit.V),
			CleanAir(oxide.High, l.Limit.V))
		if least == 0 || l.Limit.V < least {
			least = l.Limit.V
		}
	}
	if least > 0 {
		p.add("clean_air_flow", "m3/h", CleanAir(oxide.Value, least), CleanAir(oxide.Low, least),
			CleanAir(oxide.High, least), calc.OwnBasis("1000·{r}/{C}",
				"29 CFR 1910.1000(d)(2), the sum of C/L at most one; the strictest of the bodies' limits",
				calc.Derived("r", "zinc oxide", oxide.Value, "g/h"), calc.In("C", "strictest limit", least, "mg/m3")))
	}
}

// CleanAir returns the clean air in m³/h that dilutes a rate in g/h to a limit in mg/m³, mixed perfectly.
func CleanAir(rate, limit float64) float64 { return 1000 * rate / limit }

// shade adds the filter shade for the eyes.
func (p *Page) shade(card *calc.Card) {
	amps, ok := card.Figure("current")
	if !ok {
		return
	}
	row, ok := tables.ShadeFor(amps.Value)
	if !ok {
		return
	}
	const formula = "row of the shade table for the arc-on current"
	if row.Suggested.V > 0 {
		p.row("shade_suggested", row.Suggested, formula)
	} else {
		p.Because(row.Suggested.Origin,
			"below 60 A no shade is suggested: start dark, 10 or 11, and go lighter until you see the puddle")
	}
	p.row("shade_minimum", row.Minimum, formula)
}

// others are the limits of what else is in the plume: copper always, the rest by wire and base.
func (p *Page) others(card *calc.Card) {
	agents := []string{"copper"}
	if p.has(tables.Stainless) {
		agents = append(agents, "chromium-vi", "nickel")
	}
	if card.Setup.Filler.ID == "cumn13al8" {
		agents = append(agents, "manganese")
	}
	for _, a := range agents {
		for _, body := range [...]tables.Body{tables.ACGIH, tables.OSHA} {
			if l, ok := tables.LimitFor(a, body, tables.ShiftMean); ok {
				p.Because(l.Limit.Origin, "%s in the plume too: %s %.3g mg/m³, %s; no rate is known for it", l.Name,
					l.Body, l.Limit.V, l.Form)
			}
		}
	}
}

func (p *Page) airWords() {
	p.Because(tables.OperatingFactor.Origin,
		"rates and clean air are for an arc that burns the whole hour; a hand's burns some 25 to 60 %% of it")
	v := tables.VentilationFlow
	p.Because(v.Origin, "in a room under %.0f m³ a welder, under %.0f m high or obstructed: %.0f m³/min of "+
		"mechanical ventilation for each welder", tables.VentilationVolume.V, tables.VentilationCeiling.V, v.V)
	h := tables.HoodFlows()
	const cubicFoot = 0.3048 * 0.3048 * 0.3048 * 60 // m3/h for each ft3/min, exact
	near, far := h[0].Flow.V, h[len(h)-1].Flow.V
	p.Because(h[0].Flow.Origin, "a movable hood close by does more than any room: %.2f m/s at the work takes %.0f "+
		"m³/h (%.0f ft³/min) at 100 to 150 mm, %.0f m³/h (%.0f) at 250 to 300 mm", tables.HoodSpeed.V, near*cubicFoot,
		near, far*cubicFoot, far)
	p.Because(tables.FireWatch.Origin, "fire watch %.0f minutes, then up to %.0f hours' monitoring; the older "+
		"minimum is 30 minutes", tables.FireWatch.V, tables.FireMonitoring.V)
	p.Because(Own("no source"), "the wire's own fume is left out: no rate with a source was found")
	p.Warn("air-compare", "29 CFR 1910.252(c); common practice",
		"These figures compare set-ups. They assume perfect mixing, which a nose in the plume never has: they "+
			"replace neither extraction at the joint nor a respirator nor air sampling.")
}
