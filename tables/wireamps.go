package tables

// WireAmps is a current that holds for one wire diameter.
type WireAmps struct {
	Wire float64 // mm
	Amps Datum   // A
}

// DipFloors are the currents below which a short arc in argon gets unsteady, by wire. Confidence in
// them is low, hence the wide band.
var DipFloors = [...]WireAmps{
	{0.762, Datum{40, 30, 50, "A", practice}},
	{0.889, Datum{50, 38, 62, "A", practice}},
	{1.143, Datum{80, 60, 100, "A", practice}},
}

// SprayTransitions are the currents above which silicon bronze wire in argon sprays, by wire: .035,
// .045 and 1/16 in. The band is what gas and stick-out move it.
var SprayTransitions = [...]WireAmps{
	{0.889, Datum{165, 150, 180, "A",
		memoryHigh("AWS Welding Handbook, 8th ed. vol. 2, gas metal arc: globular-to-spray transition, " +
			"silicon bronze in argon")}},
	{1.143, Datum{205, 190, 220, "A",
		memoryHigh("AWS Welding Handbook, 8th ed. vol. 2, gas metal arc: globular-to-spray transition, " +
			"silicon bronze in argon")}},
	{1.5875, Datum{270, 250, 290, "A",
		memoryHigh("AWS Welding Handbook, 8th ed. vol. 2, gas metal arc: globular-to-spray transition, " +
			"silicon bronze in argon")}},
}
