package tables

// Gauges are inches as printed; columns number, MSG, galvanized nominal, galvanized minimum, US, B&S.
//
//   - MSG: weight at 41.82 lb/ft2 per inch of thickness, from GNU units 2.22 definitions and a sheet-steel
//     gauge note of 2009 (read). It is 2.5 % heavier than steel, an allowance for oversize sheets.
//   - Galvanized nominal and minimum: SMACNA tables after ASTM A924 (read). Nominal is MSG and 0.0037
//     to 0.0038 in of zinc, an older and heavier coat than today's. Galvanized gauge 7 does not exist.
//   - US: 15 USC 206, ounces per square foot over 640 (read). Shops also print .1200 for 11 and .0937 for 13.
//   - B&S: 0.005·92^((36−g)/39), ASTM B258 (read).
var Gauges = []Gauge{
	{7, 0.1793, 0, 0, 0.1875, 0.1443},
	{8, 0.1644, 0.1681, 0.1591, 0.1719, 0.1285},
	{9, 0.1495, 0.1532, 0.1442, 0.1562, 0.1144},
	{10, 0.1345, 0.1382, 0.1292, 0.1406, 0.1019},
	{11, 0.1196, 0.1233, 0.1143, 0.1250, 0.0907},
	{12, 0.1046, 0.1084, 0.0994, 0.1094, 0.0808},
	{13, 0.0897, 0.0934, 0.0854, 0.0938, 0.0720},
	{14, 0.0747, 0.0785, 0.0705, 0.0781, 0.0641},
	{15, 0.0673, 0.0710, 0.0650, 0.0703, 0.0571},
	{16, 0.0598, 0.0635, 0.0575, 0.0625, 0.0508},
	{17, 0.0538, 0.0575, 0.0525, 0.0563, 0.0453},
	{18, 0.0478, 0.0516, 0.0466, 0.0500, 0.0403},
	{19, 0.0418, 0.0456, 0.0406, 0.0437, 0.0359},
	{20, 0.0359, 0.0396, 0.0356, 0.0375, 0.0320},
	{21, 0.0329, 0.0366, 0.0326, 0.0344, 0.0285},
	{22, 0.0299, 0.0336, 0.0296, 0.0312, 0.0253},
	{23, 0.0269, 0.0306, 0.0266, 0.0281, 0.0226},
	{24, 0.0239, 0.0276, 0.0236, 0.0250, 0.0201},
	{25, 0.0209, 0.0247, 0.0217, 0.0219, 0.0179},
	{26, 0.0179, 0.0217, 0.0187, 0.0187, 0.0159},
	{27, 0.0164, 0.0202, 0.0172, 0.0172, 0.0142},
	{28, 0.0149, 0.0187, 0.0157, 0.0156, 0.0126},
	{29, 0.0135, 0.0172, 0.0142, 0.0141, 0.0113},
	{30, 0.0120, 0.0157, 0.0127, 0.0125, 0.0100},
}

// The range of gauge numbers, the same in every system here.
const (
	firstGauge = 7
	lastGauge  = 30
)

// GaugeThickness returns the nominal thickness of gauge n in the system, in inches as printed. It returns false
// outside 7 to 30 and for galvanized 7, which does not exist. Galvanized thickness includes the coat.
func GaugeThickness(n int, sys GaugeSystem) (inches float64, ok bool) {
	if n < firstGauge || n > lastGauge {
		return 0, false
	}
	g := &Gauges[n-firstGauge]
	inches = map[GaugeSystem]float64{MSG: g.MSG, GSG: g.GSG, USSG: g.US, BS: g.BS}[sys]
	return inches, inches > 0
}

// GaugeTolerance returns how far a sheet may differ from the nominal thickness of gauge n, in inches each way:
// galvanized nominal less minimum, SMACNA tables after ASTM A924. The sheets of the other systems stay within
// it. It is 0 outside 7 to 30; 7 gets the tolerance of 8.
func GaugeTolerance(n int) float64 {
	if n < firstGauge || n > lastGauge {
		return 0
	}
	g := &Gauges[max(n-firstGauge, 1)]
	return g.GSG - g.GSGMin
}
