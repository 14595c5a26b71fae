package calc

import (
	"math"

	"brazebooth/tables"
)

// GasVolume returns the gas used, L: flow L/min over the arc time and the flow before and after it, s.
func GasVolume(flow, arc, before, after float64) (float64, error) {
	if !(flow > 0) || !(arc >= 0) || !(before >= 0) || !(after >= 0) {
		return 0, outside("gas flow or time", flow, "flow above zero and no negative time")
	}
	return flow * (arc + before + after) / 60, nil
}

// GasReynolds returns the Reynolds number of a flow in L/min through a round bore in mm, for a density in
// kg/m3 and a viscosity in Pa s: 4·ρ·Q/(π·d·µ).
func GasReynolds(flow, bore, density, viscosity float64) (float64, error) {
	if err := positive([4]string{"gas flow", "bore", "density", "viscosity"}, flow, bore, density, viscosity); err != nil {
		return 0, err
	}
	return 4 * density * flow / 60e3 / (math.Pi * bore * 1e-3 * viscosity), nil
}

// LaminarFlow returns the flow in L/min at which a bore reaches the Reynolds number where flow stops
// being laminar: more gas draws air in.
func LaminarFlow(bore, density, viscosity, reynolds float64) (float64, error) {
	one, err := GasReynolds(1, bore, density, viscosity)
	if err != nil {
		return 0, err
	}
	return reynolds / one, nil
}

// smoothFlow is the gas that the job's nozzle carries without drawing air in, L/min; of one whose bore nobody gave, the
// usual bore's.
func smoothFlow(j *Job, g *tables.Gas) float64 {
	most, err := LaminarFlow(j.NozzleBore.Or(tables.UsualBore.V), g.Density.V, tables.ArgonViscosity.V, tables.LaminarReynolds.V)
	if err != nil {
		return math.Inf(1)
	}
	return most
}

// usualGas is the flow that is suggested: the usual one, its high end no more than the nozzle carries.
func usualGas(j *Job, g *tables.Gas) Figure {
	f := rowFigure("gas_flow", g.Flow, "usual for "+g.Name)
	most := smoothFlow(j, g)
	if most >= f.High {
		return f
	}
	f.High, f.Value, f.Low = most, min(f.Value, most), min(f.Low, most)
	f.Basis.Formula += ", at most what a nozzle of {d} carries smoothly"
	f.Basis.Source += "; high end: " + tables.LaminarReynolds.Source
	f.Basis.Inputs = []Input{{Symbol: "d", Name: "nozzle's bore", Value: j.NozzleBore.Or(tables.UsualBore.V), Unit: "mm", Assumed: !j.NozzleBore.Set}}
	return f
}
