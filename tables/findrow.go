package tables

import (
	"slices"
	"strings"
)

// The Find functions turn typed text into a row: an id, any designation, a plain name, or something close to
// one. A name that fits no row, or several, gives a *mistake.Error with the nearest names.

// FindFiller finds a filler by id, AWS, UNS, ISO or DIN designation, or name.
func FindFiller(text string) (Filler, error) {
	return findIn("filler", text, Fillers, func(f *Filler, visit func(string)) {
		visitNames(f.ID, f.Name, fillerWords, visit)
		for _, d := range [...]string{f.AWS, f.UNS, f.ISO, f.DIN} {
			designations(d, visit)
		}
	})
}

// designations visits "S Cu 6560 (CuSi3Mn1)" as a whole and as its two halves, and a DIN "SG-CuSi3" also
// without its prefix.
func designations(d string, visit func(string)) {
	if d == "" {
		return
	}
	visit(d)
	number, symbol, both := strings.Cut(d, " (")
	if both {
		visit(number)
		visit(strings.TrimSuffix(symbol, ")"))
	}
	if alloy, ok := strings.CutPrefix(d, "SG-"); ok {
		visit(alloy)
	}
}

// FindMetal finds a base metal by id, name, grade or shop word.
func FindMetal(text string) (Metal, error) {
	if no := refused(text); no != nil {
		return Metal{}, no
	}
	metal, err := findIn("metal", text, Metals, func(m *Metal, visit func(string)) {
		visitNames(m.ID, m.Name, metalWords, visit)
	})
	if no := refusedIfMistyped(text); err != nil && no != nil {
		return Metal{}, no
	}
	return metal, err
}

// FindCoating finds a coating by designation.
func FindCoating(text string) (Coating, error) {
	if no := refused(text); no != nil {
		return Coating{}, no
	}
	coating, err := findIn("coating", text, Coatings,
		func(c *Coating, visit func(string)) { visitNames(c.ID, c.Name, coatingWords, visit) })
	if no := refusedIfMistyped(text); err != nil && no != nil {
		return Coating{}, no
	}
	if other := otherClass(text); err != nil && other != nil {
		return Coating{}, other
	}
	return coating, err
}

// FindGas finds a gas by id or name.
func FindGas(text string) (Gas, error) {
	return findIn("gas", text, Gases, func(g *Gas, visit func(string)) { visitNames(g.ID, g.Name, gasWords, visit) })
}

// FindJoint, FindMode, FindPosition and FindUse find a choice by id, name or shop word.
func FindJoint(text string) (Option, error)    { return findOption("joint", text, Joints) }
func FindMode(text string) (Option, error)     { return findOption("mode", text, Modes) }
func FindPosition(text string) (Option, error) { return findOption("position", text, Positions) }
func FindUse(text string) (Option, error)      { return findOption("use", text, Uses) }

// FindBacking finds a root's backing by id, name or shop word.
func FindBacking(text string) (Backing, error) {
	return findIn("backing", text, Backings,
		func(b *Backing, visit func(string)) { visitNames(b.ID, b.Name, backingWords, visit) })
}

func findOption(kind, text string, rows []Option) (Option, error) {
	return findIn(kind, text, rows, func(o *Option, visit func(string)) {
		visitNames(o.ID, o.Name, optionWords, visit)
	})
}

