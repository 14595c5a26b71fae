package batch

import (
	"fmt"
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

// column finds a figure's place. A card has its figures nearly in that order, so the search begins after the last one
// found.
func column(name string, after int) int {
	for i := range figures {
		at := (after + 1 + i) % len(figures)
		if figures[at].name == name {
			return at
		}
	}
	return -1
}

// appendFigures writes a card's figures into their columns, a comma or the like before each.
func appendFigures(to []byte, card *calc.Card, comma byte) ([]byte, error) {
	var at [len(figures)]*calc.Figure
	last := -1
	for i := range card.Figures {
		f := &card.Figures[i]
		last = column(f.Name, last)
		if last < 0 {
			return to, fmt.Errorf("the figure %s has no column", f.Name)
		}
		at[last] = f
	}
	for _, f := range at {
		if f == nil {
			to = append(to, comma, comma, comma)
			continue
		}
		for _, v := range [...]float64{f.Value, f.Low, f.High} {
			to = strconv.AppendFloat(append(to, comma), v, 'g', 6, 64)
		}
	}
	return to, nil
}
