package tables

import (
	"cmp"
	"math"
	"slices"
)

// Tolerances of diameter: AWS A5.02 and A5.18 give ±0.001 in to .045 and ±0.002 in above; ISO 544 gives
// +0.01/−0.04 mm to 1.6 mm and +0.01/−0.06 above.
var (
	awsWire = memoryHigh("AWS A5.02 and A5.18, standard sizes; tolerance from memory, medium")
	isoWire = memoryHigh("ISO 544, standard sizes; tolerance from memory, medium")
)

// The spools on which a size is usually sold: common practice, no source.
const (
	smallSpools = "4 and 8 in spools"
	allSpools   = "4, 8 and 12 in spools"
	bigSpools   = "12 and 14 in spools"
	isoSmall    = "100 and 200 mm spools"
	isoAll      = "100, 200 and 300 mm spools"
	isoBig      = "300 mm spools"
)

// Wires: inch sizes, then metric ones.
var Wires = Rows[Wire]{
	{".020", Datum{0.508, 0.4826, 0.5334, "mm", awsWire}, 0.020, smallSpools},
	{".025", Datum{0.635, 0.6096, 0.6604, "mm", awsWire}, 0.025, smallSpools},
	{".030", Datum{0.762, 0.7366, 0.7874, "mm", awsWire}, 0.030, allSpools},
	{".035", Datum{0.889, 0.8636, 0.9144, "mm", awsWire}, 0.035, allSpools},
	{".040", Datum{1.016, 0.9906, 1.0414, "mm", awsWire}, 0.040, allSpools},
	{".045", Datum{1.143, 1.1176, 1.1684, "mm", awsWire}, 0.045, allSpools},
	{".052", Datum{1.3208, 1.2700, 1.3716, "mm", awsWire}, 0.052, bigSpools},
	{"1/16", Datum{1.5875, 1.5367, 1.6383, "mm", awsWire}, 0.0625, bigSpools},
	{"5/64", Datum{1.984375, 1.933575, 2.035175, "mm", awsWire}, 0.078125, bigSpools},
	{"3/32", Datum{2.38125, 2.33045, 2.43205, "mm", awsWire}, 0.09375, bigSpools},
	{"0.5mm", Datum{0.5, 0.46, 0.51, "mm", isoWire}, 0, isoSmall},
	{"0.6mm", Datum{0.6, 0.56, 0.61, "mm", isoWire}, 0, isoSmall},
	{"0.8mm", Datum{0.8, 0.76, 0.81, "mm", isoWire}, 0, isoAll},
	{"0.9mm", Datum{0.9, 0.86, 0.91, "mm", isoWire}, 0, isoAll},
	{"1.0mm", Datum{1.0, 0.96, 1.01, "mm", isoWire}, 0, isoAll},
	{"1.2mm", Datum{1.2, 1.16, 1.21, "mm", isoWire}, 0, isoAll},
	{"1.4mm", Datum{1.4, 1.36, 1.41, "mm", isoWire}, 0, isoBig},
	{"1.6mm", Datum{1.6, 1.56, 1.61, "mm", isoWire}, 0, isoBig},
	{"2.0mm", Datum{2.0, 1.94, 2.01, "mm", isoWire}, 0, isoBig},
	{"2.4mm", Datum{2.4, 2.34, 2.41, "mm", isoWire}, 0, isoBig},
}

// nearWire is how far a diameter may differ from a standard size and still mean it, mm: .062 in means 1/16 and
// .024 in means 0.6 mm, but neighbouring inch and metric sizes stay apart.
const nearWire = 0.015

// WireNear returns the standard size nearest to a nominal diameter in mm, and whether it is within
// 0.015 mm of it.
func WireNear(mm float64) (Wire, bool) {
	off := func(w Wire) float64 { return math.Abs(w.Diameter.V - mm) }
	best := slices.MinFunc(Wires, func(a, b Wire) int { return cmp.Compare(off(a), off(b)) })
	if off(best) <= nearWire {
		return best, true
	}
	return Wire{}, false
}

// Spool is one standard spool.
type Spool struct {
	ID   string
	Mass Datum // kg of steel wire; a spool of bronze holds a different mass
}

// Spools by AWS and ISO 544. An inch spool's number is its flange.
var Spools = []Spool{
	{"4 in", Datum{1.13, 0.68, 1.13, "kg", memoryMedium("AWS A5.02: 1.5 and 2.5 lb")}},
	{"8 in", Datum{4.54, 4.54, 6.80, "kg", memoryMedium("AWS A5.02: 10 to 15 lb")}},
	{"12 in", Datum{14.97, 11.34, 19.96, "kg", memoryMedium("AWS A5.02: 25, 30, 33, 35, 44 lb")}},
	{"14 in", Datum{27.2, 22.7, 27.2, "kg", memoryMedium("AWS A5.02: 50 to 60 lb")}},
	{"S100", Datum{1, 0.7, 1, "kg", memoryMedium("ISO 544")}},
	{"S200", Datum{5, 4, 5, "kg", memoryMedium("ISO 544")}},
	{"S300", Datum{15, 15, 18, "kg", memoryMedium("ISO 544")}},
}

// WireAmps is a current limit for one wire diameter.
type WireAmps struct {
	Wire float64 // mm
	Amps Datum   // A
}

// DipFloors are the currents below which a short arc in argon becomes unsteady, by wire. Their confidence is
// low, which is why the band is wide.
var DipFloors = [...]WireAmps{
	{0.762, Datum{40, 30, 50, "A", practice}},
	{0.889, Datum{50, 38, 62, "A", practice}},
	{1.143, Datum{80, 60, 100, "A", practice}},
}

var spray = memoryHigh("AWS Welding Handbook, 8th ed. vol. 2, gas metal arc: globular-to-spray transition, " +
	"silicon bronze in argon")

// SprayTransitions are the currents above which silicon bronze wire in argon sprays, by wire: .035, .045 and
// 1/16 in. The band covers the influence of gas and stick-out.
var SprayTransitions = [...]WireAmps{
	{0.889, Datum{165, 150, 180, "A", spray}},
	{1.143, Datum{205, 190, 220, "A", spray}},
	{1.5875, Datum{270, 250, 290, "A", spray}},
}
