package tables

// High-strength sheet. It melts and stores heat as mild steel does; what differs is how much less it
// conducts and how much strength the heat takes.

var hsla = Metal{
	ID: "hsla", Name: "high-strength low-alloy steel", Family: Steel, System: MSG, Coating: "none",
	Conductivity: alloyedConductivity, HeatCapacity: steelHeatCapacity, Density: steelDensity,
	Solidus: steelSolidus, Liquidus: steelLiquidus, Latent: steelLatent,
	Tensile:    Datum{440, 410, 540, "MPa", memoryHigh("EN 10268, grades 340 to 420: minimum 410 to 470")},
	Emissivity: steelEmissivity,
	Note:       "Micro-alloyed sheet and plate, yield 340 to 420 MPa",
}

var dp600 = Metal{
	ID: "dp600", Name: "dual-phase steel DP600", Family: Steel, System: MSG, Coating: "none",
	Conductivity: alloyedConductivity, HeatCapacity: steelHeatCapacity, Density: steelDensity,
	Solidus: steelSolidus, Liquidus: steelLiquidus, Latent: steelLatent,
	Tensile:    Datum{590, 590, 700, "MPa", memoryHigh("EN 10338, minimum of the grade")},
	Emissivity: steelEmissivity,
	Note:       "Vehicle sheet: keep the heat low and the parts unstressed",
}

var dp800 = Metal{
	ID: "dp800", Name: "dual-phase steel DP800", Family: Steel, System: MSG, Coating: "none",
	Conductivity: alloyedConductivity, HeatCapacity: steelHeatCapacity, Density: steelDensity,
	Solidus: steelSolidus, Liquidus: steelLiquidus, Latent: steelLatent,
	Tensile:    Datum{780, 780, 900, "MPa", memoryHigh("EN 10338, minimum of the grade")},
	Emissivity: steelEmissivity,
	Note:       "Vehicle sheet: aluminium-bearing wire keeps copper out of its grain",
}

var dp1000 = Metal{
	ID: "dp1000", Name: "dual-phase steel DP1000", Family: Steel, System: MSG, Coating: "none",
	Conductivity: alloyedConductivity, HeatCapacity: steelHeatCapacity, Density: steelDensity,
	Solidus: steelSolidus, Liquidus: steelLiquidus, Latent: steelLatent,
	Tensile:    Datum{980, 980, 1130, "MPa", memoryHigh("EN 10338, minimum of the grade")},
	Emissivity: steelEmissivity,
	Note:       "Vehicle sheet: only by the maker's repair procedure in a crash structure",
}

var boronSteel = Metal{
	ID: "boron-steel", Name: "press-hardened boron steel", Family: Steel, System: MSG, Coating: "none",
	Conductivity: alloyedConductivity, HeatCapacity: steelHeatCapacity, Density: steelDensity,
	Solidus: steelSolidus, Liquidus: steelLiquidus, Latent: steelLatent,
	Tensile: Datum{1500, 1300, 1650, "MPa",
		memoryHigh("advanced high-strength steel guidelines, 22MnB5 hardened, yield about 1000")},
	Emissivity: steelEmissivity,
	Note:       "Heat softens it: only by the maker's repair procedure",
}
