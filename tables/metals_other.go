package tables

// Stainless and cast iron.

// Two means disagree: 0.021 from EN 1993-1-2 and 0.0249 in Kou. The first agrees with the data sheet's measured
// 16.2 at 20 C and 21.5 at 500 C.
var (
	austeniteConductivity = Datum{0.021, 0.020, 0.025, "W/mmK",
		memoryHigh("EN 1993-1-2:2005 Annex C, 14.6 + 0.0127·T; Kou, Welding Metallurgy, Table 2.1, 0.0249")}
	austeniteHeatCapacity = Datum{0.0042, 0.0040, 0.0047, "J/mm3K",
		worked("EN 1993-1-2:2005 Annex C, mean 530 J/kgK, times 7.93 g/cm3; Kou, Welding Metallurgy, Table 2.1, " +
			"0.0047")}
	austeniteDensity    = Datum{7.93, 7.90, 8.00, "g/cm3", read("AISI 304 data sheets, 7.9 to 8.0")}
	austeniteLatent     = Datum{270, 250, 300, "J/g", memoryLow("heat of fusion of austenitic stainless steel")}
	austeniteEmissivity = Datum{0.4, 0.2, 0.85, "1",
		memoryHigh("EN 1993-1-2:2005 2.2, stainless 0.4; clean 0.2 to 0.3, oxidized 0.85")}
)

// austenite is austenitic stainless sheet, whose heat flow does not depend on the grade.
func austenite(id, name string, solidus, liquidus, tensile Datum, note string) Metal {
	return Metal{
		ID: id, Name: name, Family: Stainless, System: USSG, Coating: "none",
		Conductivity: austeniteConductivity, HeatCapacity: austeniteHeatCapacity, Density: austeniteDensity,
		Solidus: solidus, Liquidus: liquidus, Latent: austeniteLatent,
		Tensile: tensile, Emissivity: austeniteEmissivity, Note: note,
	}
}

var (
	stainless304 = austenite("stainless-304", "stainless steel 304",
		Datum{1400, 1395, 1420, "C", read("AISI 304 data sheet, melting range 1400 to 1455")},
		Datum{1455, 1440, 1455, "C", read("AISI 304 data sheet, melting range 1400 to 1455")},
		Datum{515, 505, 590, "MPa", memoryHigh("ASTM A240, minimum; data sheets 505 to 590 read")},
		"Unclamped while hot: liquid copper cracks stressed stainless")
	stainless316 = austenite("stainless-316", "stainless steel 316",
		Datum{1375, 1370, 1390, "C", read("AISI 316 data sheet, melting range 1375 to 1400")},
		Datum{1400, 1400, 1420, "C", read("AISI 316 data sheet, melting range 1375 to 1400")},
		Datum{515, 505, 590, "MPa", memoryHigh("ASTM A240, minimum")},
		"As 304, melts a little sooner")
)

var greyIron = Metal{
	ID: "grey-iron", Name: "grey cast iron", Family: CastIron, System: MSG, Coating: "none",
	Conductivity: Datum{0.040, 0.034, 0.048, "W/mmK",
		memoryLow("46 W/mK at 20 C read in an open alloy database, less when hot")},
	HeatCapacity: Datum{0.0043, 0.0036, 0.0050, "J/mm3K",
		memoryLow("mean 600 J/kgK, 450 to 490 at 20 C read, times 7.2 g/cm3")},
	// An older page prints 7.2, a newer one 7.5, which no grey iron reaches.
	Density: Datum{7.20, 7.10, 7.30, "g/cm3", read("open alloy database, EN-GJL-250, older page")},
	// The eutectic of the casting's own iron. A page with 1180 and 1380 is too high for it and is not used.
	// The caution begins at the low end.
	Solidus:  Datum{1130, 1100, 1160, "C", memoryMedium("iron-carbon-silicon diagram, eutectic of grey iron")},
	Liquidus: Datum{1200, 1160, 1250, "C", memoryMedium("iron-carbon-silicon diagram, hypoeutectic grey iron")},
	Latent:   Datum{240, 210, 270, "J/g", memoryLow("heat of fusion of grey iron")},
	Tensile:  Datum{250, 250, 350, "MPa", read("open alloy database, EN-GJL-250")},
	Emissivity: Datum{0.75, 0.64, 0.95, "1",
		read("emissivity tables: cast iron oxidized 0.64 to 0.78, unworked hot 0.87 to 0.95")},
	Note: "Cracks: warm it, short beads, peen, cool slowly",
}

var ductileIron = Metal{
	ID: "ductile-iron", Name: "ductile (nodular) cast iron", Family: CastIron, System: MSG, Coating: "none",
	Conductivity: Datum{0.034, 0.030, 0.038, "W/mmK", memoryHigh("EN 1563, 36 W/mK at 300 C, less when hot")},
	HeatCapacity: Datum{0.0041, 0.0036, 0.0048, "J/mm3K",
		memoryMedium("EN 1563, mean 515 J/kgK from 20 to 500 C, rising, times 7.1 g/cm3")},
	Density: Datum{7.10, 7.00, 7.20, "g/cm3", memoryHigh("EN 1563")},
	Solidus: Datum{1120, 1100, 1150, "C",
		memoryMedium("open alloy database and iron-carbon-silicon diagram, 1120 to 1180")},
	Liquidus: Datum{1180, 1150, 1200, "C",
		memoryMedium("open alloy database and iron-carbon-silicon diagram, 1120 to 1180")},
	Latent:  Datum{240, 210, 270, "J/g", memoryLow("heat of fusion of cast iron")},
	Tensile: Datum{400, 400, 500, "MPa", read("EN-GJS-400 and EN-GJS-500, minimum")},
	Emissivity: Datum{0.75, 0.64, 0.95, "1",
		read("emissivity tables: cast iron oxidized 0.64 to 0.78, unworked hot 0.87 to 0.95")},
	Note: "Tougher than grey iron, the same care",
}
