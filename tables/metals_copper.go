package tables

// Copper and its alloys, sold by Brown & Sharpe gauge.

var copper = Metal{
	ID: "copper", Name: "copper", Family: CopperFam, System: BS, Coating: "none",
	Conductivity: Datum{0.350, 0.330, 0.390, "W/mmK",
		read("open alloy database, 340 to 390 W/mK cold; Kou, Welding Metallurgy, Table 2.1, 0.384, from memory")},
	// 385 J/kgK cold gives 0.0034; copper's specific heat rises by a fifth up to melting; Kou prints 0.0040.
	HeatCapacity: Datum{0.0038, 0.0034, 0.0040, "J/mm3K",
		worked("mean 425 J/kgK to 1000 C times 8.94 g/cm3; Kou, Welding Metallurgy, Table 2.1, 0.0040")},
	Density: Datum{8.94, 8.89, 8.94, "g/cm3",
		read("open alloy database; 8.89 is the resistivity standard's, NBS Circular 31")},
	// Phosphorus-deoxidized copper; tough-pitch copper starts at its oxide eutectic, 1065.
	Solidus: Datum{1083, 1065, 1085, "C",
		read("C12200 alloy page; low end the copper-oxide eutectic of tough-pitch copper, from memory")},
	Liquidus:   Datum{1083, 1083, 1085, "C", read("C12200 alloy page")},
	Latent:     Datum{205, 204, 209, "J/g", memoryHigh("CRC Handbook, enthalpy of fusion of copper")},
	Tensile:    Datum{220, 200, 360, "MPa", read("open alloy database, by temper")},
	Emissivity: Datum{0.3, 0.05, 0.57, "1", read("emissivity tables: copper polished 0.05, heated to 600 C 0.57")},
	Note:       "Draws heat away fast; preheat, and expect a narrow range",
}

var brass = Metal{
	ID: "brass", Name: "brass sheet, 70/30", Family: BrassFam, System: BS, Coating: "none",
	Conductivity: Datum{0.121, 0.115, 0.150, "W/mmK", read("C26000 alloy data: 120 to 121 W/mK cold, more when hot")},
	HeatCapacity: Datum{0.0035, 0.0032, 0.0038, "J/mm3K",
		worked("377 to 390 J/kgK cold, read, a tenth more to melting, times 8.53 g/cm3")},
	Density:    Datum{8.53, 8.50, 8.53, "g/cm3", read("C26000 alloy data")},
	Solidus:    Datum{916, 910, 920, "C", read("C26000 alloy page")},
	Liquidus:   Datum{954, 950, 955, "C", read("C26000 alloy page")},
	Latent:     Datum{177, 165, 185, "J/g", worked("mixture rule over copper 205 and zinc 112")},
	Tensile:    Datum{340, 303, 680, "MPa", read("C26000 alloy page, by temper")},
	Emissivity: Datum{0.22, 0.2, 0.6, "1", read("emissivity tables: dull brass 0.22; high end oxidized, from memory")},
	Note:       "Not to be arc brazed: it melts below every bronze wire and boils zinc",
}

var siliconBronze = Metal{
	ID: "silicon-bronze", Name: "silicon bronze sheet C65500", Family: Bronze, System: BS, Coating: "none",
	// 36 W/mK cold; by the Wiedemann-Franz law about 0.09 near melting.
	Conductivity: Datum{0.055, 0.036, 0.090, "W/mmK",
		worked("C65500 alloy data page at 20 C and the Wiedemann-Franz law to 1000 C")},
	HeatCapacity: Datum{0.0037, 0.0033, 0.0040, "J/mm3K",
		worked("mean of 390 cold and 470 J/kgK near melting, times 8.53 g/cm3")},
	Density:    Datum{8.53, 8.50, 8.56, "g/cm3", read("C65500 alloy data page")},
	Solidus:    Datum{970, 910, 970, "C", read("C65500 alloy data page")},
	Liquidus:   Datum{1025, 1025, 1027, "C", read("C65500 alloy data page")},
	Latent:     Datum{210, 200, 260, "J/g", memoryMedium("heat of fusion of copper-silicon alloys")},
	Tensile:    Datum{400, 385, 450, "MPa", read("C65500 alloy data page")},
	Emissivity: Datum{0.45, 0.3, 0.6, "1", memoryLow("emissivity tables: bronzes")},
	Note:       "Silicon bronze wire melts with it: that is welding",
}

var aluminiumBronze = Metal{
	ID: "aluminium-bronze", Name: "aluminium bronze sheet C61400", Family: Bronze, System: BS, Coating: "none",
	// 67 W/mK cold; by the Wiedemann-Franz law about 0.13 near melting.
	Conductivity: Datum{0.090, 0.067, 0.130, "W/mmK",
		worked("C61400 alloy page at 20 C and the Wiedemann-Franz law to 1000 C")},
	HeatCapacity: Datum{0.0037, 0.0031, 0.0041, "J/mm3K",
		worked("377 to 420 J/kgK cold, read, and 520 near melting, times 7.89 g/cm3")},
	Density:    Datum{7.89, 7.85, 7.92, "g/cm3", read("C61400 alloy data page")},
	Solidus:    Datum{1040, 1037, 1043, "C", read("C61400 alloy page")},
	Liquidus:   Datum{1047, 1045, 1050, "C", read("C61400 alloy page")},
	Latent:     Datum{220, 215, 235, "J/g", worked("mixture rule over copper, aluminium and iron")},
	Tensile:    Datum{550, 540, 570, "MPa", read("C61400 alloy page")},
	Emissivity: Datum{0.5, 0.3, 0.6, "1", memoryLow("emissivity tables: bronzes")},
	Note:       "Aluminium bronze wire melts with it: that is welding",
}
