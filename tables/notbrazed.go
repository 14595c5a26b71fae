package tables

import (
	"errors"
	"math"
	"regexp"
	"slices"
	"strings"
	"sync"

	"brazebooth/internal/mistake"
)

// ErrNotBrazed is the cause of the error for a name that is known but has no row.
var ErrNotBrazed = errors.New("not brazed here")

// notBrazedRow is a metal or a coat that people bring but that has no row here: why, and what to do instead.
type notBrazedRow struct {
	ID    string
	words []string // its names, folded; alloy numbers without their temper
	Why   string   // a clause that follows the name
	Origin
	Instead string
}

var notBrazed = [...]notBrazedRow{
	{"aluminium", []string{"al", "aluminium", "aluminum", "alusheet",
		"1100", "1200", "2017", "2024", "3003", "3004", "3105", "5005", "5052", "5083", "5086", "5251", "5454", "5754",
		"6005", "6060", "6061", "6063", "6082", "7020", "7075",
		"almg3", "alsi1", "almgsi", "aw1050", "aw1060", "al1050", "al1060"},
		"aluminium melts at 660 °C or less, under every bronze wire",
		memoryHigh("CRC Handbook, melting point of aluminium 660.3 C"),
		"weld it with aluminium wire, a process of its own; coated steel is aluminized"},
	{"zinc", []string{"zinc", "zincsheet", "zincalloy", "potmetal", "zamak", "mazak"},
		"zinc melts at 420 °C and boils at 907 °C, under every bronze wire",
		read("American Galvanizers Association, properties of zinc"),
		"solder it; for coated steel type galvanized or electro-zinc"},
	{"al-zn", []string{"az", "alzn", "55alzn", "aluminiumzinc", "aluminumzinc", "a792"},
		"a coat of 55 % aluminium with 43 % zinc (AZ) is not computed: it melts near 600 °C and its zinc " +
			"still boils off",
		memoryMedium("ASTM A792, EN 10346: 55 % Al, 43.4 % Zn, 1.6 % Si, melts 570 to 600 C"),
		"try aluminized on scrap, with a respirator on"},
	{"zn-mg", []string{"zm", "znmg", "znalmg", "zincmagnesium"},
		"a coat of zinc with magnesium and aluminium (ZM) is not computed: it melts near 350 °C and its zinc boils " +
			"off as any zinc does",
		memoryMedium("EN 10346: 0.5 to 8 % Al and Mg, rest Zn; eutectics of zinc, aluminium and magnesium 335 to " +
			"380 C"),
		"try galvanized of the same mass on scrap, with extraction and a respirator on"},
	{"zn-ni", []string{"znni", "zincnickel", "nickelzinc", "zincnickelplated"},
		"a coat of zinc with nickel is not computed: both get into the fume, and nickel's can cause cancer",
		memoryMedium("ISO 19598, 12 to 16 % Ni; IARC Monographs vol. 100C, nickel compounds"),
		"take a part without it, or have it stripped chemically and type mild-steel"},
	{"ferritic-stainless", []string{"430", "ss430", "aisi430", "stainless430", "stainlesssteel430", "14016",
		"409", "ss409", "aisi409", "stainless409", "14512", "439", "stainless439", "14510", "441", "stainless441",
		"14509", "444", "stainless444", "14521", "410", "ss410", "stainless410", "14006", "420", "ss420",
		"stainless420",
		"14021", "ferritic", "ferriticstainless", "magneticstainless"},
		"a ferritic or hardening stainless steel is not computed: it carries heat off better than 304, and its grain " +
			"grows coarse and brittle, or it hardens, beside the bead",
		memoryMedium("EN 10088-1, conductivity 25 W/mK of 1.4016 and 15 of 1.4301; ASM Handbook vol. 6"),
		"strike test beads on scrap and bend them; its heat lies between the cards of mild-steel and stainless-304"},
	{"titanium", []string{"titanium", "ti", "titan", "ti6al4v"},
		"titanium makes brittle compounds with copper and takes up air as soon as it is hot: no bronze holds on it",
		memoryHigh("ASM Handbook vol. 6, welding and brazing of titanium"),
		"weld it with titanium wire and TIG, argon on both faces"},
	{"hardening-steel", []string{"toolsteel", "springsteel", "spring", "carbonsteel", "highcarbonsteel", "silversteel",
		"4130", "4140", "4340", "5160", "1045", "1060", "1095", "c45", "c60", "42crmo4", "25crmo4", "51crv4", "w1",
		"o1"},
		"steel that hardens cracks beside the bead, or is left soft there, which is not computed",
		memoryMedium("EN 1011-2; ASM Handbook vol. 6, hardenable carbon and alloy steels"),
		"ask who knows the grade: preheat and cooling by its data sheet, or bolt it; a soft shaft is mild-steel"},
	{"magnesium", []string{"magnesium", "mg", "az31", "az31b", "az61", "az91", "az91d", "am60"},
		"magnesium melts at 650 °C or less, under every bronze wire, and burns with a fire that water feeds",
		memoryHigh("CRC Handbook, melting point of magnesium 650 C; NFPA 484"),
		"do not heat it here; it is welded with magnesium rod and TIG, where its fire can be fought"},
	stopRow("cadmium", "cadmium", "cd", "cadmiumplated", "cadmiumplating", "yellowcadmium"),
	stopRow("lead-paint", "lead", "pb", "leadpaint", "leadcoated", "terne", "ternecoated", "terneplated"),
	stopRow("leaded-bronze", "leadedbronze", "leadbronze", "leadtinbronze", "bearingbronze", "c93200", "c93700",
		"c54400"),
	stopRow("beryllium", "beryllium", "be", "berylliumcopper", "berylliumbronze", "becopper", "becu", "cube", "cube2",
		"c17000", "c17200", "c17500", "c17510"),
}

