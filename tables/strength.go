package tables

// Strength of brazed joints.

// FilletTest is one arc-brazed longitudinal fillet that was pulled until it failed: CuAl7 wire on S355.
type FilletTest struct {
	Throat, Length, Force float64 // mm, mm, kN
	Bond                  bool    // failed in the diffusion zone, otherwise in the throat
}

// FilletTests as printed in Materials 18(10):2339, 2025, doi 10.3390/ma18102339, Table A1 (read). Force divided
// by throat times length is not the paper's own stress, which refers to the measured fracture face.
var FilletTests = []FilletTest{
	{3.70, 100, 160.96, false},
	{3.40, 160, 190.47, false},
	{3.69, 100, 140.55, false},
	{3.26, 110, 123.33, true},
	{3.32, 90, 59.34, true},
	{5.05, 90, 78.98, true},
	{4.80, 100, 122.79, true},
	{5.00, 110, 171.36, true},
}

// DesignSafety divides the low end of a strength: no standard gives a factor for these joints.
var DesignSafety = constant("DesignSafety", 3, 3, 3, "1",
	worked("assumed: no standard design factor exists for arc-brazed joints"))

// A shorter seam is little but its start and its crater, and no test of arc-brazed joints had one.
var (
	ShortestSeam = constant("ShortestSeam", 30, 30, 30, "mm",
		memoryHigh("EN 1993-1-8 4.5.1(2): a shorter fillet is not designed to carry load"))
	ShortestSeamThroats = constant("ShortestSeamThroats", 6, 6, 6, "1",
		memoryHigh("EN 1993-1-8 4.5.1(2): a fillet of under six throats is not designed to carry load"))
)

// The limits for a shop's own pull tests.
var (
	PulledLeast = constant("PulledLeast", 5, 5, 5, "1",
		worked("with fewer the tolerance factor is over 5: the bound says nothing"))
	PulledCoverage = constant("PulledCoverage", 95, 95, 95, "%",
		memoryHigh("usual for a characteristic strength: 5 % fall below it"))
	PulledConfidence = constant("PulledConfidence", 95, 95, 95, "%",
		memoryHigh("usual one-sided tolerance bound, Owen 1963"))
)

// Plug geometry, from welding codes. A brazed plug counts by its wetted area, as no metal is fused.
var (
	PlugHoleOverSheet = constant("PlugHoleOverSheet", 8, 8, 8, "mm",
		read("AWS D1.1 and AISC as restated: hole at least sheet thickness and 8 mm"))
	PlugHoleSpan = constant("PlugHoleSpan", 3, 3, 3, "mm",
		read("AWS D1.1 and AISC as restated: at most 3 mm over the least hole, or 2.25 times the weld's thickness"))
	PlugHolePerDepth = constant("PlugHolePerDepth", 2.25, 2.25, 2.25, "1",
		read("AWS D1.1 and AISC as restated: at most 2.25 times the weld's thickness"))
	PlugPitch = constant("PlugPitch", 4, 4, 4, "1",
		read("AWS D1.1 and AISC as restated: centres at least 4 diameters"))
	PlugTearOut = constant("PlugTearOut", 2.2, 1.4, 2.2, "1",
		memoryHigh("AISI S100, arc spot welds in shear: 2.20·t·d·Fu, down to 1.40 in thin sheet"))
)
