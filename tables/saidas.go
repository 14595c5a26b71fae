package tables

import "strings"

// The words that people use for a bead's look, by the id of the sight.
var sightWords = named{
	{"rolled-edge", "no wetting", "not wetted", "does not wet", "doesn't wet", "bad wetting", "poor wetting", "no wet",
		"sits on top", "rolled", "ropy bead", "balled up", "beads up", "cold lap", "cold bead", "cold"},
	{"thin-wide", "flat bead", "thin bead", "wide bead", "bluing", "blueing", "wide blue", "too wide", "too flat"},
	{"zinc-gone-behind", "burnt zinc", "burned zinc", "zinc burnt", "zinc burned", "zinc burnt off", "zinc burned off",
		"zinc gone", "no zinc behind", "white behind", "zinc off the back"},
	{"burn-through", "hole", "a hole", "holes through", "burnt through", "burned through", "blown through",
		"blew through", "blow through"},
	{"edges-melted", "melted edge", "edge melted", "melted edges", "edge gone", "edge melted away"},
	{"undercut", "undercuts", "undercutting", "notch at the toe", "notch beside the bead", "groove at the toe",
		"groove beside the bead"},
	{"spatter", "splatter", "spitting", "harsh arc", "sputter"},
	{"stubbing", "stub", "stubs", "wire stubs", "wire pushes", "pushes the gun"},
	{"burn-back", "burns back", "burnt back", "wire stuck to the tip", "stuck in the tip", "stuck to the tip"},
	{"pores", "porosity", "porous", "pinholes", "pinhole", "pore", "popping", "blowholes", "bubbles"},
	{"crack", "cracks", "cracked", "cracking"},
	{"drops-through", "falls through", "fell through", "fell", "drops", "drips through", "sags through"},
	{"spots-apart", "spots do not join", "spots not joined", "gaps between spots", "separate spots", "frozen between",
		"froze between", "frozen"},
	{"crater", "end crater", "craters", "pit at the end"},
	{"good", "ok", "fine", "good bead", "nothing wrong", "washed in", "washed through"},
}

// The words that people use for a job that must not be started, by the id of the hazard.
var hazardWords = named{
	{"tank", "used tank", "used drum", "fuel tank", "oil drum", "old tank"},
	{"sealed", "closed", "hollow", "sealed part", "hollow part"},
	{"coated", "lined", "lining", "coated inside"},
	{"pressure", "pressure vessel", "holds pressure", "boiler", "compressor"},
	{"gas", "gas line", "fuel line", "gas pipe"},
	{"cadmium", "cadmium plate", "cadmium plated"},
	{"lead-paint", "old paint", "paint"},
	{"beryllium", "beryllium copper"},
	{"confined", "confined space", "inside a tank", "pit"},
	{"fire-part", "fire", "firebox", "stove", "stove door", "flue", "grate", "chimney", "oven", "furnace"},
	{"vehicle", "car", "truck", "crash structure", "vehicle frame"},
}

// SightsSaid replaces the words that people use for a bead's look by the ids of the sights; unknown words stay.
func SightsSaid(text string) string { return saidAs(text, sightWords) }

// HazardsSaid does the same for the hazards that stop a job.
func HazardsSaid(text string) string { return saidAs(text, hazardWords) }

// saidAs looks up each phrase between commas, first as a whole, then allowing a small typing error.
func saidAs(text string, list named) string {
	phrases := strings.FieldsFunc(text, func(r rune) bool { return r == ',' || r == ';' })
	for i, p := range phrases {
		if row, ok := list.meant(fold(p), same, slipped); ok {
			phrases[i] = list[row][0]
		}
	}
	return strings.Join(phrases, ",")
}
