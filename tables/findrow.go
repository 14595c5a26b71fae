package tables

import (
	"errors"
	"slices"
	"strings"
)

// The Find functions turn typed text into a row: an id, any designation, a plain name, or something close to
// one. A name that fits no row, or several, gives a *mistake.Error with the nearest names.

// FindFiller finds a filler by id, AWS, UNS, ISO or DIN designation, or name.
func FindFiller(text string) (Filler, error) {
	return findIn("filler", text, Fillers, func(f *Filler) []string {
		return slices.Concat(fillerWords.of(f.ID, f.Name), designations(f.AWS), designations(f.UNS),
			designations(f.ISO), designations(f.DIN))
	})
}

// designations are "S Cu 6560 (CuSi3Mn1)" as a whole and its two halves, and a DIN "SG-CuSi3" also without its
// prefix.
func designations(d string) []string {
	number, symbol, _ := strings.Cut(d, " (")
	return []string{d, number, strings.TrimSuffix(symbol, ")"), strings.TrimPrefix(d, "SG-")}
}

// FindMetal finds a base metal by id, name, grade or shop word.
func FindMetal(text string) (Metal, error) {
	return findSheet("metal", text, Metals, func(m *Metal) []string { return metalWords.of(m.ID, m.Name) })
}

// FindCoating finds a coating by designation.
func FindCoating(text string) (Coating, error) {
	coating, err := findSheet("coating", text, Coatings,
		func(c *Coating) []string { return coatingWords.of(c.ID, c.Name) })
	if other := otherClass(text); err != nil && !errors.Is(err, ErrNotBrazed) && other != nil {
		return coating, other
	}
	return coating, err
}

// findSheet is findIn for metals or coatings: a name that means one which is not brazed here is refused, as it is
// or, if no row has it, with a small typing error.
func findSheet[T any](kind, text string, rows []T, names func(row *T) []string) (row T, err error) {
	if no := refused(text, (*notBrazedRow).named); no != nil {
		return row, no
	}
	row, err = findIn(kind, text, rows, names)
	if no := refused(text, (*notBrazedRow).mistyped); err != nil && no != nil {
		return row, no
	}
	return row, err
}

// FindGas finds a gas by id or name.
func FindGas(text string) (Gas, error) {
	return findIn("gas", text, Gases, func(g *Gas) []string { return gasWords.of(g.ID, g.Name) })
}

// FindJoint, FindMode, FindPosition and FindUse find a choice by id, name or shop word.
func FindJoint(text string) (Option, error)    { return findOption("joint", text, Joints) }
func FindMode(text string) (Option, error)     { return findOption("mode", text, Modes) }
func FindPosition(text string) (Option, error) { return findOption("position", text, Positions) }
func FindUse(text string) (Option, error)      { return findOption("use", text, Uses) }

// FindBacking finds a root's backing by id, name or shop word.
func FindBacking(text string) (Backing, error) {
	return findIn("backing", text, Backings, func(b *Backing) []string { return backingWords.of(b.ID, b.Name) })
}

func findOption(kind, text string, rows []Option) (Option, error) {
	return findIn(kind, text, rows, func(o *Option) []string { return optionWords.of(o.ID, o.Name) })
}

// FindTerm returns the entry that a user means: as TermFor does, or by a beginning that only one entry has.
func FindTerm(word string) (*Term, bool) {
	if t, ok := TermFor(word); ok {
		return t, true
	}
	all := namesIn(Terms, func(t *Term) []string { return append([]string{t.Word}, t.Also...) })
	row, ok := all.meant(fold(word), begins)
	return &Terms[row], ok
}

// TermFor returns the entry with this word or other name; case, dashes and blanks do not matter. An entry's
// word takes precedence over another entry's other name.
func TermFor(label string) (*Term, bool) {
	key, found := fold(label), (*Term)(nil)
	for i := range Terms {
		t := &Terms[i]
		if fold(t.Word) == key {
			return t, true
		}
		if found == nil && slices.ContainsFunc(t.Also, func(a string) bool { return fold(a) == key }) {
			found = t
		}
	}
	return found, found != nil
}

// The shop words for a row, by its id.