// FindTerm returns the entry that a user means: as TermFor does, or by a beginning that only one entry has.
func FindTerm(word string) (*Term, bool) {
	if t, ok := TermFor(word); ok {
		return t, true
	}
	names := func(row int, visit func(string)) {
		for _, name := range append([]string{Terms[row].Word}, Terms[row].Also...) {
			visit(name)
		}
	}
	row, ok := onlyMatch(fold(word), len(Terms), names, begins)
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

// FindWire finds a standard size by its printed name: .035, 0.035 in, 1/16", 0.9mm. Dots and slashes count
// here, so the loose rules of the other Find functions do not apply.
func FindWire(text string) (Wire, error) {
	key := strings.ToLower(strings.Join(strings.Fields(text), ""))
	key = strings.TrimSuffix(strings.TrimSuffix(key, `"`), "in")
	for i := range Wires {
		id := Wires[i].ID
		if key == id || key == "0"+id || key+"mm" == id {
			return Wires[i], nil
		}
	}
	return Wire{}, unknown("wire", text, fold(key), len(Wires),
		func(row int, visit func(string)) { visit(Wires[row].ID) })
}

// synonyms are the shop words for the row with this id.
type synonyms struct {
	id    string
	words []string
}

// visitNames visits all names of a row: its id, its name and its shop words.
func visitNames(id, name string, list []synonyms, visit func(string)) {
	visit(id)
	visit(name)
	for i := range list {
		if list[i].id == id {
			for _, w := range list[i].words {
				visit(w)
			}
		}
	}
}

var fillerWords = []synonyms{
	{"cusi3", []string{"silicon bronze", "silicon-bronze wire", "CuSi3Mn"}},
	{"cual8", []string{"aluminium bronze", "aluminum bronze", "ERCuAl-A1"}},
	{"cual10fe", []string{"ERCuAl-A2", "CuAl10"}},
	{"cusn6", []string{"tin bronze", "phosphor bronze", "CuSn6P"}},
	{"cusn1", []string{"copper", "pure copper", "deoxidized copper"}},
	{"cumn13al8", []string{"manganese bronze", "manganese aluminium bronze", "CuMn13Al7"}},
	{"cual9ni5", []string{"nickel bronze", "nickel aluminium bronze", "NAB"}},
	{"steel", []string{"ER70S6", "70S-6", "mild steel wire"}},
}

var metalWords = []synonyms{
	{"mild-steel", []string{"mild", "steel", "black steel", "bare steel", "cold rolled", "CRS", "DC01", "1008", "A1008",
		"shaft", "bar", "round bar", "plate", "angle iron", "tube"}},
	{"galvanized", []string{"galv", "galvanised", "galvanized steel", "hot-dip", "hot-dip galvanized", "HDG", "DX51",
		"A653"}},
	{"galvannealed", []string{"galvanneal", "zinc-iron", "GA"}},
	{"electro-zinc", []string{"electrogalvanized", "electro galvanised", "EG", "ZE", "A879"}},
	{"aluminized", []string{"aluminised", "aluminized steel", "alu-silicon", "AlSi", "AS", "A463"}},
	{"hsla", []string{"high strength low alloy", "micro-alloyed"}},
	{"dp600", []string{"DP590", "dual phase 600"}},
	{"dp800", []string{"DP780", "dual phase 800"}},
	{"dp1000", []string{"DP980", "dual phase 1000"}},
	{"boron-steel", []string{"boron", "22MnB5", "press hardened"}},
	{"stainless-304", []string{"304", "ss304", "304L", "1.4301", "S30400"}},
	{"stainless-316", []string{"316", "ss316", "316L", "1.4401", "S31600"}},
	{"grey-iron", []string{"gray iron", "cast iron", "grey cast iron", "gray cast iron", "GJL"}},
	{"ductile-iron", []string{"nodular iron", "spheroidal iron", "ductile cast iron", "GJS"}},
	{"copper", []string{"copper sheet", "C11000", "C12200"}},
	{"brass", []string{"C26000", "cartridge brass", "yellow brass"}},
	{"silicon-bronze", []string{"silicon bronze", "C65500"}},
	{"aluminium-bronze", []string{"aluminum bronze", "aluminium bronze", "C61400"}},
}

// coatingWords are the classes of EN 10346 with about the same mass (80 and 120 g/m2 on both sides, here 76 and
// 122), and those of EN 10152 with the same mass on both sides.
var coatingWords = []synonyms{
	{"ZE25/25", []string{"ZE25"}}, {"ZE50/50", []string{"ZE50"}}, {"ZE75/75", []string{"ZE75"}},
	{"ZE100/100", []string{"ZE100"}},
	{"T1-25", []string{"AS80", "AS080"}},
	{"T1-40", []string{"AS120"}},
}

var gasWords = []synonyms{
	{"argon", []string{"ar", "pure argon", "I1"}},
	{"argon-co2-2", []string{"argon 2", "2 % CO2", "M12"}},
	{"argon-co2-18", []string{"argon 18", "18 % CO2", "M21"}},
}

var backingWords = []synonyms{
	{"none", []string{"no backing", "open"}},
	{"copper-bar", []string{"copper", "bar", "chill bar", "backing bar"}},
	{"steel-strip", []string{"strip", "steel", "backing strip"}},
	{"patch", []string{"patched", "plate behind"}},
}

var optionWords = []synonyms{
	{"tee", []string{"fillet", "t joint"}},
	{"lap", []string{"lap joint", "overlap"}},
	{"butt", []string{"butt joint", "open root"}},
	{"overlay", []string{"build-up", "hardfacing", "cladding"}},
	{"plug", []string{"plug hole", "spot"}},
	{"dip", []string{"short circuit", "short circuiting", "short arc", "dip transfer"}},
	{"pulsed", []string{"pulse"}},
	{"timed", []string{"on-off", "stitch", "timer"}},
	{"horizontal", []string{"2F", "PB", "PC"}},
	{"flat", []string{"1G", "1F", "PA"}},
	{"vertical-up", []string{"uphill", "3G up", "PF"}},
	{"vertical-down", []string{"downhill", "3G down", "PG"}},
	{"overhead", []string{"4G", "PE", "PD"}},
}
