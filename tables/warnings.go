package tables

// WarningLine is the wording of one warning: first what to do, then why.
type WarningLine struct {
	Code, Severity, Text string
	Origin
}

// Warnings are the warnings whose words do not depend on the job's numbers.
var Warnings = Rows[WarningLine]{
	{"stops", "caution", "Stop if it held fuel, oil or chemicals, is sealed, holds pressure or gas, has cadmium, " +
		"lead or beryllium, or is in a confined space: argon drives out air.",
		memoryHigh("29 CFR 1910.252(a)(3) and (c)(4), 1910.146")},
	{"shock", "caution", "Electric shock kills: dry gloves without holes, dry clothes and footing, whole cables and " +
		"gun; no arc in the rain or on a wet yard.",
		memoryHigh("IEC 60974-9; ANSI Z49.1")},
	{"test-bead", "info", "Strike a test bead on scrap of the same sheet first, and peel it.", practice},
	{"brass", "stop", "Do not arc braze brass sheet: it melts below every bronze filler and boils off zinc. " +
		"Use silver brazing or soft solder.",
		read("C26000 alloy data: solidus 916 C, 30 % zinc")},
	{"boron-steel", "stop", "Press-hardened steel: only by the vehicle or equipment maker's repair procedure. " +
		"Heat softens it and its zinc embrittles it.", practice},
	{"high-strength", "caution", "High-strength steel: keep it unclamped while hot and the heat low; liquid copper " +
		"gets into stressed grain boundaries. In a vehicle's crash structure only by the maker's procedure.",
		read("abstract of doi 10.1088/2053-1591/ab4835")},
	{"cast-iron", "caution", "Cast iron cracks: clean to bright metal, warm it, lay short beads, peen, cool slowly. " +
		"Not for a firebox, door, flue or grate, and not structural.",
		read("US Army TM 9-237; the rest common practice")},
	{"melts-with-filler", "caution", "This base metal melts at about the filler's own temperature: this is welding, " +
		"not brazing. Expect the base to melt; use a filler for that alloy.",
		read("C65500 and C61400 alloy data")},
	{"copper-penetration", "caution", "Stainless: leave it unclamped and unstressed while hot. Liquid copper runs " +
		"into stressed grain boundaries and cracks it.",
		read("Savage, Nippes and Mushala 1978; abstract of doi 10.1080/02670836.2021.1929718")},
	{"stainless-filler", "info",
		"On stainless an aluminium bronze wire is the safer choice against copper penetration.",
		read("abstract of doi 10.1080/02670836.2021.1929718")},
	{"weld-braze", "caution", "A weld-braze: where this filler wets, the skin of this metal melts, so “base stays " +
		"solid” is not judged. Take the coldest setting that wets.",
		worked("cross-sections: the peak under a bead that just wets lies over this metal's solidus")},
	{"weld-braze-iron", "caution", "Iron whose skin melted freezes hard there.", practice},
	{"edge-folded", "info", "An edge joint is computed as a butt whose sheets are folded up: what the arc loses past " +
		"thin edges, and how far bronze runs down the faces, no test has checked. Saw the test bead.",
		worked("two fins that share the heat by thickness and effusivity")},
	{"preheat-never", "caution", "Never preheat over zinc, paint or a lining, nor anything closed: strip them back " +
		"first, and open or vent what is hollow. Warm iron and copper look no hotter than cold.", practice},
	{"zinc-vent", "info",
		"Zinc between lapped sheets has to get out: leave up to 0.1 mm between them, or expect pores and spatter.",
		read("a text on laser joining of zinc-coated laps")},
	{"zinc-on-stainless", "stop",
		"Strip the zinc at least 25 mm back before joining to stainless: hot zinc embrittles stainless.", practice},
	{"zinc-under-overlay", "stop", "Strip the zinc at least 25 mm back before an overlay, then give the sheet as " +
		"bare: zinc that boils under a build-up smokes, spits and fills it with pores.", practice},
	{"overhead", "caution", "Overhead: hot drops fall on you. Leather sleeves, cap, collar closed, nobody below. " +
		"Whether the bead hangs is a balance of forces that no test has checked.", practice},
	{"vertical-down", "info", "Vertical down: keep ahead of the puddle and check on the test bead that both toes " +
		"wet. Whether it runs is a balance of forces that no test has checked.", practice},
	{"vertical-up", "info", "Vertical up: build on the frozen shelf, each drop on one that is solid. Whether the " +
		"shelf carries the puddle is a balance of forces that no test has checked.", practice},
	{"horizontal", "info", "Horizontal: aim a little higher, the bead sags to the lower member. Whether it stays is " +
		"a balance of forces that no test has checked.", practice},
	{"copper-bar", "info", "Copper bar behind the root: flat, clean and clamped tight from end to end, or it neither " +
		"cools nor carries. The setting is for this bar: without it the sheet gets hotter.", practice},
	{"steel-strip", "info", "Steel strip behind the root, of the sheet's own metal and thickness, taken as lying " +
		"tight: the bronze must wet it through the gap. It stays on, with a crevice behind it.", practice},
	{"patch", "info", "A patch behind the opening makes two laps: this card is one of them, sheet on patch, each " +
		"with a bead of its own. The root opening no longer matters.", practice},
	{"backing-unused", "info", "Backing is for a butt. Here it is left out.", practice},
	{"unequal", "info", "Point the arc at the thicker member and let the bead wash onto the thinner one.", practice},
	{"zinc-fume", "caution", "Extraction on, head out of the plume, respirator: zinc fume gives metal fume fever. " +
		"Breathlessness, chest pain or fever that lasts: see a doctor.",
		read("29 CFR 1910.252(c); zinc oxide limits OSHA CH_277000, NIOSH")},
	{"bronze-fume", "caution",
		"Copper fume has the tightest limit here, 0.1 mg/m³: extraction on, head out of the plume.",
		read("29 CFR 1910.1000 Table Z-1, as in NIOSH 1317380")},
	{"manganese-fume", "caution", "This wire gives manganese fume: local extraction and a respirator fitted for it. " +
		"Long exposure harms the nerves.",
		read("manganese limits, OSHA CH_250200")},
	{"chromium-fume", "caution", "Stainless gives off chromium(VI) when it gets too hot: extraction at the joint, " +
		"no melting of the base.",
		memoryHigh("29 CFR 1910.1026")},
	{"steel-filler", "caution", "Steel wire is here only for comparison: this is fusion welding, and a bronze " +
		"settings card does not fit it. Its heat and current are shown.", practice},
	{"unfitted-filler", "info",
		"No current was fitted for this filler: its band is wider. Read the amps on the first bead.",
		worked("calibration voltage widened to 20 % where none was fitted")},
	{"timed-estimate", "caution", "On and off times are a line-source estimate, within about a factor of two: " +
		"try them on scrap with the same gap.",
		worked("line-source estimate; published times for arc brazing were not found")},
	{"timed-closed", "caution",
		"These times are for a closed joint: over a gap, even of 2 mm, other times are needed. Give the joint as a " +
			"butt and its gap.",
		worked("the timed arc computed over an open root and over none")},
	{"timed-no-gap", "info", "Timed arc without a gap: the step is set by the puddle alone.", practice},
	{"beat-unused", "info", "Arc on, arc off and spot step belong to a timed arc: the ones given were left out. " +
		"Mode timed takes them.", practice},
	{"fire", "caution", "Clear or cover what burns within 11 m (35 ft), both sides of a wall; fire watch 60 min " +
		"after, extinguisher at hand.",
		read("29 CFR 1910.252(a); NFPA 51B-2019")},
	{"solvent", "caution", "Never a chlorinated solvent or brake cleaner near the arc: its vapour turns to phosgene. " +
		"Take cans and rags away.", practice},
	{"strength", "info", "Bronze is weaker than steel weld. Structural, lifting, pressure or vehicle work needs a " +
		"qualified procedure and person; local codes and licensed practice decide.",
		memoryHigh("AWS A5.7 guide tensile strengths")},
}

