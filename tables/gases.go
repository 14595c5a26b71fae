package tables

// usualFlow is the flow for a bronze bead out of a draught: 25 to 40 cfh.
var usualFlow = Datum{12, 11.8, 18.9, "L/min",
	read("trade magazine 2016: about 25 cfh, 12 L/min; high end 40 cfh of welding handbooks, from memory")}

// Gases lists every gas, the refused one last.
var Gases = Rows[Gas]{
	{ID: "argon", Name: "argon", Flow: usualFlow,
		Density: Datum{1.662, 1.661, 1.663, "kg/m3", read("argon tables, 20 C, 1 atm")},
		Note:    "The usual gas for bronze wire",
		Origin:  read("trade magazine 2016, gas metal arc brazing")},
	{ID: "argon-co2-2", Name: "argon with about 2 % CO2", Flow: usualFlow,
		Density: Datum{1.666, 1.662, 1.667, "kg/m3",
			worked("mixture of argon 1.662 and carbon dioxide 1.842 kg/m3, 1 to 3 %")},
		Note:   "Gave acceptable settings on 0.8 mm zinc-coated sheet; darker bead. Argon alone first",
		Origin: read("UFRJ thesis 2005, abstract")},
	{ID: "argon-co2-18", Name: "argon with 18 % CO2", Flow: usualFlow, Refused: true,
		Density: Datum{1.694, 1.688, 1.700, "kg/m3",
			worked("mixture of argon 1.662 and carbon dioxide 1.842 kg/m3, 15 to 21 %")},
		Note:   "Not for bronze wire: pores, cracks and a melted base. Change the bottle to argon",
		Origin: read("Technologies 2025 13(11):525, aluminium bronze overlays")},
}

// Argon in the nozzle, and how it is sold.
var (
	// ArgonViscosity at 20 C.
	ArgonViscosity = constant("ArgonViscosity", 2.23e-5, 2.20e-5, 2.27e-5, "Pa s",
		memoryHigh("CRC Handbook, viscosity of gases"))

	// LaminarReynolds is where pipe flow stops being laminar: a higher gas flow draws air in.
	LaminarReynolds = constant("LaminarReynolds", 2300, 2000, 2300, "1",
		memoryHigh("fluid mechanics textbooks, transition in a round pipe"))

	// UsualBore is the nozzle bore that is assumed if none is given, 1/2 in.
	UsualBore = constant("UsualBore", 12.7, 9.5, 16, "mm", practice)

	// ArgonSpecificGravity is the density of argon relative to air: argon sinks and fills a pit.
	ArgonSpecificGravity = constant("ArgonSpecificGravity", 1.38, 1.375, 1.385, "1", read("argon tables"))
)

// Cylinder is one usual argon cylinder.
type Cylinder struct {
	ID     string
	Volume Datum // m3 of gas at 20 C, 1 atm
}

// Cylinders lists them by size, without prices, which the user enters.
var Cylinders = []Cylinder{
	{"40 ft3", Datum{1.13, 1.0, 1.2, "m3", memoryMedium("United States gas trade, nominal")}},
	{"80 ft3", Datum{2.27, 2.1, 2.4, "m3", memoryMedium("United States gas trade, nominal")}},
	{"125 ft3", Datum{3.54, 3.3, 3.7, "m3", memoryMedium("United States gas trade, nominal")}},
	{"250 ft3 (K, S)", Datum{7.1, 7.0, 7.9, "m3", memoryMedium("United States gas trade, 250 to 280 ft3")}},
	{"336 ft3 (T, 300)", Datum{9.5, 9.3, 9.7, "m3",
		memoryMedium("United States gas trade, about 336 ft3 at 2640 psig")}},
	{"20 L 200 bar", Datum{4.2, 4.0, 4.3, "m3", memoryMedium("European gas trade")}},
	{"50 L 200 bar", Datum{10.6, 10.0, 10.7, "m3", memoryMedium("European gas trade")}},
}
