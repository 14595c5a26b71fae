package tables

// Unalloyed and low-alloy sheet. Under every coat it is the same steel that is heated, so these rows share
// their thermal properties.
var (
	// Two means up to about 1000 C are close: 37.4 W/mK from EN 1993-1-2 and 41.0 in Kou, Welding Metallurgy,
	// Table 2.1. The 53 to 65 of cold sheet do not apply beside a bead.
	steelConductivity = Datum{0.040, 0.037, 0.043, "W/mmK",
		worked("EN 1993-1-2:2005 3.4.1.3, mean 20 to 1030 C, 0.0374; Kou, Welding Metallurgy, Table 2.1, 0.041")}

	// One constant for a curve with a peak at 735 C. EN 1993-1-2 averages 0.0045 up to 600 C and 0.0056 up to
	// 970 C; Kou prints 0.0045. The value is the middle: compared with the curve itself, 0.0048 to 0.0056
	// changes a wetted width by +7 to −8 %.
	steelHeatCapacity = Datum{0.0052, 0.0048, 0.0056, "J/mm3K",
		worked("EN 1993-1-2:2005 3.4.1.2 averaged over bead temperatures, times 7.85 g/cm3")}

	steelDensity = Datum{7.85, 7.85, 7.872, "g/cm3",
		memoryHigh("EN 1993-1-2:2005 3.2.2; 7.872 read in a SAE 1008 data sheet")}

	// The low end of a grade with up to 0.2 % carbon, near the trade's 2700 F. A page of SAE 1008 prints 1430,
	// and iron with hardly any carbon stays solid up to 1500 and more.
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

// sheetSteel is unalloyed sheet, bare or under a coat.
func sheetSteel(id, name string, system GaugeSystem, coating, note string) Metal {
	return Metal{
		ID: id, Name: name, Family: Steel, System: system, Coating: coating,
		Conductivity: steelConductivity, HeatCapacity: steelHeatCapacity, Density: steelDensity,
		Solidus: steelSolidus, Liquidus: steelLiquidus, Latent: steelLatent,
		Tensile: steelTensile, Emissivity: steelEmissivity,
		Note: note,
	}
}

var (
	mildSteel = sheetSteel("mild-steel", "mild steel, bare", MSG, "none",
		"Black or bright low-carbon sheet, cleaned to metal")
	galvanized = sheetSteel("galvanized", "galvanized steel, hot-dip zinc", GSG, "G60",
		"Zinc fume; its gauge counts the coat, the heat sees the steel alone")
	galvannealed = sheetSteel("galvannealed", "galvannealed steel, zinc-iron coat", GSG, "A40",
		"Dull grey zinc-iron coat, made for paint; zinc fume all the same")
	electroZinc = sheetSteel("electro-zinc", "electro-zinc plated steel", MSG, "ZE25/25",
		"Thin even zinc; less fume than hot-dip, not none")
	aluminized = sheetSteel("aluminized", "aluminized steel, Al-Si coat", MSG, "T1-40",
		"The coat melts and does not boil; aluminium bronze wire wets it")
)

// strongSteel returns a high-strength sheet. It melts and stores heat as mild steel does; its lower
// conductivity and the strength that it loses by heat depend on the grade.
func strongSteel(id, name string, tensile Datum, note string) Metal {
	m := sheetSteel(id, name, MSG, "none", note)
	m.Conductivity, m.Tensile = alloyedConductivity, tensile
	return m
}

var (
	hsla = strongSteel("hsla", "high-strength low-alloy steel",
		Datum{440, 410, 540, "MPa", memoryHigh("EN 10268, grades 340 to 420: minimum 410 to 470")},
		"Micro-alloyed sheet and plate, yield 340 to 420 MPa")
	dp600 = strongSteel("dp600", "dual-phase steel DP600",
		Datum{590, 590, 700, "MPa", memoryHigh("EN 10338, minimum of the grade")},
		"Vehicle sheet: keep the heat low and the parts unstressed")
	dp800 = strongSteel("dp800", "dual-phase steel DP800",
		Datum{780, 780, 900, "MPa", memoryHigh("EN 10338, minimum of the grade")},
		"Vehicle sheet: aluminium-bearing wire keeps copper out of its grain")
	dp1000 = strongSteel("dp1000", "dual-phase steel DP1000",
		Datum{980, 980, 1130, "MPa", memoryHigh("EN 10338, minimum of the grade")},
		"Vehicle sheet: only by the maker's repair procedure in a crash structure")
	boronSteel = strongSteel("boron-steel", "press-hardened boron steel",
		Datum{1500, 1300, 1650, "MPa",
			memoryHigh("advanced high-strength steel guidelines, 22MnB5 hardened, yield about 1000")},
		"Heat softens it: only by the maker's repair procedure")
)
