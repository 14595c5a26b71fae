package report

import (
	"fmt"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
)

// remarks are the remarks that are always the same, each in a long and a short form.
var remarks = map[string][2]string{
	"stickout":              {"tip to arc, not to the work", "tip to arc"},
	"first_spot_on":         {"cold sheet", "cold sheet"},
	"timer_on":              {"with the wire's run-in", "with run-in"},
	"volts":                 {"at the arc, while it burns"},
	"heat_input":            {"for reports, k 0.8"},
	"arc_energy":            {"no efficiency in it"},
	"net_heat":              {"what gets into the sheet"},
	"zinc_boiled_halfwidth": {"each side of the arc's line"},
	"zinc_melted_halfwidth": {"each side of the arc's line"},
	// of the second member
	"zinc_boiled_halfwidth_2": {"second member, each side"},
	"zinc_melted_halfwidth_2": {"second member, each side"},
	"wetted_width_1":          {"on the first member"},
	"wetted_width_2":          {"on the second member"},
	"toe_angle_1":             {"at the first member"},
	"toe_angle_2":             {"at the second member"},
	"margin":                  {"to the nearest edge"},
	"chance":                  {"that every edge is met"},
	"cooling_time":            {"800 to 500 °C", "800–500 °C"},
	"pulse_frequency":         {"one drop a pulse"},
	"effective_current":       {"of the pulses: what loads the gun", "loads the gun"},
	"pulse_power":             {"of volts times amps as meters show", "of volts times amps"},
}

// nozzle is the nozzle bore that a gas flow is for.
func nozzle(card *calc.Card, f *calc.Figure, sys quantity.System) string {
	if card.Job.Flow.Set || len(f.Basis.Inputs) == 0 {
		return ""
	}
	bore := f.Basis.Inputs[0]
	text := "; " + quantity.Show(bore.Value, "mm", sys.Lead()) + " nozzle"
	if bore.Assumed {
		text += " assumed"
	}
	return text
}

// Pace is a travel as the seconds for a length that can be counted by hand, "" for none.
func Pace(mms float64, sys quantity.System) string {
	switch {
	case !(mms > 0):
		return ""
	case sys == quantity.Inch:
		return fmt.Sprintf("%.1f s for 4 in", 4*quantity.MMPerInch/mms)
	case sys == quantity.Both:
		return fmt.Sprintf("%.1f s for 100 mm (4 in)", 100/mms)
	}
	return fmt.Sprintf("%.1f s for 100 mm", 100/mms)
}
