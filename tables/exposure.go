package tables

// Body is an organisation that sets exposure limits.
type Body string

// The bodies. A PEL is law in the United States; the others are advice and mostly stricter.
const (
	OSHA  Body = "OSHA PEL"
	NIOSH Body = "NIOSH REL"
	ACGIH Body = "ACGIH TLV"
)

// Span is the time over which an exposure limit is averaged.
type Span string

// The spans.
const (
	ShiftMean   Span = "8 h mean"
	ShortTerm   Span = "15 min"
	Ceiling     Span = "ceiling"
	ActionLevel Span = "action level"
	LifeDanger  Span = "immediately dangerous"
)

// ExposureLimit is one limit in air.
type ExposureLimit struct {
	Agent string // id: zinc-oxide copper manganese nickel aluminium lead chromium-vi iron-oxide tin ozone
	Name  string
	Body  Body
	Span  Span
	Limit Datum // mg/m3, or ppm for a gas
	Form  string
}

func limit(v float64, o Origin) Datum { return Datum{v, v, v, "mg/m3", o} }

// Documents that several limits come from.
var (
	zincDoc   = read("OSHA CH_277000; NIOSH NPGD0675")
	copperDoc = read("NIOSH 1317380; OSHA, 1 April 1999")
	mangDoc   = read("OSHA CH_250200")
	pelDoc    = read("NIOSH pel88; WAC 296-62")
	z1        = memoryHigh("29 CFR 1910.1000 Table Z-1")
	nioshRel  = memoryHigh("NIOSH Pocket Guide")
	acgihTLV  = memoryHigh("ACGIH threshold limit values")
)

// ExposureLimits lists every limit, by agent.
var ExposureLimits = []ExposureLimit{
	{"zinc-oxide", "zinc oxide fume", OSHA, ShiftMean, limit(5, zincDoc), "fume"},
	{"zinc-oxide", "zinc oxide fume", NIOSH, ShiftMean, limit(5, zincDoc), "fume"},
	{"zinc-oxide", "zinc oxide fume", NIOSH, ShortTerm, limit(10, zincDoc), "fume"},
	{"zinc-oxide", "zinc oxide fume", NIOSH, LifeDanger, limit(500, zincDoc), "fume"},
	// 2001; an older edition has 5 and 10.
	{"zinc-oxide", "zinc oxide fume", ACGIH, ShiftMean, limit(2, zincDoc), "respirable"},
	{"zinc-oxide", "zinc oxide fume", ACGIH, ShortTerm, limit(10, zincDoc), "respirable"},

	{"copper", "copper fume", OSHA, ShiftMean, limit(0.1, copperDoc), "fume"},
	{"copper", "copper fume", NIOSH, ShiftMean, limit(0.1, copperDoc), "fume; dust 1"},
	{"copper", "copper fume", ACGIH, ShiftMean, limit(0.2, copperDoc), "fume"},

	{"manganese", "manganese", OSHA, Ceiling, limit(5, mangDoc), "compounds as Mn"},
	{"manganese", "manganese", NIOSH, ShiftMean, limit(1, mangDoc), "fume as Mn"},
	{"manganese", "manganese", NIOSH, ShortTerm, limit(3, mangDoc), "fume as Mn"},
	{"manganese", "manganese", NIOSH, LifeDanger, limit(500, mangDoc), "fume as Mn"},
	// 2013; 0.2 before.
	{"manganese", "manganese", ACGIH, ShiftMean, limit(0.02, mangDoc), "respirable; 0.1 inhalable"},

	{"nickel", "nickel", OSHA, ShiftMean, limit(1, pelDoc), "metal and insoluble"},
	{"nickel", "nickel", NIOSH, ShiftMean, limit(0.015, nioshRel), "carcinogen"},
	{"nickel", "nickel", ACGIH, ShiftMean, limit(1.5, acgihTLV), "metal, inhalable; insoluble 0.2"},

	// A welding-fume limit of 5 was set in 1989 and vacated.
	{"aluminium", "aluminium", OSHA, ShiftMean, limit(5, z1), "respirable; total 15"},
	{"aluminium", "aluminium", NIOSH, ShiftMean, limit(5, pelDoc), "welding fume"},
	{"aluminium", "aluminium", ACGIH, ShiftMean, limit(1, acgihTLV), "respirable"},

	{"lead", "lead", OSHA, ShiftMean, limit(0.05, memoryHigh("29 CFR 1910.1025")), "as Pb"},
	{"lead", "lead", OSHA, ActionLevel, limit(0.03, memoryHigh("29 CFR 1910.1025")), "as Pb"},
	{"lead", "lead", NIOSH, ShiftMean, limit(0.05, nioshRel), "as Pb"},
	{"lead", "lead", ACGIH, ShiftMean, limit(0.05, acgihTLV), "as Pb"},

	{"chromium-vi", "chromium(VI)", OSHA, ShiftMean, limit(0.005, memoryHigh("29 CFR 1910.1026")), "as Cr"},
	{"chromium-vi", "chromium(VI)", OSHA, ActionLevel,
		limit(0.0025, read("WAC 296-62, state copy of 29 CFR 1910.1026")), "as Cr"},
	{"chromium-vi", "chromium(VI)", NIOSH, ShiftMean, limit(0.0002, nioshRel), "as Cr"},
	{"chromium-vi", "chromium(VI)", ACGIH, ShiftMean, limit(0.0002, memoryMedium("ACGIH threshold limit values")),
		"inhalable, as Cr"},

	{"iron-oxide", "iron oxide fume", OSHA, ShiftMean, limit(10, z1), "fume"},
	{"iron-oxide", "iron oxide fume", NIOSH, ShiftMean, limit(5, nioshRel), "as Fe"},
	{"iron-oxide", "iron oxide fume", ACGIH, ShiftMean, limit(5, acgihTLV), "respirable"},

	{"tin", "tin, inorganic", OSHA, ShiftMean, limit(2, z1), "as Sn"},
	{"tin", "tin, inorganic", NIOSH, ShiftMean, limit(2, nioshRel), "as Sn"},
	{"tin", "tin, inorganic", ACGIH, ShiftMean, limit(2, acgihTLV), "as Sn"},

	{"ozone", "ozone", OSHA, ShiftMean, Datum{0.1, 0.1, 0.1, "ppm", z1}, "gas"},
	{"ozone", "ozone", NIOSH, Ceiling, Datum{0.1, 0.1, 0.1, "ppm", nioshRel}, "gas"},
	{"ozone", "ozone", ACGIH, ShiftMean, Datum{0.05, 0.05, 0.2, "ppm", acgihTLV},
		"gas; 0.05 at heavy work, 0.2 at short"},
}
