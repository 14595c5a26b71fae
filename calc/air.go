package calc

import (
	"fmt"

	"brazebooth/tables"
)

const airSource = "coating's mass times the computed bands on every heated face: boiled at the low edge, melted at the high one; not validated on zinc"

// Air computes what the zinc puts into the air, and the clean air that would thin it.
func Air(card *Card) (Part, error) {
	p := Part{Name: "air", Card: *card}
	travel, ok := card.Figure("travel")
	if low, high, zinc := zincPerLength(card); zinc && ok {
		p.zinc(low, high, travel)
	} else {
		p.because("no zinc on either member: nothing is computed for its fume", ownCalc, "the card's coatings")
	}
	p.shade(card)
	p.airWords()
	return p, nil
}

// zincPerLength is the zinc driven off each metre of seam, g/m: over the boiled and over the melted bands. Sheets that
// run through the joint are heated on both sides of it.
func zincPerLength(card *Card) (low, high float64, zinc bool) {
	names := [2]string{"", "_2"}
	through := 1.0
	if card.Used.Joint == "lap" || card.Used.Joint == "tee" {
		through = 2
	}
	for i, m := range card.Setup.members() {
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
			return 0, 0, false
		}
		zinc = true
		faces := 2 * arms * m.Coating.Side.V * 1e-3 // g/m for each mm of half-width
		low += faces * boiled.Value
		high += faces * melted.Value
	}
	return low, high, zinc
}

// zinc adds rates and the air for each limit.
func (p *Part) zinc(low, high float64, travel Figure) {
	perHour := travel.Value * 3.6 // m/h of arc
	mid := (low + high) / 2
	basis := func(formula string) Basis {
		return Basis{Formula: formula, Source: airSource, Known: ownCalc, Inputs: []Input{
			{Symbol: "z", Name: "zinc driven off", Value: mid, Unit: "g/m", Derived: true},
			{Symbol: "v", Name: "travel", Value: travel.Value, Unit: "mm/s", Derived: true}}}
	}
	p.add("zinc_per_length", "g/m", mid, low, high, basis("coating on each face times {z}, between boiled and melted bands"))
	p.add("zinc_rate", "g/h", mid*perHour, low*perHour, high*perHour, basis("{z}·{v}·3.6, while the arc burns"))
	oxide := tables.ZincOxideRatio.V
	p.add("zinc_oxide_rate", "g/h", mid*perHour*oxide, low*perHour*oxide, high*perHour*oxide, basis("1.245·{z}·{v}·3.6"))
	p.cleanAir(mid*perHour*oxide, low*perHour*oxide, high*perHour*oxide)
}

// cleanAir adds the flow for the strictest limit and says the others'.
func (p *Part) cleanAir(mid, low, high float64) {
	least := 0.0
	for _, l := range tables.ExposureLimits() {
		if l.Agent != "zinc-oxide" || l.Span != tables.ShiftMean {
			continue
		}
		p.because(fmt.Sprintf("%s %.3g mg/m³ of %s, %s: %.0f m³/h of clean air (%.0f to %.0f)", l.Body, l.Limit.V, l.Name, l.Form, 1000*mid/l.Limit.V, 1000*low/l.Limit.V, 1000*high/l.Limit.V),
			string(l.Limit.Known), l.Limit.Source)
		if least == 0 || l.Limit.V < least {
			least = l.Limit.V
		}
	}
	if least > 0 {
		p.add("clean_air_flow", "m3/h", CleanAir(mid, least), CleanAir(low, least), CleanAir(high, least), Basis{Formula: "1000·{r}/{C}",
			Source: "29 CFR 1910.1000(d)(2), the sum of C/L at most one; the strictest of the bodies' limits", Known: ownCalc,
			Inputs: []Input{{Symbol: "r", Name: "zinc oxide", Value: mid, Unit: "g/h", Derived: true}, {Symbol: "C", Name: "strictest limit", Value: least, Unit: "mg/m3"}}})
	}
}

// CleanAir returns the clean air in m³/h that thins a rate in g/h to a limit in mg/m³, mixed perfectly.
func CleanAir(rate, limit float64) float64 { return 1000 * rate / limit }

// Mixture returns the sum of concentration over limit of several agents: more than one is over the mixed limit.
// Source: 29 CFR 1910.1000(d)(2), read.
func Mixture(concentrations, limits []float64) (float64, error) {
	if len(concentrations) != len(limits) {
		return 0, outside("agents", float64(len(concentrations)), "as many limits as concentrations")
	}
	sum := 0.0
	for i, c := range concentrations {
		if !(c >= 0) || !(limits[i] > 0) {
			return 0, outside("concentration", c, "none below zero, limits above it")
		}
		sum += c / limits[i]
	}
	return sum, nil
}

// shade adds the filter for the eyes.
func (p *Part) shade(card *Card) {
	amps, ok := card.Figure("current")
	if !ok {
		return
	}
	row, ok := tables.ShadeFor(amps.Value)
	if !ok {
		return
	}
	add := func(name string, d tables.Datum) {
		p.add(name, "shade", d.V, d.V, d.V, Basis{Formula: "row of the shade table for the arc-on current", Source: d.Source, Known: string(d.Known)})
	}
	if row.Suggested.V > 0 {
		add("shade_suggested", row.Suggested)
	} else {
		p.because("below 60 A no shade is suggested: start dark, 10 or 11, and go lighter until you see the puddle", "read", "ANSI Z49.1 shade guide as reproduced")
	}
	add("shade_minimum", row.Minimum)
}

func (p *Part) airWords() {
	v := tables.VentilationFlow
	p.because(fmt.Sprintf("in a room under %.0f m³ a welder, under %.0f m high or obstructed: %.0f m³/min of mechanical ventilation for each welder", tables.VentilationVolume.V, tables.VentilationCeiling.V, v.V), string(v.Known), v.Source)
	h := tables.HoodFlows()
	p.because(fmt.Sprintf("a movable hood draws %.2f m/s at the work: %.0f ft³/min at 4 to 6 in, %.0f at 10 to 12 in", tables.HoodSpeed.V, h[0].Flow.V, h[len(h)-1].Flow.V), string(h[0].Flow.Known), h[0].Flow.Source)
	p.because(fmt.Sprintf("fire watch %.0f minutes; the older minimum is 30", tables.FireWatch.V), string(tables.FireWatch.Known), tables.FireWatch.Source)
	p.because("the wire's own fume is left out: no rate with a source was found", ownCalc, "no source")
	p.Warnings = append(p.Warnings, Warning{"air-compare", Caution,
		"These figures compare set-ups. They assume perfect mixing, which a nose in the plume never has: they replace neither extraction at the joint nor a respirator nor air sampling.", "29 CFR 1910.252(c); common practice"})
}
