package calc

import (
	"brazebooth/calc/formula"
	"brazebooth/tables"
	"math"
)

// SmoothFlow is the gas that the nozzle carries without drawing air in, L/min; the usual bore's where none was given.
func SmoothFlow(j *Job, g *tables.Gas) float64 {
	most, err := formula.LaminarFlow(j.NozzleBore.Or(tables.UsualBore.V), g.Density.V, tables.ArgonViscosity.V, tables.LaminarReynolds.V)
	if err != nil {
		return math.Inf(1)
	}
	return most
}

// usualGas is the flow that is suggested: the usual one, its high end no more than the nozzle carries.
func usualGas(j *Job, g *tables.Gas) Figure {
	f := rowFigure("gas_flow", g.Flow, "usual for "+g.Name)
	most := SmoothFlow(j, g)
	if most >= f.High {
		return f
	}
	f.High, f.Value, f.Low = most, min(f.Value, most), min(f.Low, most)
	f.Basis.Formula += ", at most what a nozzle of {d} carries smoothly"
	f.Basis.Source += "; high end: " + tables.LaminarReynolds.Source
	f.Basis.Inputs = []Input{{Symbol: "d", Name: "nozzle's bore", Value: j.NozzleBore.Or(tables.UsualBore.V), Unit: "mm", Assumed: !j.NozzleBore.Set}}
	return f
}
