package calc

import (
	"cmp"
	"fmt"
	"strings"

	"brazebooth/calc/formula"
)

// labels are the plain names of figures that differ from the JSON name with blanks.
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

// FigureLabel is the plain name of a figure by its JSON name; the name of a member's figure ends in the member's
// number.
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

// knownWords say how a figure is known: in plain words, and in one or two words.
var knownWords = map[string][2]string{
	"read":                       {"read in the document named", "read"},
	"memory high":                {"from memory of the document named, confidence high", "from memory"},
	"memory medium":              {"from memory of the document named, confidence medium", "from memory"},
	"memory low":                 {"from memory of the document named, confidence low", "from memory, unsure"},
	"practice":                   {"common practice, no source", "practice"},
	"common practice, no source": {"common practice, no source", "practice"},
	"worked":                     {"worked out from sourced figures", "worked out"},
	"given":                      {"given by you", "given"},
	OwnCalc:                      {OwnCalc, "computed"},
}

// KnownWords says in plain words how a figure is known.
func KnownWords(known string) string { return cmp.Or(knownWords[known][0], known) }

// KnownShort says the same in one or two words, for a place that also shows the source.
func KnownShort(known string) string { return cmp.Or(knownWords[known][1], known) }

// ArcRange says between which currents a wire (mm) runs a steady short arc, "" where neither end is known.
func ArcRange(mm float64) string {
	var parts []string
	if floor, err := formula.DipFloor(mm); err == nil {
		parts = append(parts, fmt.Sprintf("steady from about %.0f A", floor))
	}
	if spray, err := formula.SprayTransition(mm); err == nil {
		parts = append(parts, fmt.Sprintf("spray above about %.0f A", spray))
	}
	return strings.Join(parts, ", ")
}

// NameAndNote is the full name and the note of a table row, without saying the name twice.
func NameAndNote(name, note string) string {
	switch {
	case note == "":
		return name
	case strings.HasPrefix(strings.ToLower(note), strings.ToLower(name)):
		return note
	}
	return name + ". " + note
}
