package tables

// What the wire and the sheet release into the air. No emission factor of a brazing wire was found. Those of
// welding wires of the same process are used instead, with a band that is wide enough for that.
var (
	// FumeFactor is the mass of fume per mass of melted wire.
	FumeFactor = constant("FumeFactor", 5, 2, 10, "g/kg",
		memoryMedium("EPA AP-42 ch. 12.19, gas metal arc with solid wire: 2.0 g/kg (nickel-copper) to 5.4 "+
			"(stainless), steel 5.2; the high end doubled for a wire that is mostly copper"))

	// ProcessFume is the rate of all particles from the process; the computed rate is compared with it.
	ProcessFume = constant("ProcessFume", 3, 1, 9, "mg/s",
		memoryMedium("TRGS 528, gas metal arc brazing: 1 to 9 mg/s of particles"))

	// ZincEdge is how far beyond the boiled band zinc still evaporates, as a share of the band that only
	// melted.
	ZincEdge = constant("ZincEdge", 0.15, 0, 0.35, "1", worked("zinc's vapour has 100 kPa at 907 to 912 C, 10 kPa at "+
		"717 C and 1 kPa at 579 C (CRC Handbook, memory high): what melts further out stays on the sheet"))

	// ZincAirborne is the share of the evaporated zinc that becomes fume.
	ZincAirborne = constant("ZincAirborne", 0.35, 0.1, 0.8, "1",
		worked("assumed, measured nowhere for this: between two sheets it is trapped, under the bead it goes into "+
			"bronze and iron, and much settles white beside the seam; the faces that are open to the air are a third "+
			"to two thirds of those heated"))

	// HoodCapture is the share of the plume that a correctly placed movable hood catches.
	HoodCapture = constant("HoodCapture", 85, 60, 95, "%",
		memoryMedium("handbooks of industrial ventilation: movable hoods in practice; less once the arc moves away "+
			"from the hood"))

	// SheetShare is the share of the fume that comes from a sheet that stays solid.
	SheetShare = constant("SheetShare", 2, 0, 10, "%",
		worked("assumed: the skin is hot and does not boil; more where it melts"))

	// StainlessChromium is the chromium content of stainless sheet.
	StainlessChromium = constant("StainlessChromium", 18, 16, 20, "%", memoryHigh("ASTM A240, 304 and 316"))

	// Hexavalent is the share of the chromium in argon-shielded fume that is hexavalent.
	Hexavalent = constant("Hexavalent", 4, 1, 10, "%",
		memoryLow("published analyses of gas metal arc fume of stainless wire"))
)

// FumeElement is the ratio of an element's content in the fume to that in the wire: elements that boil easily
// are enriched.
type FumeElement struct {
	Element, Agent string // the names in a filler's limits and in ExposureLimits; Agent is "" if no body sets a limit
	Name           string
	Enriched       Datum
}

// FumeElements lists the elements of the wires that are counted in the fume. Copper is the rest of the metal;
// the oxygen that it takes up does not count for a limit given as Cu.
var FumeElements = []FumeElement{
	{"Cu", "copper", "copper", Datum{0.7, 0.4, 0.85, "1",
		memoryLow("fume of copper-base wires is mostly copper oxide; copper is 80 % of CuO")}},
	{"Mn", "manganese", "manganese", Datum{4, 2, 8, "1",
		memoryMedium("EPA AP-42 ch. 12.19, steel wire: 6 % manganese in the fume of a wire with 1.5 %")}},
	{"Si", "", "silicon", Datum{1.5, 0.5, 4, "1", memoryLow("published analyses of gas metal arc fume")}},
	{"Al", "aluminium", "aluminium", Datum{1, 0.3, 2.5, "1", memoryLow("published analyses of gas metal arc fume")}},
	{"Ni", "nickel", "nickel", Datum{0.7, 0.3, 1.2, "1", memoryLow("published analyses of gas metal arc fume")}},
	{"Sn", "tin", "tin", Datum{1.5, 0.5, 3, "1", memoryLow("published analyses of gas metal arc fume")}},
}
