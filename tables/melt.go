package tables

// Melt holds the properties of a liquid filler near its liquidus that capillarity and flow depend on.
type Melt struct {
	Filler    string // id of the row in Fillers
	Tension   Datum  // surface tension against argon, N/m
	Density   Datum  // of the liquid, kg/m3
	Viscosity Datum  // mPa s; too low to matter: a millimetre drains within milliseconds
	Wetting   Datum  // angle inside the liquid on clean hot steel, deg; 60 to 90 on scale or remaining zinc
}

const (
	copperTension = "liquid copper 1.633 N/m - 0.21 mN/mK (Aziz 2014, abstract); "
	shrinks       = "0.895 of the solid's density at 20 C, as copper's 8.02 of 8.96 g/cm3"
)

var (
	bronzeTension = memoryMedium(copperTension + "lowered by aluminium, Butler's equation; oxide skin in the band")
	bronzeAngle   = Datum{40, 20, 70, "deg", memoryLow("sessile drops of copper-aluminium on steel")}
	bronzeFlow    = Datum{5, 3.5, 7, "mPa s", memoryMedium("viscosity of copper-aluminium melts")}
	bronzeCovers  = Datum{1.15, 0.90, 1.30, "N/m", bronzeTension}
	copperAngle   = Datum{30, 10, 60, "deg", memoryLow("sessile drops of copper and its alloys on clean steel")}
	// Melts lists them by filler, without the steel that is there for comparison.
	Melts = Rows[Melt]{
		{"cusi3", Datum{1.25, 1.05, 1.35, "N/m", memoryMedium(copperTension + "lowered by silicon, Butler's equation")},
			Datum{7630, 7430, 7830, "kg/m3", memoryHigh(shrinks)},
			Datum{4, 3, 5, "mPa s", memoryMedium("viscosity of copper-silicon melts")}, copperAngle},
		{"cual8", bronzeCovers, Datum{6890, 6690, 7090, "kg/m3", memoryHigh(shrinks)}, bronzeFlow, bronzeAngle},
		{"cual10fe", bronzeCovers, Datum{6740, 6540, 6940, "kg/m3", memoryHigh(shrinks)}, bronzeFlow, bronzeAngle},
		{"cumn13al8", bronzeCovers, Datum{6710, 6510, 6910, "kg/m3", memoryHigh(shrinks)}, bronzeFlow, bronzeAngle},
		// Nickel and iron have a higher surface tension than copper and stay away from the surface. Their
		// effect is smaller than the band that aluminium leaves.
		{"cual9ni5", Datum{1.15, 0.90, 1.30, "N/m", worked("as CuAl8: nickel and iron stay out of the surface")},
			Datum{6810, 6610, 7010, "kg/m3", memoryHigh(shrinks)}, bronzeFlow, bronzeAngle},
		{"cusn6", Datum{1.10, 0.95, 1.25, "N/m", memoryMedium(copperTension + "lowered by tin, Butler's equation")},
			Datum{7900, 7700, 8100, "kg/m3", memoryHigh(shrinks)},
			Datum{3.8, 3, 5, "mPa s", memoryMedium("viscosity of copper-tin melts")}, copperAngle},
		// The high end is copper without tin; the low end covers its oxygen and silicon.
		{"cusn1", Datum{1.25, 1.10, 1.36, "N/m", worked("Butler's equation, ideal, for 0.5 to 1 % tin in copper")},
			Datum{7980, 7780, 8180, "kg/m3", memoryHigh(shrinks)},
			Datum{4, 3, 5, "mPa s", memoryMedium("viscosity of liquid copper near its melting point")}, copperAngle},
	}
)

// CoherencyShift is added to the mean of solidus and liquidus to get the temperature below which a freezing
// bead carries itself.
var CoherencyShift = constant("CoherencyShift", 0, -25, 25, "K",
	worked("assumed: half the freezing range; no measurement of these alloys"))
