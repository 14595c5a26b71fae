package calc

import "strings"

// labels are the figures whose plain name is not simply their JSON name with blanks.
var labels = map[string]string{
	"gas_flow":                "gas",
	"stickout":                "stick-out",
	"deposition_rate":         "deposition",
	"wire_mass_per_length":    "wire weight",
	"wire_mass_per_seam":      "wire in seam",
	"length_per_mass":         "wire length",
	"melt_rate":               "melted",
	"zinc_boiled_halfwidth":   "zinc boiled",
	"zinc_melted_halfwidth":   "zinc melted",
	"pulse_frequency":         "pulses",
	"effective_current":       "effective",
	"wetted_width":            "wetted",
	"toe_angle":               "toe angle",
	"base_peak_temperature":   "base peak",
	"load_line":               "rated volts",
	"feed_dial":               "feed's dial",
	"volts_dial":              "volts' dial",
	"groove_area_both":        "groove, both sides",
	"plug_rim_temperature":    "rim below",
	"plug_middle_temperature": "middle below",
	"plug_wetted":             "plug wets below",
	"pull_out_capacity":       "pull-out capacity",
	"flat_width_held":         "flat, edge held",
	"flat_width_free":         "flat, edge free",
	"panel_pull_held":         "pull, edge held",
	"panel_pull_free":         "pull, edge free",
	"haz_hardness":            "zone hardness",
	"changed_halfwidth":       "changed zone",
	"softened_halfwidth":      "softened",
}

// FigureLabel is the plain name of a figure by its JSON name; a member's name ends in its number.
func FigureLabel(name string) string {
	first, end := name, ""
	for _, member := range [...]string{"1", "2"} {
		if base, ok := strings.CutSuffix(name, "_"+member); ok {
			first, end = base, " "+member
		}
	}
	if label, ok := labels[first]; ok {
		return label + end
	}
	return strings.ReplaceAll(first, "_", " ") + end
}
