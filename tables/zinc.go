package tables

// Zinc as a coat: where it melts and boils, what it weighs, what its vapour becomes.
var (
	// ZincMelts is a fixed point of the temperature scale; the galvanizers' 419.5 C is the same rounded.
	ZincMelts = Datum{419.53, 419.5, 419.53, "C",
		memoryHigh("ITS-90, freezing point of zinc 419.527 C; 419.5 read in American Galvanizers " +
			"Association, properties of zinc")}

	// ZincBoils is at one atmosphere.
	ZincBoils = Datum{907, 906.5, 907.5, "C", read("American Galvanizers Association, properties of zinc")}

	// ZincDensity: coating standards count 7.14 (ASTM A653) or 7.1 (EN 10346).
	ZincDensity = Datum{7.14, 7.1, 7.14, "g/cm3",
		read("American Galvanizers Association, properties of zinc: 7140 kg/m3")}

	// ZincHeat and ZincConductivity are of the solid.
	ZincHeat         = Datum{0.382, 0.38, 0.39, "J/gK", read("American Galvanizers Association, properties of zinc")}
	ZincConductivity = Datum{0.113, 0.11, 0.116, "W/mmK",
		read("American Galvanizers Association, properties of zinc: 113 W/mK, solid")}

	// ZincFusion: two sources disagree, 100.9 (galvanizers) and 7.32 kJ/mol = 112 (also the CRC
	// Handbook's). The second is taken, since two collections of measurements agree on it.
	ZincFusion = Datum{112, 100.9, 112, "J/g", memoryHigh("CRC Handbook, enthalpy of fusion of zinc 7.32 kJ/mol")}

	// ZincVaporisation: 114.7 kJ/mol = 1755, 1782 (galvanizers), 475 kcal/kg = 1989. The middle one
	// is read and lies near the first; the third is carried as the high end.
	ZincVaporisation = Datum{1782, 1755, 1989, "J/g", read("American Galvanizers Association, properties of zinc")}

	// ZincToVapour is the heat from 20 C to vapour: 0.382·400 + 112 + 0.48·487 + 1782 = 2281, and
	// 2243 with the galvanizers' fusion and 1755. Liquid zinc's 0.48 J/gK is from memory.
	ZincToVapour = Datum{2260, 2240, 2490, "J/g",
		worked("zinc heated 20 to 907 C with the heats of fusion and vaporisation above")}

	// ZincOxideRatio is zinc oxide fume over the zinc that burns: 81.38/65.38.
	ZincOxideRatio = Datum{1.245, 1.2445, 1.2455, "1", worked("molar masses of ZnO 81.38 and Zn 65.38")}
)
