package choice

import (
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/near"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

// onCard are the choices that every card takes.
var onCard = []*Choice{
	{Name: "metal", Ask: "Which metal?", values: metals,
		Usage: "base metal: mild-steel, galvanized, stainless-304 ... (see tables metals)"},
	{Name: "gauge", Ask: "Which gauge or thickness?", Usage: "thickness: 16ga, .060 or 1.5mm",
		Also: []string{"thickness"}, Kind: quantity.FieldSize, values: sheets(0)},
	{Name: "coating", Ask: "Which coating?", values: coatings,
		Usage: "coating: none, G60, Z180, A40 ... (see tables coatings)"},
	{Name: "metal2", label: "second metal", Ask: "Which metal is the second member?", values: metals,
		Usage: "second member's metal; without it as the first", shown: shownMetal2,
		Same: "The same sheet as the first member."},
	{Name: "gauge2", label: "second gauge", Ask: "Which gauge is the second member?",
		Usage: "second member's thickness", Same: "As thick as the first member.", Kind: quantity.FieldSize,
		values: sheets(1)},
	{Name: "coating2", label: "second coating", Ask: "Which coating on the second member?", values: coatings,
		Usage: "second member's coating"},
	{Name: "joint", Ask: "Which joint?", Usage: anyOf(joints), values: joints},
	{Name: "gap", Ask: "How wide is the root opening?", Usage: "root opening: 0, 1.5mm or 1/16in", Figure: "gap",
		Also: []string{"root opening"}, Kind: quantity.FieldGap, Unit: "mm", values: gaps,
		shown: func(c *calc.Card, sys quantity.System) string { return gapText(c.Used.Gap.V, sys) }},
	{Name: "backing", Ask: "What lies behind the root?", Usage: "behind a butt: " + anyOf(backings), values: backings,
		shown: func(c *calc.Card, _ quantity.System) string { return c.Used.Backing }}, // "" for a joint without one
	{Name: "filler", Ask: "Which filler?", values: fillers,
		Usage: "cusi3, cual8, ERCuSi-A ... (see tables fillers)",
		shown: func(c *calc.Card, _ quantity.System) string { return c.Setup.Filler.Name }},
	{Name: "wire", Ask: "Which wire size?", Usage: "wire diameter: .035, 1/16 or 0.9mm",
		Kind: quantity.FieldWire, Unit: "mm", values: wires, shown: shownWire},
	{Name: "mode", Ask: "Which mode?", Usage: anyOf(modes), values: modes},
	{Name: "gas", label: "shielding gas", Ask: "Which gas?", values: gases,
		Usage: "argon, argon-co2-2 ... (see tables gases)",
		shown: func(c *calc.Card, _ quantity.System) string { return c.Setup.Gas.Name }},
	{Name: "feed", Usage: "wire feed: 250ipm or 6.3m/min", Without: suggested, Figure: "wire_feed", Hand: true,
		Kind: quantity.FieldFeed, Unit: "m/min", step: [2]float64{0.1, 5 * quantity.MMPerInch / 1000}},
	{Name: "amps", Usage: "current: another way to say the feed, a reading where both are given", Figure: "current",
		Kind: quantity.FieldCurrent, Unit: "A"},
	{Name: "volts", Usage: "arc voltage, as the meter shows it while the arc runs", Figure: "volts", Hand: true,
		Kind: quantity.FieldVoltage, Unit: "V", step: [2]float64{0.1, 0.1}},
	{Name: "travel", Usage: "travel: 6mm/s, 14ipm or 16s/100mm", Without: suggested, Figure: "travel", Hand: true,
		Kind: quantity.FieldTravel, Unit: "mm/s", step: [2]float64{0.2, 0.5 * quantity.MMPerInch / 60}},
	{Name: "stickout", Usage: "stick-out from contact tip to arc: 12mm or 1/2in", Figure: "stickout", Hand: true,
		Also: []string{"stick out"},
		Kind: quantity.FieldStickOut, Unit: "mm", step: [2]float64{1, quantity.MMPerInch / 16}},
	{Name: "arc-on", Usage: "timed arc: time on, 0.4s", Figure: "arc_on", Hand: true,
		Kind: quantity.FieldDuration, Unit: "s", step: [2]float64{0.05, 0.05}},
	{Name: "arc-off", Usage: "timed arc: time off, 0.6s", Figure: "arc_off", Hand: true,
		Kind: quantity.FieldDuration, Unit: "s", step: [2]float64{0.05, 0.05}},
	{Name: "spot-step", Usage: "timed arc: the step from one arc to the next, 3mm or 1/8in", Figure: "spot_step",
		Kind: quantity.FieldLength, Unit: "mm", step: [2]float64{0.2, quantity.MMPerInch / 64}},
	{Name: "run-in", Usage: "timed arc: from the timer's start to the arc's, 0.06s; the timer's setting includes it",
		Kind: quantity.FieldDuration, Unit: "s"},
	{Name: "length", Usage: "length of the seam: 300mm or 12in", Kind: quantity.FieldLength, Unit: "mm"},
	{Name: "part-width", Usage: "width of a part that warms up, across the seam: 60mm", Kind: quantity.FieldLength,
		Unit: "mm"},
	{Name: "part-mass", Usage: "mass of a part that warms up, both members together: 2kg or 5lb",
		Kind: quantity.FieldMass, Unit: "kg"},
	{Name: "position", Ask: "Which position?", Usage: anyOf(positions), values: positions},
	{Name: "preheat", Usage: "temperature of the parts before the arc: 95C or 200F", Figure: "preheat",
		Kind: quantity.FieldPreheat, Unit: "C"},
	{Name: "aim", Usage: "arc's offset toward the second member: 0.5mm or -0.5mm",
		Kind: quantity.FieldOffset, Unit: "mm"},
	{Name: "zinc-limit", Usage: "widest zinc-boiled half-width accepted: 4mm", Kind: quantity.FieldLength, Unit: "mm"},
	{Name: "flow", Usage: "gas flow: 12L/min or 25cfh", Figure: "gas_flow",
		Kind: quantity.FieldFlow, Unit: "L/min", step: [2]float64{1, 2 * litresPerFoot3 / 60}},
}

// onPages are the choices that only the pages beside the card need.
var onPages = []*Choice{
	{Name: "use", Ask: "What is it for?", Usage: "what it is for: " + anyOf(uses), values: uses},
	{Name: "hazard", Ask: "Does one of these apply? Several with commas, or none.",
		Usage: "what stops a job: " + strings.Join(tables.HazardWords(), ", ") + "; or none", values: hazards,
		shown: func(c *calc.Card, _ quantity.System) string { return strings.ReplaceAll(c.Used.Hazard, ",", ", ") }},
	{Name: "throat", Usage: "throat as measured on a cut test piece: 2mm", Kind: quantity.FieldLength, Unit: "mm"},
	{Name: "leg", Usage: "leg of an equal-legged fillet: 3mm or 1/8in", Kind: quantity.FieldLength, Unit: "mm"},
	{Name: "load", Usage: "load on the joint: 2kN or 500lbf", Kind: quantity.FieldForce, Unit: "kN"},
	{Name: "safety", Usage: "safety factor on the low edge, without it 3", Kind: quantity.FieldNumber, Unit: "1"},
	{Name: "service-temp", Usage: "temperature in service: 80C or 180F", Kind: quantity.FieldTemperature, Unit: "C"},
	{Name: "count", Usage: "pieces, or plugs", Kind: quantity.FieldCount, Unit: "1"},
	{Name: "wire-price", Usage: "price of the wire with its currency: 25EUR/kg or $12/lb",
		Kind: quantity.FieldPrice, Unit: "per kg"},
	{Name: "gas-price", Usage: "price of the shielding gas: 8EUR/m3 or $0.25/ft3", Kind: quantity.FieldGasPrice,
		Unit: "per m3"},
	{Name: "labour-rate", Usage: "price of an hour of labour: 45EUR/h or $45", Kind: quantity.FieldRate,
		Unit: "per hour"},
	{Name: "operating", Usage: "share of the time that the arc burns: 40%", Kind: quantity.FieldPercent, Unit: "%"},
	{Name: "steel-price", Usage: "price of steel wire, to compare: 3EUR/kg", Kind: quantity.FieldPrice, Unit: "per kg"},
	{Name: "grinding", Usage: "minutes a metre to grind a steel bead: 4min/m", Kind: quantity.FieldPerLength,
		Unit: "min/m"},
	{Name: "zinc-repair", Usage: "minutes a metre to repair the zinc beside a bead: 3min/m",
		Kind: quantity.FieldPerLength, Unit: "min/m"},
	{Name: "hole", Usage: "diameter of a plug's hole: 9mm", Kind: quantity.FieldLength, Unit: "mm"},
	{Name: "shaft-dia", Usage: "diameter of the shaft: 40mm", Kind: quantity.FieldLength, Unit: "mm"},
	{Name: "layer", Usage: "wanted build-up: 2mm", Kind: quantity.FieldLength, Unit: "mm"},
	{Name: "nozzle-bore", Usage: "bore of the gas nozzle: 1/2in or 13mm", Kind: quantity.FieldLength, Unit: "mm"},
	{Name: "rated-amps", Usage: "current on the power source's plate: 200A", Kind: quantity.FieldCurrent, Unit: "A"},
	{Name: "rated-duty", Usage: "duty on the plate at that current: 60%", Kind: quantity.FieldPercent, Unit: "%"},
}

// suggested is what the card does about a setting that was not given: it searches for a good one.
const suggested = "one is suggested"

// litresPerFoot3 is the volume of a cubic foot in litres, exactly.
const litresPerFoot3 = 28.316846592

// anyOf lists the words that can be typed, as part of a sentence.
func anyOf(v values) string {
	var ids []string
	for _, r := range v.rows(&Present{}) {
		ids = append(ids, r.ID)
	}
	return near.Or(ids)
}
