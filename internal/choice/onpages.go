package choice

import (
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

// onPages are the choices that only the pages beside the card need.
var onPages = [...]Choice{
	{Name: "use", Ask: "What is it for?", Usage: "what it is for: " + anyOf(tables.Uses()),
		values: options(tables.FindUse, tables.Uses)},
	{Name: "hazard", Ask: "Does one of these apply? Several with commas, or none.",
		Usage: "what stops a job: " + strings.Join(tables.HazardWords(), ", ") + "; or none", values: hazards,
		shown: func(c *calc.Card, _ quantity.System) string { return strings.ReplaceAll(c.Used.Hazard, ",", ", ") }},
	{Name: "throat", Usage: "throat as measured on a cut test piece: 2mm", Kind: quantity.FieldLength, Unit: "mm"},
	{Name: "leg", Usage: "leg of an equal-legged fillet: 3mm or 1/8in", Kind: quantity.FieldLength, Unit: "mm"},
	{Name: "load", Usage: "load on the joint: 2kN or 500lbf", Kind: quantity.FieldForce, Unit: "kN"},
	{Name: "safety", Usage: "safety factor on the low edge, without it 3", Kind: quantity.FieldNumber, Unit: "1"},
	{Name: "service-temp", Usage: "temperature in service: 80C or 180F", Kind: quantity.FieldTemperature, Unit: "C"},
	{Name: "count", Usage: "pieces, or plugs", Kind: quantity.FieldNumber, Unit: "1"},
	{Name: "wire-price", Usage: "price of the wire with its currency: 25EUR/kg or $12/lb",
		Kind: quantity.FieldPrice, Unit: "per kg"},
	{Name: "gas-price", Usage: "price of a cubic metre of gas: 8", Kind: quantity.FieldNumber, Unit: "per m3"},
	{Name: "labour-rate", Usage: "price of an hour of a hand: 45", Kind: quantity.FieldNumber, Unit: "per hour"},
	{Name: "operating", Usage: "share of the time that the arc burns: 40%", Kind: quantity.FieldPercent, Unit: "%"},
	{Name: "steel-price", Usage: "price of steel wire, to compare: 3EUR/kg", Kind: quantity.FieldPrice, Unit: "per kg"},
	{Name: "grinding", Usage: "minutes a metre that a steel bead is ground", Kind: quantity.FieldNumber, Unit: "min/m"},
	{Name: "zinc-repair", Usage: "minutes a metre that zinc beside a steel bead is mended",
		Kind: quantity.FieldNumber, Unit: "min/m"},
	{Name: "shaft-dia", Usage: "shaft's diameter: 40mm", Kind: quantity.FieldLength, Unit: "mm"},
	{Name: "layer", Usage: "wanted build-up: 2mm", Kind: quantity.FieldLength, Unit: "mm"},
	{Name: "nozzle-bore", Usage: "gas nozzle's bore: 1/2in or 13mm", Kind: quantity.FieldLength, Unit: "mm"},
	{Name: "rated-amps", Usage: "current on the power source's plate: 200A", Kind: quantity.FieldCurrent, Unit: "A"},
	{Name: "rated-duty", Usage: "duty on the plate at that current: 60%", Kind: quantity.FieldPercent, Unit: "%"},
}
