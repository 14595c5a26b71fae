package tables

// HardeningSteel holds what decides how hard a ferritic sheet becomes beside the seam: the mass fractions of
// its elements and the hardness that it can lose.
type HardeningSteel struct {
	Metal         string // its id; every coat of mild steel counts as mild-steel
	C, Si, Mn, Cr Datum  // % by mass; elements left out are too small to matter in these sheets
	Boron         bool   // alloyed with boron, which suppresses everything but martensite
	Hardness      Datum  // of the sheet as delivered or press-hardened, HV
}

// HardeningSteels are the ferritic sheets whose hardness beside the seam is computed. Compositions are those of
// typical casts within the standards; the band is that of the standard or of usual casts.
var HardeningSteels = []HardeningSteel{
	{Metal: "mild-steel",
		C: Datum{0.05, 0.02, 0.12, "%",
			memoryMedium("EN 10130 DC01, EN 10346 DX51D: C at most 0.12 and 0.18")},
		Si: Datum{0.02, 0, 0.3, "%", memoryMedium("EN 10346 DX51D: Si at most 0.50")},
		Mn: Datum{0.25, 0.15, 0.6, "%", memoryMedium("EN 10130 DC01: Mn at most 0.60")},
		Cr: Datum{0.03, 0, 0.1, "%", memoryLow("residual")},
		Hardness: Datum{105, 90, 130, "HV",
			worked("tensile strength of DC01 to DX51 over 3.2, ISO 18265 (memory high)")}},
	{Metal: "hsla",
		C:  Datum{0.08, 0.05, 0.12, "%", memoryMedium("EN 10268, EN 10149-2: C at most 0.12")},
		Si: Datum{0.1, 0, 0.5, "%", memoryMedium("EN 10268: Si at most 0.50")},
		Mn: Datum{0.9, 0.5, 1.5, "%", memoryMedium("EN 10268 and EN 10149-2: Mn at most 1.4 to 1.5")},
		Cr: Datum{0.03, 0, 0.1, "%", memoryLow("residual")},
		Hardness: Datum{145, 128, 170, "HV",
			worked("tensile strength of the grades over 3.2, ISO 18265 (memory high)")}},
	{Metal: "dp600",
		C:        Datum{0.10, 0.07, 0.15, "%", memoryMedium("EN 10338 HCT590X: C at most 0.15")},
		Si:       Datum{0.25, 0.1, 0.75, "%", memoryMedium("EN 10338 HCT590X: Si at most 0.75")},
		Mn:       Datum{1.6, 1.2, 2.2, "%", memoryMedium("EN 10338 HCT590X: Mn at most 2.5; usual casts")},
		Cr:       Datum{0.3, 0, 0.8, "%", memoryMedium("EN 10338: Cr + Mo at most 1.4; usual casts")},
		Hardness: Datum{190, 180, 220, "HV", worked("590 to 700 MPa over 3.2, ISO 18265 (memory high)")}},
	{Metal: "dp800",
		C:        Datum{0.14, 0.1, 0.18, "%", memoryMedium("EN 10338 HCT780X: C at most 0.18")},
		Si:       Datum{0.25, 0.1, 0.8, "%", memoryMedium("EN 10338 HCT780X: Si at most 0.80")},
		Mn:       Datum{1.8, 1.5, 2.5, "%", memoryMedium("EN 10338 HCT780X: Mn at most 2.5")},
		Cr:       Datum{0.3, 0, 1, "%", memoryMedium("EN 10338: Cr + Mo at most 1.4; usual casts")},
		Hardness: Datum{250, 235, 285, "HV", worked("780 to 900 MPa over 3.2, ISO 18265 (memory high)")}},
	{Metal: "dp1000",
		C:        Datum{0.15, 0.12, 0.2, "%", memoryMedium("EN 10338 HCT980X: C at most 0.20")},
		Si:       Datum{0.3, 0.1, 1, "%", memoryMedium("EN 10338 HCT980X: Si at most 1.00")},
		Mn:       Datum{2, 1.7, 2.9, "%", memoryMedium("EN 10338 HCT980X: Mn at most 2.9")},
		Cr:       Datum{0.3, 0, 1, "%", memoryMedium("EN 10338: Cr + Mo at most 1.4; usual casts")},
		Hardness: Datum{315, 295, 350, "HV", worked("980 to 1130 MPa over 3.2, ISO 18265 (memory high)")}},
	{Metal: "boron-steel", Boron: true,
		C: Datum{0.23, 0.19, 0.25, "%",
			memoryHigh("EN 10083-3, 20MnB5 and neighbours; 22MnB5: C 0.19 to 0.25")},
		Si:       Datum{0.25, 0.1, 0.4, "%", memoryHigh("22MnB5: Si at most 0.40")},
		Mn:       Datum{1.25, 1.1, 1.4, "%", memoryHigh("22MnB5: Mn 1.1 to 1.4")},
		Cr:       Datum{0.2, 0.1, 0.35, "%", memoryHigh("22MnB5: Cr at most 0.35")},
		Hardness: Datum{475, 420, 530, "HV", worked("1300 to 1650 MPa over 3.15, ISO 18265 (memory high)")}},
}

