package tables

var cusi3 = Filler{
	ID: "cusi3", Name: "silicon bronze CuSi3",
	AWS: "ERCuSi-A", UNS: "C65600", ISO: "S Cu 6560 (CuSi3Mn1)", DIN: "SG-CuSi3",
	// ISO 24373 is narrower in places: Mn 0.5-1.5, Zn 0.4, Sn 0.2.
	Limits: []Limit{{"Si", 2.8, 4.0}, {"Mn", 0, 1.5}, {"Zn", 0, 1.0}, {"Sn", 0, 1.0}, {"Fe", 0, 0.50},
		{"Al", 0, 0.01}, {"Pb", 0, 0.02}, {"others", 0, 0.50}},
	LimitsOrigin: memoryHigh(a57Limits),
	Colour:       "golden copper",
	Use:          "The usual wire for bare and zinc-coated steel",
	UseOrigin:    practice,

	Density: Datum{8.53, 8.50, 8.56, "g/cm3", read("C65500 alloy data page")},
	// Some practice sheets give 910 for the solidus; this is from the data page of the alloy itself.
	Solidus: Datum{970, 910, 970, "C", read("C65500 alloy data page")},
	// Makers print up to 1035 C for wires of this name (memory medium).
	Liquidus: Datum{1025, 1025, 1035, "C", read("C65500 alloy data page")},
	HeatCold: Datum{0.390, 0.377, 0.400, "J/gK", read("C65500 alloy data page; " + alloyPages)},
	HeatHot:  Datum{0.470, 0.44, 0.50, "J/gK", memoryMedium("specific heat of copper alloys near melting")},
	// One page prints 260 and the mixture rule gives 253; 210 belongs to the fitted pair.
	Latent: Datum{210, 200, 260, "J/g", memoryMedium("heat of fusion of copper-silicon alloys, low end")},
	// 0.430·1005 + 210; the band is the 7 % that the spread of latent heats leaves. A sum over other tables
	// gives 715, which only adds to the spread: no calibration voltage is known for it.
	HLiq:   Datum{642.15, 597, 687, "J/g", worked(fitPair)},
	Phi:    Datum{3.25, 2.90, 3.60, "V", worked(fitPair)},
	Fitted: true,
	// 7.0 % IACS is 24.6 uOhm cm at 20 C.
	Resistivity:  Datum{0.256e-3, 0.246e-3, 0.274e-3, "ohm mm", worked(matthies)},
	Conductivity: Datum{36, 33, 39, "W/mK", read("C65500 alloy data page")},
	// When it cools fast, the last liquid can last down to the copper-silicon peritectic at 852.
	Toe: Datum{970, 852, 970, "C",
		read("C65500 alloy data page: solidus; low end the 852 C peritectic of ASM Handbook vol. 3, from memory")},
	Tensile: Datum{345, 344.7, 345, "MPa", memoryHigh(a57Tensile)},
}
