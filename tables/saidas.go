package tables

import "strings"

// The words that people use for a bead's look, by the id of the sight.
var sightWords = []synonyms{
	{"rolled-edge", []string{"no wetting", "not wetted", "does not wet", "doesn't wet", "bad wetting", "poor wetting",
		"no wet", "sits on top", "rolled", "ropy bead", "balled up", "beads up", "cold lap", "cold bead", "cold"}},
	{"thin-wide", []string{"flat bead", "thin bead", "wide bead", "bluing", "blueing", "wide blue", "too wide",
		"too flat"}},
	{"zinc-gone-behind", []string{"burnt zinc", "burned zinc", "zinc burnt", "zinc burned", "zinc burnt off",
		"zinc burned off", "zinc gone", "no zinc behind", "white behind", "zinc off the back"}},
	{"burn-through", []string{"hole", "a hole", "holes through", "burnt through", "burned through", "blown through",
		"blew through", "blow through"}},
	{"edges-melted", []string{"melted edge", "edge melted", "melted edges", "edge gone", "edge melted away"}},
	{"undercut", []string{"undercuts", "undercutting", "notch at the toe", "notch beside the bead", "groove at the toe",
		"groove beside the bead"}},
	{"spatter", []string{"splatter", "spitting", "harsh arc", "sputter"}},
	{"stubbing", []string{"stub", "stubs", "wire stubs", "wire pushes", "pushes the gun"}},
	{"burn-back", []string{"burns back", "burnt back", "wire stuck to the tip", "stuck in the tip",
		"stuck to the tip"}},
	{"pores", []string{"porosity", "porous", "pinholes", "pinhole", "pore", "popping", "blowholes", "bubbles"}},
	{"crack", []string{"cracks", "cracked", "cracking"}},
	{"drops-through", []string{"falls through", "fell through", "fell", "drops", "drips through", "sags through"}},
	{"spots-apart", []string{"spots do not join", "spots not joined", "gaps between spots", "separate spots",
		"frozen between", "froze between", "frozen"}},
	{"crater", []string{"end crater", "craters", "pit at the end"}},
	{"good", []string{"ok", "fine", "good bead", "nothing wrong", "washed in",
		"washed through"}},
}

// The words that people use for a job that must not be started, by the id of the hazard.
var hazardWords = []synonyms{
	{"tank", []string{"used tank", "used drum", "fuel tank", "oil drum", "old tank"}},
	{"sealed", []string{"closed", "hollow", "sealed part", "hollow part"}},
	{"coated", []string{"lined", "lining", "coated inside"}},
	{"pressure", []string{"pressure vessel", "holds pressure", "boiler", "compressor"}},
	{"gas", []string{"gas line", "fuel line", "gas pipe"}},
	{"cadmium", []string{"cadmium plate", "cadmium plated"}},
	{"lead-paint", []string{"old paint", "paint"}},
	{"beryllium", []string{"beryllium copper"}},
	{"confined", []string{"confined space", "inside a tank", "pit"}},
	{"fire-part", []string{"fire", "firebox", "stove", "stove door", "flue", "grate", "chimney", "oven", "furnace"}},
	{"vehicle", []string{"car", "truck", "crash structure", "vehicle frame"}},
}

// SightsSaid replaces the words that people use for a bead's look by the ids of the sights; unknown words stay.
func SightsSaid(text string) string { return saidAs(text, sightWords) }

// HazardsSaid does the same for the hazards that stop a job.
func HazardsSaid(text string) string { return saidAs(text, hazardWords) }

// saidAs looks up each phrase between commas, first as a whole, then allowing a small typing error.
func saidAs(text string, list []synonyms) string {
	phrases := strings.FieldsFunc(text, func(r rune) bool { return r == ',' || r == ';' })
	for i, p := range phrases {
		if row, ok := rowSaid(p, list); ok {
			phrases[i] = list[row].id
		}
	}
	return strings.Join(phrases, ",")
}

// rowSaid returns the single row of shop words that a phrase means.
func rowSaid(phrase string, list []synonyms) (int, bool) {
	key := fold(phrase)
	if key == "" {
		return 0, false
	}
	names := func(row int, visit func(string)) { visitNames(list[row].id, "", list, visit) }
	for _, fits := range [...]func(key, name string) bool{same, slipped} {
		if row, ok := onlyMatch(key, len(list), names, fits); ok {
			return row, true
		}
	}
	return 0, false
}
