package tables

// Unalloyed and low-alloy sheet. What brazing heats is the same steel under each coat, so the thermal
// rows are shared.
var (
	// Two means to about 1000 C disagree little: 37.4 W/mK from EN 1993-1-2 and 41.0 in Kou, Welding
	// Metallurgy, Table 2.1. The 53 to 65 of cold sheet is not what a bead sees.
	steelConductivity = Datum{0.040, 0.037, 0.043, "W/mmK",
		worked("EN 1993-1-2:2005 3.4.1.3, mean 20 to 1030 C, 0.0374; Kou, Welding Metallurgy, Table 2.1, 0.041")}

	// One constant for a curve with a peak at 735 C. EN 1993-1-2 averages 0.0045 to 600 C and 0.0056
	// to 970 C; Kou prints 0.0045. The middle is taken: against the curve itself 0.0048 to 0.0056 moves
	// a wetted width by +7 to −8 %.
	steelHeatCapacity = Datum{0.0052, 0.0048, 0.0056, "J/mm3K",
		worked("EN 1993-1-2:2005 3.4.1.2 averaged over bead temperatures, times 7.85 g/cm3")}

	steelDensity = Datum{7.85, 7.85, 7.872, "g/cm3",
		memoryHigh("EN 1993-1-2:2005 3.2.2; 7.872 read in a SAE 1008 data sheet")}

	// The low end of a grade with up to 0.2 % carbon, near the trade's 2700 F; a page of SAE 1008
	// prints 1430, and iron with next to no carbon holds to 1500 and more.
	steelSolidus = Datum{1470, 1430, 1500, "C",
		memoryHigh("iron-carbon diagram up to 0.2 % C; 1430 read in an open alloy database")}
	steelLiquidus = Datum{1520, 1470, 1530, "C",
		memoryHigh("iron-carbon diagram up to 0.2 % C; 1470 read in an open alloy database")}
	steelLatent     = Datum{250, 247, 272, "J/g", read("open alloy database, SAE 1008; pure iron 247")}
	steelTensile    = Datum{330, 270, 410, "MPa", memoryHigh("EN 10130 and EN 10346, DC01 to DX51")}
	steelEmissivity = Datum{0.80, 0.64, 0.89, "1",
		read("emissivity tables: oxidized steel 0.79 to 0.89, galvanized heavily oxidized from 0.64")}

	// Alloyed sheet conducts about a tenth less.
	alloyedConductivity = Datum{0.036, 0.033, 0.041, "W/mmK", worked("mild steel less 10 % for manganese and silicon")}
)

var mildSteel = Metal{
	ID: "mild-steel", Name: "mild steel, bare", Family: Steel, System: MSG, Coating: "none",
	Conductivity: steelConductivity, HeatCapacity: steelHeatCapacity, Density: steelDensity,
	Solidus: steelSolidus, Liquidus: steelLiquidus, Latent: steelLatent,
	Tensile: steelTensile, Emissivity: steelEmissivity,
	Note: "Black or bright low-carbon sheet, cleaned to metal",
}

var galvanized = Metal{
	ID: "galvanized", Name: "galvanized steel, hot-dip zinc", Family: Steel, System: GSG, Coating: "G60",
	Conductivity: steelConductivity, HeatCapacity: steelHeatCapacity, Density: steelDensity,
	Solidus: steelSolidus, Liquidus: steelLiquidus, Latent: steelLatent,
	Tensile: steelTensile, Emissivity: steelEmissivity,
	Note: "Zinc fume; its gauge counts the coat, the heat sees the steel alone",
}

var galvannealed = Metal{
	ID: "galvannealed", Name: "galvannealed steel, zinc-iron coat", Family: Steel, System: GSG, Coating: "A40",
	Conductivity: steelConductivity, HeatCapacity: steelHeatCapacity, Density: steelDensity,
	Solidus: steelSolidus, Liquidus: steelLiquidus, Latent: steelLatent,
	Tensile: steelTensile, Emissivity: steelEmissivity,
	Note: "Dull grey zinc-iron coat, made for paint; zinc fume all the same",
}

var electroZinc = Metal{
	ID: "electro-zinc", Name: "electro-zinc plated steel", Family: Steel, System: MSG, Coating: "ZE25/25",
	Conductivity: steelConductivity, HeatCapacity: steelHeatCapacity, Density: steelDensity,
	Solidus: steelSolidus, Liquidus: steelLiquidus, Latent: steelLatent,
	Tensile: steelTensile, Emissivity: steelEmissivity,
	Note: "Thin even zinc; less fume than hot-dip, not none",
}

var aluminized = Metal{
	ID: "aluminized", Name: "aluminized steel, Al-Si coat", Family: Steel, System: MSG, Coating: "T1-40",
	Conductivity: steelConductivity, HeatCapacity: steelHeatCapacity, Density: steelDensity,
	Solidus: steelSolidus, Liquidus: steelLiquidus, Latent: steelLatent,
	Tensile: steelTensile, Emissivity: steelEmissivity,
	Note: "The coat melts and does not boil; aluminium bronze wire wets it",
}
