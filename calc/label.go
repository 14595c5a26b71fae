package calc

import "strings"

// labels are the figures whose plain name is not simply their JSON name with blanks.
var labels = [...]struct{ name, label string }{
	{"gas_flow", "gas"},
	{"stickout", "stick-out"},
	{"deposition_rate", "deposition"},
	{"wire_mass_per_length", "wire mass"},
	{"length_per_mass", "wire length"},
	{"melt_rate", "melted"},
	{"zinc_boiled_halfwidth", "zinc boiled"},
	{"zinc_melted_halfwidth", "zinc melted"},
	{"pulse_frequency", "pulses"},
}

// FigureLabel is the plain name of a figure by its JSON name; a second member's ends in 2.
func FigureLabel(name string) string {
	first, second := strings.CutSuffix(name, "_2")
	label := strings.ReplaceAll(first, "_", " ")
	for i := range labels {
		if labels[i].name == first {
			label = labels[i].label
		}
	}
	if second {
		return label + " 2"
	}
	return label
}
