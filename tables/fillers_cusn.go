package tables

// Tin bronze and copper wire.

var cusn6 = Filler{
	ID: "cusn6", Name: "tin bronze CuSn6",
	AWS: "ERCuSn-A", UNS: "C51800", ISO: "S Cu 5180 (CuSn6P)", DIN: "SG-CuSn6",
	Limits: []Limit{{"Sn", 4.0, 6.0}, {"P", 0.10, 0.35}, {"Al", 0, 0.01}, {"Pb", 0, 0.02}, {"others", 0, 0.50}},
	// Sn, P and Pb also read on the C51800 page.
	LimitsOrigin: memoryHigh(a57Limits),
	Colour:       "reddish",
	Use:          "Bronzes, copper, cast iron; cracks hot, freezes over a wide range",
	UseOrigin:    practice,

	Density: Datum{8.85, 8.84, 8.90, "g/cm3", read("C51900 and C51800 alloy pages")},
	// One page of C51800 prints 1060 as its solidus, which is almost surely the liquidus and is not used.
	Solidus:  Datum{930, 910, 950, "C", read("C51900 alloy data page; spread by tin 4 to 6 %")},
	Liquidus: Datum{1040, 1035, 1060, "C", read("C51900 alloy data page")},
	HeatCold: Datum{0.377, 0.37, 0.38, "J/gK", read("C51900 alloy data page")},
	HeatHot: Datum{0.460, 0.43, 0.49, "J/gK",
		worked("cold specific heat times the 1.22 that the two fitted fillers show")},
	Latent: Datum{200, 190, 210, "J/g", read(alloyPages)},
	HLiq:   Datum{626.87, 575, 680, "J/g", worked(enthalpy)}, // 0.4185·1020 + 200
	Phi:    unfittedPhi,
	// 14 % IACS: 12.3 + 1.0. Sources on the similar alloy with 5 % tin print 15, 18 and 20 %.
	Resistivity:  Datum{0.133e-3, 0.096e-3, 0.150e-3, "ohm mm", worked(matthies)},
	Conductivity: Datum{66, 62, 96, "W/mK", read("C51900 alloy data page; C51800 pages 93 to 96")},
	// Tin segregates: when it cools fast, the last liquid lasts down to the copper-tin peritectic at 798.
	Toe: Datum{930, 798, 950, "C",
		read("C51900 alloy data page: solidus; low end the 798 C copper-tin peritectic, from memory")},
	Tensile: Datum{240, 240, 241.3, "MPa", memoryHigh(a57Tensile)},
}

var cusn1 = Filler{
	ID: "cusn1", Name: "copper wire CuSn1",
	AWS: "ERCu", UNS: "C18980", ISO: "S Cu 1898 (CuSn1)", DIN: "SG-CuSn",
	Limits: []Limit{{"Cu+Ag", 98.0, 100}, {"Sn", 0, 1.0}, {"Mn", 0, 0.50}, {"Si", 0, 0.50}, {"P", 0, 0.15},
		{"Al", 0, 0.01}, {"Pb", 0, 0.02}, {"others", 0, 0.50}},
	LimitsOrigin: memoryHigh(a57Limits),
	Colour:       "copper red",
	Use:          "Copper sheet and earthing; never on dual-phase steel",
	UseOrigin:    read("abstract of doi 10.1088/2053-1591/ab4835 for dual-phase steel; the rest common practice"),

	Density: Datum{8.92, 8.89, 8.94, "g/cm3", memoryMedium("DIN 1733 and DVS practice sheets")},
	// With 1 % tin 1020 to 1050; nearly pure copper up to 1083.
	Solidus:  Datum{1020, 1020, 1065, "C", memoryMedium("DIN 1733 and DVS practice sheets")},
	Liquidus: Datum{1050, 1050, 1083, "C", memoryMedium("DIN 1733 and DVS practice sheets")},
	HeatCold: Datum{0.384, 0.38, 0.39, "J/gK", worked("mixture rule over copper and tin")},
	HeatHot: Datum{0.470, 0.44, 0.50, "J/gK",
		worked("cold specific heat times the 1.22 that the two fitted fillers show")},
	Latent: Datum{208, 203, 213, "J/g", worked("mixture rule over the elements' heats of fusion")},
	HLiq:   Datum{647.81, 595, 700, "J/g", worked(enthalpy)}, // 0.427·1030 + 208
	Phi:    unfittedPhi,
	// 15 to 20 Sm/mm2 is 26 to 35 % IACS: 5 to 6.7, mean 5.8, + 1.0.
	Resistivity:  Datum{0.068e-3, 0.055e-3, 0.090e-3, "ohm mm", worked(matthies)},
	Conductivity: Datum{130, 120, 145, "W/mK", memoryMedium("DIN 1733 and DVS practice sheets")},
	Toe:          Datum{1020, 1020, 1065, "C", memoryMedium("DIN 1733 and DVS practice sheets: solidus")},
	Tensile:      Datum{170, 170, 172.4, "MPa", memoryHigh(a57Tensile)},
}
