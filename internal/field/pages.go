package field

import (
	"brazebooth/calc"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

// onPages are the choices that only the pages beside the card need.
var onPages = []Field{
	{Name: "use", Usage: "what it is for: decorative, seal, load, wear or bearing", Values: optionIDs(tables.Uses),
		Set: func(j *calc.Job, s string) error { return named(&j.Use, s, optionID(tables.FindUse)) }},
	{Name: "hazard", Usage: "what stops a job: tank, sealed, coated, pressure, gas, cadmium, lead, beryllium, confined, vehicle, fire-part; or none",
		Set: func(j *calc.Job, s string) error { return named(&j.Hazard, s, hazardIDs) }},
	sized("throat", "throat as measured on a cut test piece: 2mm", "mm",
		func(j *calc.Job) *calc.Opt { return &j.Throat }, quantity.ParseLength, quantity.FieldLength, 1),
	sized("leg", "leg of an equal-legged fillet: 3mm or 1/8in", "mm",
		func(j *calc.Job) *calc.Opt { return &j.Leg }, quantity.ParseLength, quantity.FieldLength, 1),
	sized("load", "load on the joint: 2kN or 500lbf", "kN",
		func(j *calc.Job) *calc.Opt { return &j.Load }, quantity.ParseForce, quantity.FieldForce, 1),
	sized("safety", "safety factor on the low edge, without it 3", "1",
		func(j *calc.Job) *calc.Opt { return &j.Safety }, quantity.ParseNumber, quantity.FieldNumber, 1),
	sized("service-temp", "temperature in service: 80C or 180F", "C",
		func(j *calc.Job) *calc.Opt { return &j.ServiceTemp }, quantity.ParseTemperature, quantity.FieldTemperature, 1),
	sized("count", "pieces, or plugs", "1",
		func(j *calc.Job) *calc.Opt { return &j.Count }, quantity.ParseNumber, quantity.FieldNumber, 1),
	priced("wire-price", "price of the wire with its currency: 25EUR/kg or $12/lb", func(j *calc.Job) *calc.Opt { return &j.WirePrice }),
	sized("gas-price", "price of a cubic metre of gas: 8", "per m3",
		func(j *calc.Job) *calc.Opt { return &j.GasPrice }, quantity.ParseNumber, quantity.FieldNumber, 1),
	sized("labour-rate", "price of an hour of a hand: 45", "per hour",
		func(j *calc.Job) *calc.Opt { return &j.LabourRate }, quantity.ParseNumber, quantity.FieldNumber, 1),
	sized("operating", "share of the time that the arc burns: 40%", "%",
		func(j *calc.Job) *calc.Opt { return &j.Operating }, quantity.ParsePercent, quantity.FieldPercent, 1),
	priced("steel-price", "price of steel wire, to compare: 3EUR/kg", func(j *calc.Job) *calc.Opt { return &j.SteelPrice }),
	sized("grinding", "minutes a metre that a steel bead is ground", "min/m",
		func(j *calc.Job) *calc.Opt { return &j.Grinding }, quantity.ParseNumber, quantity.FieldNumber, 1),
	sized("zinc-repair", "minutes a metre that zinc beside a steel bead is mended", "min/m",
		func(j *calc.Job) *calc.Opt { return &j.ZincRepair }, quantity.ParseNumber, quantity.FieldNumber, 1),
	sized("shaft-dia", "shaft's diameter: 40mm", "mm",
		func(j *calc.Job) *calc.Opt { return &j.ShaftDia }, quantity.ParseLength, quantity.FieldLength, 1),
	sized("layer", "wanted build-up: 2mm", "mm",
		func(j *calc.Job) *calc.Opt { return &j.Layer }, quantity.ParseLength, quantity.FieldLength, 1),
	sized("nozzle-bore", "gas nozzle's bore: 1/2in or 13mm", "mm",
		func(j *calc.Job) *calc.Opt { return &j.NozzleBore }, quantity.ParseLength, quantity.FieldLength, 1),
	sized("rated-amps", "current on the power source's plate: 200A", "A",
		func(j *calc.Job) *calc.Opt { return &j.RatedAmps }, quantity.ParseCurrent, quantity.FieldCurrent, 1),
	sized("rated-duty", "duty on the plate at that current: 60%", "%",
		func(j *calc.Job) *calc.Opt { return &j.RatedDuty }, quantity.ParsePercent, quantity.FieldPercent, 1),
}
