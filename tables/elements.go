package tables

// HeatOfFusion is one element's, for the mixture rule that a filler without a page is given.
type HeatOfFusion struct {
	Element string
	Heat    Datum // J/g
}

var fusionOrigin = memoryHigh("CRC Handbook, enthalpy of fusion")

var heatsOfFusion = [...]HeatOfFusion{
	{"Cu", Datum{205, 204, 209, "J/g", fusionOrigin}},
	{"Si", Datum{1787, 1780, 1800, "J/g", fusionOrigin}},
	{"Al", Datum{397, 396, 400, "J/g", fusionOrigin}},
	{"Sn", Datum{59, 59, 61, "J/g", fusionOrigin}},
	{"Mn", Datum{235, 220, 240, "J/g", fusionOrigin}},
	{"Fe", Datum{247, 247, 272, "J/g", fusionOrigin}},
	{"Ni", Datum{298, 293, 300, "J/g", fusionOrigin}},
}

// HeatsOfFusion lists the elements' heats; read only.
func HeatsOfFusion() []HeatOfFusion { return heatsOfFusion[:] }

// Resistivity.
var (
	// AnnealedCopper is 100 % IACS at 20 C, 58 Sm/mm2.
	AnnealedCopper = Datum{1.7241e-5, 1.7241e-5, 1.7242e-5, "ohm mm", read("GNU units 2.22 definitions: 58 S m/mm2, density 8.89")}

	// CopperSlope is the rise of any copper alloy's resistivity by Matthiessen's rule. On 70/30 brass
	// the rule gives 1.1e-3 a kelvin, measurements 1.7e-3: it may be half as much again, never less.
	CopperSlope = Datum{0.0067e-5, 0.0067e-5, 0.0101e-5, "ohm mm/K", memoryMedium("NBS Circular 31 and Handbook 100, copper 0.00681 uOhm cm/K independent of purity")}
)

// Steel, where EN 1993-1-2 stops being a polynomial.
var (
	SteelPeak                = Datum{735, 735, 735, "C", read("EN 1993-1-2:2005 3.4.1.2, peak of specific heat")}
	SteelHeatPlateau         = Datum{0.650, 0.650, 0.650, "J/gK", read("EN 1993-1-2:2005 3.4.1.2, 900 to 1200 C")}
	SteelConductivityPlateau = Datum{0.0273, 0.0273, 0.0273, "W/mmK", read("EN 1993-1-2:2005 3.4.1.3, from 800 C")}
)
