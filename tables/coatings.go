package tables

// Masses are per side. A designation by both sides names the minimum of their sum in a triple-spot test: the
// value is half of that, and the low end is the minimum of one side. The high end is what EN 10346 allows for
// the local thickness of the nearest class, at 7.1 g/cm3. A coat is seldom thinner than ordered and often
// thicker.
//
// Beware of the suffix: 60G is 60 g/m2 on each side; G60 is 0.60 oz/ft2 on both sides together, 91.5 g/m2 each.
var (
	a653  = read("ASTM A653/A653M-15 Table 1; high end by the thickness range of EN 10346, from memory")
	e346  = memoryHigh("EN 10346, nominal thickness and range")
	a879  = read("GalvInfoNote 1.1, per-side designations")
	e152  = memoryHigh("EN 10152, nominal thickness; minimum from memory, medium")
	a463  = memoryHigh("ASTM A463 Type 1, both sides summed")
	bare  = worked("no coat")
	byZAF = read("ASTM A653/A653M-15 Table 1; high end as hot-dip zinc")
)

// Coatings lists every coating.
var Coatings = Rows[Coating]{
	{"none", "bare", NoCoat, Datum{0, 0, 0, "g/m2", bare}, false, "Nothing to burn off; take oil and scale away"},

	{"G30", "galvanized G30", HotDip, Datum{45.8, 30.5, 77, "g/m2", a653}, true, "0.30 oz/ft2 on both sides"},
	{"G40", "galvanized G40", HotDip, Datum{61.0, 36.6, 98, "g/m2", a653}, true, "0.40 oz/ft2 on both sides"},
	{"G60", "galvanized G60", HotDip, Datum{91.5, 61.0, 132, "g/m2", a653}, true, "0.60 oz/ft2 on both sides; not 60G"},
	{"G90", "galvanized G90", HotDip, Datum{137.3, 97.6, 192, "g/m2", a653}, true,
		"0.90 oz/ft2 on both sides; more than 15 um: try it first"},
	{"G115", "galvanized G115", HotDip, Datum{175.5, 122.1, 234, "g/m2", a653}, true,
		"1.15 oz/ft2 on both sides; more than 15 um: try it first"},

	{"Z90", "galvanized Z90", HotDip, Datum{45, 30, 76, "g/m2", a653}, true, "90 g/m2 on both sides"},
	{"Z100", "galvanized Z100", HotDip, Datum{50, 35.5, 85, "g/m2", e346}, true, "100 g/m2 on both sides, 7 um each"},
	{"Z120", "galvanized Z120", HotDip, Datum{60, 36, 96, "g/m2", a653}, true, "120 g/m2 on both sides"},
	{"Z140", "galvanized Z140", HotDip, Datum{70, 49.7, 107, "g/m2", e346}, true, "140 g/m2 on both sides, 10 um each"},
	{"Z180", "galvanized Z180", HotDip, Datum{90, 60, 130, "g/m2", a653}, true, "180 g/m2 on both sides"},
	{"Z200", "galvanized Z200", HotDip, Datum{100, 71, 142, "g/m2", e346}, true, "200 g/m2 on both sides, 14 um each"},
	{"Z225", "galvanized Z225", HotDip, Datum{112.5, 78.1, 156, "g/m2", e346}, true,
		"225 g/m2 on both sides, 16 um each: try it first"},
	{"Z275", "galvanized Z275", HotDip, Datum{137.5, 94, 192, "g/m2", a653}, true,
		"275 g/m2 on both sides, 20 um each: try it first"},
	{"Z350", "galvanized Z350", HotDip, Datum{175, 120, 234, "g/m2", a653}, true,
		"350 g/m2 on both sides, 25 um each: try it first"},

	{"A25", "galvannealed A25", Galvanneal, Datum{38.1, 24.4, 64, "g/m2", byZAF}, true, "0.25 oz/ft2 on both sides"},
	{"A40", "galvannealed A40", Galvanneal, Datum{61.0, 36.6, 98, "g/m2", byZAF}, true, "0.40 oz/ft2 on both sides"},
	{"A60", "galvannealed A60", Galvanneal, Datum{91.5, 61.0, 132, "g/m2", byZAF}, true, "0.60 oz/ft2 on both sides"},
	{"ZF75", "galvannealed ZF75", Galvanneal, Datum{37.5, 24, 64, "g/m2", byZAF}, true, "75 g/m2 on both sides"},
	{"ZF100", "galvannealed ZF100", Galvanneal, Datum{50, 35.5, 85, "g/m2", e346}, true,
		"100 g/m2 on both sides, 7 um each"},
	{"ZF120", "galvannealed ZF120", Galvanneal, Datum{60, 36, 96, "g/m2", byZAF}, true,
		"120 g/m2 on both sides, 8 um each"},
	{"ZF180", "galvannealed ZF180", Galvanneal, Datum{90, 60, 130, "g/m2", byZAF}, true, "180 g/m2 on both sides"},

	{"40G", "zinc 40G, each side", Electro, Datum{40, 40, 70, "g/m2", a879}, true, "40 g/m2 on each side; not G40"},
	{"60G", "zinc 60G, each side", HotDip, Datum{60, 60, 110, "g/m2", a879}, true, "60 g/m2 on each side; not G60"},
	{"45A", "galvannealed 45A, each side", Galvanneal, Datum{45, 45, 75, "g/m2", a879}, true, "45 g/m2 on each side"},

	{"ZE25/25", "electro-zinc ZE25/25", Electro, Datum{18, 12, 24, "g/m2", e152}, true, "2.5 um on each side"},
	{"ZE50/50", "electro-zinc ZE50/50", Electro, Datum{36, 29, 43, "g/m2", e152}, true, "5 um on each side"},
	{"ZE75/75", "electro-zinc ZE75/75", Electro, Datum{54, 47, 61, "g/m2", e152}, true, "7.5 um on each side"},
	{"ZE100/100", "electro-zinc ZE100/100", Electro, Datum{72, 65, 79, "g/m2", e152}, true, "10 um on each side"},

	{"T1-25", "aluminized T1-25", AluSilicon, Datum{38.1, 30, 53, "g/m2", a463}, false,
		"0.25 oz/ft2 on both sides; melts at 577 to 630 C, no zinc"},
	{"T1-40", "aluminized T1-40", AluSilicon, Datum{61.0, 45, 85, "g/m2", a463}, false,
		"0.40 oz/ft2 on both sides; melts at 577 to 630 C, no zinc"},
}

// CoatingTrial is the zinc thickness up to which arc brazing is easy; thicker coats need trials.
var CoatingTrial = constant("CoatingTrial", 15, 15, 15, "um", memoryMedium("DVS 0938-2"))
