package tables

// Zinc as a coat: its melting and boiling points, its density and its vapour.
var (
	// ZincMelts is a fixed point of the temperature scale; the galvanizers' 419.5 C is the same value rounded.
	ZincMelts = constant("ZincMelts", 419.53, 419.5, 419.53, "C",
		memoryHigh("ITS-90, freezing point of zinc 419.527 C; 419.5 read in American Galvanizers Association, "+
			"properties of zinc"))

	// ZincBoils is at one atmosphere.
	ZincBoils = constant("ZincBoils", 907, 906.5, 907.5, "C",
		read("American Galvanizers Association, properties of zinc"))

	// ZincDensity: coating standards use 7.14 (ASTM A653) or 7.1 (EN 10346).
	ZincDensity = constant("ZincDensity", 7.14, 7.1, 7.14, "g/cm3",
		read("American Galvanizers Association, properties of zinc: 7140 kg/m3"))

	// ZincOxideRatio is the mass of zinc oxide fume per mass of burned zinc: 81.38/65.38.
	ZincOxideRatio = constant("ZincOxideRatio", 1.245, 1.2445, 1.2455, "1",
		worked("molar masses of ZnO 81.38 and Zn 65.38"))
)