var fillerWords = named{
	{"cusi3", "silicon bronze", "silicon-bronze wire", "CuSi3Mn"},
	{"cual8", "aluminium bronze", "aluminum bronze", "ERCuAl-A1"},
	{"cual10fe", "ERCuAl-A2", "CuAl10"},
	{"cusn6", "tin bronze", "phosphor bronze", "CuSn6P"},
	{"cusn1", "copper", "pure copper", "deoxidized copper"},
	{"cumn13al8", "manganese bronze", "manganese aluminium bronze", "CuMn13Al7"},
	{"cual9ni5", "nickel bronze", "nickel aluminium bronze", "NAB"},
	{"steel", "ER70S6", "70S-6", "mild steel wire"},
}

var metalWords = named{
	{"mild-steel", "mild", "steel", "black steel", "bare steel", "cold rolled", "CRS", "DC01", "1008", "A1008",
		"shaft", "bar", "round bar", "plate", "angle iron", "tube"},
	{"galvanized", "galv", "galvanised", "galvanized steel", "hot-dip", "hot-dip galvanized", "HDG", "DX51", "A653"},
	{"galvannealed", "galvanneal", "zinc-iron", "GA"},
	{"electro-zinc", "electrogalvanized", "electro galvanised", "EG", "ZE", "A879"},
	{"aluminized", "aluminised", "aluminized steel", "alu-silicon", "AlSi", "AS", "A463"},
	{"hsla", "high strength low alloy", "micro-alloyed"},
	{"dp600", "DP590", "dual phase 600"},
	{"dp800", "DP780", "dual phase 800"},
	{"dp1000", "DP980", "dual phase 1000"},
	{"boron-steel", "boron", "22MnB5", "press hardened"},
	{"stainless-304", "304", "ss304", "304L", "1.4301", "S30400"},
	{"stainless-316", "316", "ss316", "316L", "1.4401", "S31600"},
	{"grey-iron", "gray iron", "cast iron", "grey cast iron", "gray cast iron", "GJL"},
	{"ductile-iron", "nodular iron", "spheroidal iron", "ductile cast iron", "GJS"},
	{"copper", "copper sheet", "C11000", "C12200"},
	{"brass", "C26000", "cartridge brass", "yellow brass"},
	{"silicon-bronze", "silicon bronze", "C65500"},
	{"aluminium-bronze", "aluminum bronze", "aluminium bronze", "C61400"},
}

// coatingWords are the classes of EN 10346 with about the same mass (80 and 120 g/m2 on both sides, here 76 and
// 122), and those of EN 10152 with the same mass on both sides.
var coatingWords = named{
	{"ZE25/25", "ZE25"},
	{"ZE50/50", "ZE50"},
	{"ZE75/75", "ZE75"},
	{"ZE100/100", "ZE100"},
	{"T1-25", "AS80", "AS080"},
	{"T1-40", "AS120"},
}

var gasWords = named{
	{"argon", "ar", "pure argon", "I1"},
	{"argon-co2-2", "argon 2", "2 % CO2", "M12"},
	{"argon-co2-18", "argon 18", "18 % CO2", "M21"},
}

var backingWords = named{
	{"none", "no backing", "open"},
	{"copper-bar", "copper", "bar", "chill bar", "backing bar"},
	{"steel-strip", "strip", "steel", "backing strip"},
	{"patch", "patched", "plate behind"},
}

var optionWords = named{
	{"tee", "fillet", "t joint"},
	{"lap", "lap joint", "overlap"},
	{"butt", "butt joint", "open root"},
	{"overlay", "build-up", "hardfacing", "cladding"},
	{"plug", "plug hole", "spot"},
	{"dip", "short circuit", "short circuiting", "short arc", "dip transfer"},
	{"pulsed", "pulse"},
	{"timed", "on-off", "stitch", "timer"},
	{"horizontal", "2F", "PB", "PC"},
	{"flat", "1G", "1F", "PA"},
	{"vertical-up", "uphill", "3G up", "PF"},
	{"vertical-down", "downhill", "3G down", "PG"},
	{"overhead", "4G", "PE", "PD"},
}
