package tables

// Aluminium bronzes.

var cual8 = Filler{
	ID: "cual8", Name: "aluminium bronze CuAl8",
	// The ISO symbol of this wire is CuAl7; the trade and the old DIN say CuAl8.
	AWS: "ERCuAl-A1", UNS: "C61000", ISO: "S Cu 6100 (CuAl7)", DIN: "SG-CuAl8",
	Limits: []Limit{{"Al", 6.0, 8.5}, {"Mn", 0, 0.50}, {"Zn", 0, 0.20}, {"Si", 0, 0.10}, {"Pb", 0, 0.02},
		{"others", 0, 0.50}},
	LimitsOrigin: memoryHigh(a57Limits),
	Colour:       "pale gold",
	Use:          "Aluminized sheet, stainless, more strength, sea water, wear overlay",
	UseOrigin:    memoryMedium("DVS 0938-2 and welding handbooks"),

	// C61500 (8 % Al, 2 % Ni) is 7.65, C61000 7.78.
	Density: Datum{7.70, 7.65, 7.80, "g/cm3",
		read("C61500 alloy page 7.65; Copper Development Association C61000 7.78, from memory")},
	// Another practice sheet gives 1030, and the copper-aluminium diagram shows a freezing range of a few
	// degrees above its eutectic at 1037. The value is from the alloy's own page, and the others make the band.
	Solidus:  Datum{990, 990, 1037, "C", read(alloyPages)},
	Liquidus: Datum{1040, 1038, 1045, "C", read(alloyPages)},
	HeatCold: Datum{0.420, 0.38, 0.44, "J/gK", read(alloyPages)},
	HeatHot:  Datum{0.520, 0.48, 0.56, "J/gK", memoryMedium("specific heat of copper alloys near melting")},
	Latent: Datum{225, 215, 235, "J/g",
		memoryMedium("heat of fusion of copper-aluminium alloys; a page and the mixture rule give 220")},
	// 0.470·1020 + 225 = 704.4; the pair was fitted with 704.
	HLiq:   Datum{704, 655, 753, "J/g", worked(fitPair)},
	Phi:    Datum{3.25, 2.90, 3.60, "V", worked(fitPair)},
	Fitted: true,
	// 15 % IACS is 11.5 uOhm cm at 20 C. This is part of the fit: 150 K of Matthiessen's slope alone would give
	// 0.125e-3, well inside the band, and 6 % of this figure changes the current by 0.4 %.
	Resistivity: Datum{0.133e-3, 0.115e-3, 0.142e-3, "ohm mm",
		worked("20 C resistivity and Matthiessen's slope over 270 K, as fitted with the pair")},
	Conductivity: Datum{69, 62, 72, "W/mK", read(alloyPages)},
	Toe:          Datum{990, 990, 1037, "C", read(alloyPages + "; high end the copper-aluminium eutectic")},
	Tensile:      Datum{380, 379.2, 380, "MPa", memoryHigh(a57Tensile)},
}

var cual10fe = Filler{
	ID: "cual10fe", Name: "aluminium bronze with iron CuAl10Fe",
	AWS: "ERCuAl-A2", UNS: "C61800", ISO: "S Cu 6180 (CuAl10Fe)", DIN: "SG-CuAl10Fe",
	Limits: []Limit{{"Al", 8.5, 11.0}, {"Fe", 0.5, 1.5}, {"Si", 0, 0.10}, {"Zn", 0, 0.02}, {"Pb", 0, 0.02},
		{"others", 0, 0.50}},
	LimitsOrigin: memoryHigh(a57Limits),
	Colour:       "gold",
	Use:          "Harder and stronger: cast iron, bronze repair, dual-phase steel",
	UseOrigin:    read("abstract of doi 10.1088/2053-1591/ab4835 for dual-phase steel; the rest common practice"),

	Density:  Datum{7.53, 7.45, 7.60, "g/cm3", memoryHigh("Copper Development Association, C61800")},
	Solidus:  Datum{1040, 1037, 1043, "C", read(alloyPages)},
	Liquidus: Datum{1045, 1043, 1050, "C", read(alloyPages)},
	HeatCold: Datum{0.440, 0.40, 0.46, "J/gK", read(alloyPages)},
	HeatHot: Datum{0.540, 0.50, 0.58, "J/gK",
		worked("cold specific heat times the 1.22 that the two fitted fillers show")},
	Latent:       Datum{230, 220, 240, "J/g", read(alloyPages)},
	HLiq:         Datum{732.25, 670, 795, "J/g", worked(enthalpy)}, // 0.490·1025 + 230
	Phi:          unfittedPhi,
	Resistivity:  Datum{0.143e-3, 0.133e-3, 0.160e-3, "ohm mm", worked(matthies)}, // 13 % IACS: 13.3 + 1.0
	Conductivity: Datum{64, 58, 68, "W/mK", read(alloyPages)},
	Toe:          Datum{1040, 1037, 1043, "C", read(alloyPages + "; low end the copper-aluminium eutectic")},
	Tensile:      Datum{415, 413.7, 415, "MPa", memoryHigh(a57Tensile)},
}

