package batch

import (
	"fmt"
	"slices"
	"strconv"

	"brazebooth/calc"
)

// figures are the figures of a CSV answer in their order, three columns each: value, low and high.
var figures = [...]struct{ name, unit string }{
	{"wire_feed", "m/min"}, {"volts", "V"}, {"travel", "mm/s"}, {"arc_on", "s"}, {"arc_off", "s"}, {"spot_step", "mm"},
	{"gas_flow", "L/min"}, {"stickout", "mm"}, {"gun_angle", "deg"}, {"current", "A"}, {"deposition_rate", "g/min"},
	{"wire_mass_per_length", "g/m"}, {"arc_energy", "J/mm"}, {"heat_input", "J/mm"}, {"net_heat", "J/mm"},
	{"bead_area", "mm2"}, {"bead_width", "mm"}, {"zinc_boiled_halfwidth", "mm"}, {"zinc_boiled_halfwidth_2", "mm"},
	{"zinc_melted_halfwidth", "mm"}, {"zinc_melted_halfwidth_2", "mm"}, {"cooling_time", "s"}, {"pulse_frequency", "Hz"},
	{"wetted_width_1", "mm"}, {"wetted_width_2", "mm"}, {"wetting_angle", "deg"}, {"toe_angle_1", "deg"},
	{"toe_angle_2", "deg"}, {"throat", "mm"}, {"base_peak_temperature", "C"}, {"margin", "%"},
}

// figureCells are a card's figures in their columns.
func figureCells(card *calc.Card) ([]string, error) {
	cells := make([]string, 3*len(figures))
	for i := range card.Figures {
		f := &card.Figures[i]
		at := slices.IndexFunc(figures[:], func(c struct{ name, unit string }) bool { return c.name == f.Name })
		if at < 0 {
			return nil, fmt.Errorf("the figure %s has no column", f.Name)
		}
		for end, v := range [...]float64{f.Value, f.Low, f.High} {
			cells[3*at+end] = strconv.FormatFloat(v, 'g', 6, 64)
		}
	}
	return cells, nil
}