// NoteLine is the wording of one setting that is a word and not a number.
type NoteLine struct {
	Code, Name, Text string
	Origin
}

// Notes lists these settings.
var Notes = Rows[NoteLine]{
	{"polarity", "polarity", "DC, gun positive (DCEP)", memoryHigh("AWS Welding Handbook, gas metal arc")},
	{"gun-angle", "gun angle", "push 10–20°, do not drag: steadier arc, less heat", practice},
	{"inductance-more", "inductance", "more: quieter arc, the bead washes into both toes; back off if the wire stubs",
		practice},
	{"inductance-middle", "inductance",
		"start in the middle; more quiets the arc and wets better, less if the wire stubs", practice},
	{"inductance-less", "inductance", "less: this low a current stubs and starts cold with more", practice},
	{"inductance-pulsed", "inductance", "leave it: a pulsed waveform sets its own", practice},
}

// Danger is a warning of what can injure a welder at the arc, in the few words that fit a small screen.
type Danger struct {
	Code   string // of the warning that says it in full
	Word   string
	Short  string   // a shorter form of Word; "" for none
	More   []string // what else the warning is about, shown if there is room
	Deadly bool     // kills at once; shown first
	Fume   bool     // Word is what the plume carries; "fume" is appended
}

// Dangers are in the order in which they are shown: first what kills at once, then fume, because it cannot be
// seen.
var Dangers = []Danger{
	{"stops", "closed vessels", "vessels", []string{"confined spaces", "cadmium"}, true, false},
	{"shock", "shock", "", nil, true, false},
	{"zinc-fume", "zinc", "", nil, false, true},
	{"manganese-fume", "manganese", "", nil, false, true},
	{"chromium-fume", "chromium", "", nil, false, true},
	{"bronze-fume", "copper", "", nil, false, true},
	{"solvent", "solvents", "", nil, false, false},
	{"fire", "fire", "", nil, false, false},
	{"eyes", "arc rays", "", nil, false, false},
	{"overhead", "hot drops", "", nil, false, false},
}
