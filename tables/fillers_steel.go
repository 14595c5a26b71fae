package tables

// steelWire is listed for comparison: it fuses the sheet, and no settings card for bronze fits it.
var steelWire = Filler{
	ID: "steel", Name: "steel wire ER70S-6, to compare",
	AWS: "ER70S-6", UNS: "K11140", ISO: "ISO 14341-B G49A S6",
	Limits: []Limit{{"C", 0.06, 0.15}, {"Mn", 1.40, 1.85}, {"Si", 0.80, 1.15}, {"P", 0, 0.025}, {"S", 0, 0.035},
		{"Ni", 0, 0.15}, {"Cr", 0, 0.15}, {"Mo", 0, 0.15}, {"V", 0, 0.03}, {"Cu", 0, 0.50}},
	LimitsOrigin: read("SFA-5.18:2007 Table 1"),
	Colour:       "grey",
	Use:          "Only for comparison: it fuses the sheet",
	UseOrigin:    practice,

	Density: Datum{7.85, 7.85, 7.89, "g/cm3",
		memoryHigh("EN 1993-1-2:2005 3.4.1; 7.872 read in a SAE 1008 data sheet, 7.89 from wire-length tables")},
	Solidus: Datum{1470, 1430, 1495, "C",
		memoryMedium("iron-carbon diagram at 0.1 % C with manganese and silicon; one page of SAE 1008 prints 1430")},
	Liquidus: Datum{1520, 1470, 1530, "C", memoryMedium("iron-carbon diagram at 0.1 % C with manganese and silicon")},
	HeatCold: Datum{0.475, 0.470, 0.481, "J/gK", read("SAE 1008 data sheet; " + alloyPages)},
	HeatHot:  Datum{0.650, 0.60, 0.80, "J/gK", read("EN 1993-1-2:2005 3.4.1.2, 900 to 1200 C")},
	Latent:   Datum{250, 247, 272, "J/g", read(alloyPages)},
	// The mean of cold and hot heat does not give this: the peak at 735 C lies between them. EN 1993-1-2 gives
	// 1009.06 up to 1480 C and with 250 for fusion 1259; 3.2 V was fitted together with 1273.
	HLiq: Datum{1273, 1210, 1340, "J/g",
		worked("paired with 3.2 V on the in/min-per-ampere rule for steel wire, within 9 % RMS")},
	Phi: Datum{3.2, 2.7, 3.7, "V",
		worked("paired with 1273 J/g on the in/min-per-ampere rule for steel wire, worst 16 %")},
	// 25 to 31 uOhm cm at 20 C (low confidence) and about 20 more over a mean rise of 280 K.
	Resistivity: Datum{0.45e-3, 0.30e-3, 0.60e-3, "ohm mm",
		memoryLow("resistivity of manganese-silicon steel wire and of low-carbon steel hot, ASM Metals Handbook vol. " +
			"1")},
	Conductivity: Datum{45, 40, 50, "W/mK", memoryMedium("low-alloy steel at 20 C")},
	Toe:          Datum{1470, 1430, 1495, "C", memoryMedium("iron-carbon diagram at 0.1 % C: solidus")},
	Tensile: Datum{480, 480, 500, "MPa",
		memoryHigh("AWS A5.18:2005, 70 ksi; 500 read in the older SFA-5.18:2007")},
}