// SoftSheet is sheet that loses strength where the heat tempers it.
type SoftSheet struct {
	Metal string
	From  Datum // C: from here up to Ac1
	Left  Datum // hardness where it is softest, HV
}

// SoftSheets lists the sheets that lose strength where the heat tempers them.
var SoftSheets = Rows[SoftSheet]{
	{"dp600", dualPhaseSoftens,
		Datum{180, 165, 200, "HV", memoryMedium("published softening of dual-phase sheet: 5 to 10 % of DP600")}},
	{"dp800", dualPhaseSoftens,
		Datum{220, 195, 245, "HV", memoryMedium("published softening of dual-phase sheet: 8 to 20 % of DP780")}},
	{"dp1000", dualPhaseSoftens,
		Datum{245, 215, 280, "HV", memoryMedium("published softening of dual-phase sheet: 15 to 30 % of DP980")}},
	{"boron-steel", Datum{450, 350, 550, "C", memoryMedium("tempering of press-hardened 22MnB5 in seconds")},
		Datum{300, 250, 340, "HV", memoryMedium("published heat-affected zones of 22MnB5: softest 250 to 340 HV")}},
}

// dualPhaseSoftens is the temperature at which martensite tempers within the seconds that a seam takes.
var dualPhaseSoftens = Datum{450, 350, 550, "C", memoryMedium("published heat-affected zones of dual-phase sheet")}

var (
	// Ac1 is the temperature at which ferritic sheet begins to turn into austenite when a seam heats it: some
	// 30 to 80 K above the value for slow heating.
	Ac1 = constant("Ac1", 760, 720, 810, "C",
		worked("Andrews 1965 (memory high) for these sheets, plus 30 to 80 K for fast heating"))

	// BoronMartensite is the longest t8/5 after which boron steel is martensite throughout.
	BoronMartensite = constant("BoronMartensite", 11, 10, 12, "s",
		worked("22MnB5 hardens fully from 27 K/s (25 to 30; memory high): 300 K over it"))

	// CoolingStart is the warmest start of the parts for which a time from 800 to 500 C is given: nearer to 500 the
	// time grows without limit, and what the faces lose to the air, which its formula leaves out, decides. At 300 C a K
	// more is 1 % of the time.
	CoolingStart = constant("CoolingStart", 300, 300, 300, "C", practice)

	// HardnessForm is the error of either hardness formula itself, HV.
	HardnessForm = constant("HardnessForm", 0, -40, 40, "HV",
		memoryMedium("scatter of measured against computed hardness, Yurioka 1987"))

	// HardestAllowed is the hardness up to which a welding procedure is accepted without heat treatment.
	HardestAllowed = constant("HardestAllowed", 380, 380, 380, "HV",
		memoryHigh("ISO 15614-1, table of largest hardness, groups 1 and 2, HV10; written for welds"))
)

// Softening is the temperature at which a metal that was hardened by rolling or ageing becomes soft.
type Softening struct {
	Family Family
	From   Datum // C
	Note   string
}

// Softenings lists these temperatures for the metals that do not harden beside a seam.
var Softenings = []Softening{
	{CopperFam, Datum{300, 200, 400, "C",
		memoryMedium("ASM Handbook vol. 2: half-hard copper softens from 200 to 400 C in minutes")},
		"hard and half-hard copper is annealed beside the seam: count with the strength of soft copper there"},
	{BrassFam, Datum{400, 300, 500, "C",
		memoryMedium("ASM Handbook vol. 2: annealing of cartridge brass from 425 C; recrystallizes from 300")},
		"hard brass is annealed beside the seam: count with the strength of soft brass there"},
	{Bronze, Datum{450, 350, 550, "C",
		memoryMedium("ASM Handbook vol. 2: annealing of silicon and aluminium bronze from 475 to 700 C")},
		"hard bronze sheet is annealed beside the seam: count with its soft strength there"},
	{Stainless, Datum{700, 600, 800, "C",
		memoryMedium("cold-worked austenitic sheet recrystallizes from 600 to 800 C in seconds to minutes")},
		"only cold-rolled stainless sheet loses strength beside the seam; annealed sheet does not"},
}