var cumn13al8 = Filler{
	ID: "cumn13al8", Name: "manganese aluminium bronze CuMn13Al8",
	AWS: "ERCuMnNiAl", UNS: "C63380", ISO: "S Cu 6338 (CuMn13Al8Fe3Ni2)", DIN: "SG-CuMn13Al7",
	Limits: []Limit{{"Mn", 11.0, 14.0}, {"Al", 7.0, 8.5}, {"Fe", 2.0, 4.0}, {"Ni", 1.5, 3.0}, {"Si", 0, 0.10},
		{"Zn", 0, 0.15}, {"Pb", 0, 0.02}, {"others", 0, 0.50}},
	LimitsOrigin: memoryHigh(a57Limits),
	Colour:       "pale gold grey",
	Use:          "High strength, stainless, propellers; manganese fume",
	UseOrigin:    memoryMedium("welding handbooks"),

	// The cast alloy C95700 has the same manganese, aluminium, iron and nickel; its data are used here.
	Density:  Datum{7.50, 7.45, 7.55, "g/cm3", memoryHigh("Copper Development Association, C95700 7.53")},
	Solidus:  Datum{950, 945, 950, "C", memoryMedium("Copper Development Association, C95700; practice sheets 945")},
	Liquidus: Datum{990, 985, 990, "C", memoryMedium("Copper Development Association, C95700; practice sheets 985")},
	HeatCold: Datum{0.440, 0.42, 0.46, "J/gK", memoryHigh("Copper Development Association, C95700")},
	HeatHot: Datum{0.540, 0.50, 0.58, "J/gK",
		worked("cold specific heat times the 1.22 that the two fitted fillers show")},
	Latent:       Datum{227, 215, 240, "J/g", worked("mixture rule over the elements' heats of fusion")},
	HLiq:         Datum{702.3, 640, 765, "J/g", worked(enthalpy)}, // 0.490·970 + 227
	Phi:          unfittedPhi,
	Resistivity:  Datum{0.566e-3, 0.54e-3, 0.59e-3, "ohm mm", worked(matthies)}, // 3.1 % IACS: 55.6 + 1.0
	Conductivity: Datum{12, 11, 14, "W/mK", memoryHigh("Copper Development Association, C95700")},
	Toe: Datum{950, 945, 950, "C",
		memoryMedium("Copper Development Association, C95700; practice sheets 945")},
	Tensile: Datum{515, 515, 517.1, "MPa", memoryHigh(a57Tensile)},
}

var cual9ni5 = Filler{
	ID: "cual9ni5", Name: "nickel aluminium bronze CuAl9Ni5",
	AWS: "ERCuNiAl", UNS: "C63280", ISO: "S Cu 6328 (CuAl9Ni5Fe3Mn2)",
	Limits: []Limit{{"Al", 8.5, 9.5}, {"Ni", 4.0, 5.5}, {"Fe", 3.0, 5.0}, {"Mn", 0.6, 3.5}, {"Si", 0, 0.10},
		{"Zn", 0, 0.10}, {"Pb", 0, 0.02}, {"others", 0, 0.50}},
	LimitsOrigin: memoryHigh(a57Limits),
	Colour:       "gold",
	Use:          "Sea water, strong and tough bronze parts",
	UseOrigin:    memoryMedium("welding handbooks"),

	Density:  Datum{7.61, 7.58, 7.64, "g/cm3", memoryHigh("Copper Development Association, C63000 and C95800")},
	Solidus:  Datum{1040, 1035, 1043, "C", read(alloyPages)},
	Liquidus: Datum{1055, 1050, 1060, "C", read(alloyPages)},
	HeatCold: Datum{0.440, 0.40, 0.46, "J/gK", read(alloyPages)},
	HeatHot: Datum{0.540, 0.50, 0.58, "J/gK",
		worked("cold specific heat times the 1.22 that the two fitted fillers show")},
	Latent:       Datum{230, 220, 240, "J/g", read(alloyPages)},
	HLiq:         Datum{737.15, 675, 800, "J/g", worked(enthalpy)}, // 0.490·1035 + 230
	Phi:          unfittedPhi,
	Resistivity:  Datum{0.256e-3, 0.24e-3, 0.274e-3, "ohm mm", worked(matthies)}, // 7 % IACS: 24.6 + 1.0
	Conductivity: Datum{37, 36, 39, "W/mK", read(alloyPages)},
	Toe:          Datum{1040, 1035, 1043, "C", read(alloyPages)},
	Tensile:      Datum{500, 496.4, 500, "MPa", memoryHigh(a57Tensile)},
}