// stopRow returns the row of a metal or coat that stops a job, in the words of its hazard.
func stopRow(hazard string, words ...string) notBrazedRow {
	h, _ := Hazards.ByID(hazard)
	word := hazard
	if strings.HasPrefix(hazard, "lead") {
		word = "lead"
	}
	lower := func(s string) string { return strings.ToLower(s[:1]) + s[1:] }
	why := h.Why
	if strings.HasPrefix(why, "Its") {
		why = lower(why)
	}
	return notBrazedRow{hazard, words, "stop: " + why, h.Origin, lower(h.Instead) + "; see the hazard " + word}
}

// refused returns the error for a name that means such a metal or coat by a rule, and nil for any other.
func refused(text string, means func(n *notBrazedRow, key string) bool) *mistake.Error {
	key := fold(text)
	for i := range notBrazed {
		if n := &notBrazed[i]; means(n, key) {
			return &mistake.Error{What: quoted(text) + " has no card here: " + n.Why, Hint: n.Instead,
				Cause: ErrNotBrazed}
		}
	}
	return nil
}

// named reports whether a folded name means this metal: a whole name of it, also followed by "sheet" and the
// like, an alloy with its temper, or a beginning of "aluminium". The beginning is checked before the metals
// because "aluminium bronze" begins like it.
func (n *notBrazedRow) named(key string) bool {
	for _, tail := range [...]string{"sheet", "plate", "alloy"} {
		key = strings.TrimSuffix(key, tail)
	}
	if slices.Contains(n.words, key) || coatClassRow(key) == n.ID {
		return true
	}
	if n.ID != "aluminium" {
		return false
	}
	m := alloy().FindStringSubmatch(key)
	return len(key) >= 3 && (strings.HasPrefix("aluminium", key) || strings.HasPrefix("aluminum", key)) ||
		m != nil && slices.Contains(n.words, m[1])
}

// coatClassRow returns the row's id for a class of coat: AZ or ZM with its mass in g/m2 in steps of 5. It returns
// "" for any other name, such as AZ31, which is a magnesium alloy.
func coatClassRow(key string) string {
	kind, mass, ok := classOf(key)
	switch {
	case !ok || mass < 30 || math.Mod(mass, 5) != 0:
	case kind == "az":
		return "al-zn"
	case kind == "zm":
		return "zn-mg"
	}
	return ""
}

// alloy is an aluminium alloy's number with or without its prefix (EN AW, AA, Al) and its temper.
var alloy = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^(?:alloy)?(?:en)?(?:aw)?(?:aa)?(?:alumini?um|al)?(\d{4})` +
		`(?:[fhot]\d*)?(?:alumini?um|alu)?$`)
})

// mistyped reports whether a folded name is this metal's with a small typing error.
func (n *notBrazedRow) mistyped(key string) bool {
	return slices.ContainsFunc(n.words, func(w string) bool { return slipped(key, w) })
}
