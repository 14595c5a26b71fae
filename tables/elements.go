package tables

// Resistivity.
var (
	// AnnealedCopper is 100 % IACS at 20 C, 58 Sm/mm2.
	AnnealedCopper = constant("AnnealedCopper", 1.7241e-5, 1.7241e-5, 1.7242e-5, "ohm mm",
		read("GNU units 2.22 definitions: 58 S m/mm2, density 8.89"))

	// CopperSlope is how much the resistivity of any copper alloy rises with temperature, by Matthiessen's
	// rule. On 70/30 brass the rule gives 1.1e-3 per kelvin and measurements 1.7e-3: the rise may be half as
	// large again, never smaller.
	CopperSlope = constant("CopperSlope", 0.0067e-5, 0.0067e-5, 0.0101e-5, "ohm mm/K",
		memoryMedium("NBS Circular 31 and Handbook 100, copper 0.00681 uOhm cm/K independent of purity"))
)

// Steel at the temperatures where the curves of EN 1993-1-2 are no longer polynomials.
var (
	SteelPeak = constant("SteelPeak", 735, 735, 735, "C",
		read("EN 1993-1-2:2005 3.4.1.2, peak of specific heat"))
	SteelHeatPlateau = constant("SteelHeatPlateau", 0.650, 0.650, 0.650, "J/gK",
		read("EN 1993-1-2:2005 3.4.1.2, 900 to 1200 C"))
	SteelConductivityPlateau = constant("SteelConductivityPlateau", 0.0273, 0.0273, 0.0273, "W/mmK",
		read("EN 1993-1-2:2005 3.4.1.3, from 800 C"))
)
