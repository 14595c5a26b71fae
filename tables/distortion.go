package tables

// Shrinker holds the properties that decide how a metal shrinks and bends when a seam cools.
type Shrinker struct {
	Family    Family
	Modulus   Datum // GPa, at room temperature, where the remaining force acts
	Expansion Datum // mean from room temperature to about 600 C, 1e-6/K
}

// Shrinkers lists the metals whose distortion is computed. Cast iron is missing because it cracks rather than
// bends.
var Shrinkers = []Shrinker{
	{Steel, Datum{206, 200, 212, "GPa", memoryHigh("EN 1993-1-1: 210; data sheets 200 to 212")},
		Datum{14.2, 13.2, 14.8, "1e-6/K", memoryHigh("EN 1993-1-2:2005 3.4.1.1, mean from 20 to 600 C")}},
	{Stainless, Datum{195, 190, 200, "GPa", memoryHigh("EN 1993-1-4: 200; data sheets 190 to 200")},
		Datum{18.5, 17.5, 19, "1e-6/K", memoryHigh("EN 10088-1, mean to 500 C 18.0 to 18.5")}},
	{CopperFam, Datum{120, 115, 130, "GPa", memoryHigh("ASM Handbook vol. 2, copper")},
		Datum{18, 17.3, 18.8, "1e-6/K", memoryHigh("ASM Handbook vol. 2, copper, mean to 600 C")}},
	{BrassFam, Datum{110, 100, 115, "GPa", memoryHigh("ASM Handbook vol. 2, cartridge brass")},
		Datum{20.5, 19.9, 21.5, "1e-6/K", memoryHigh("ASM Handbook vol. 2, cartridge brass, mean to 300 C 19.9")}},
	{Bronze, Datum{112, 103, 120, "GPa", memoryHigh("ASM Handbook vol. 2, C65500 103, C61400 117")},
		Datum{17.8, 16.2, 18.6, "1e-6/K", memoryHigh("ASM Handbook vol. 2, C65500 18.0, C61400 16.2")}},
}

var (
	// ShrinkageForce is the part of the heat's free shrinkage that remains as a force along the seam.
	ShrinkageForce = constant("ShrinkageForce", 0.335, 0.27, 0.44, "1",
		memoryMedium("Okerblom 1958, 0.335; White and Leggatt for steel 0.20 kN per J/mm, Terasaki 0.235, which are "+
			"0.33 to 0.44 of this"))

	// ShrinkageAcross is the part that remains as shrinkage across a free butt.
	ShrinkageAcross = constant("ShrinkageAcross", 0.9, 0.6, 1.2, "1",
		memoryLow("Okerblom, free plates 1; clamped or long ones less"))

	// AngularChange multiplies the free shrinkage of q/t2 into an angle, rad, up to AngularLimit.
	AngularChange = constant("AngularChange", 1.5, 0.7, 2.3, "1",
		memoryLow("Okerblom, Nikolaev: a bead on plate, greatest near 2 degrees at q/t2 of 9 J/mm3"))

	// AngularLimit is the heat over the square of the thickness above which a plate is heated through and bends
	// less again.
	AngularLimit = constant("AngularLimit", 8, 6, 10, "J/mm3",
		memoryLow("Okerblom, Nikolaev: the angle's greatest value"))

	// PlateHeld and PlateFree are the buckling coefficients of a long strip: with both edges held straight, and
	// with one edge free.
	PlateHeld = constant("PlateHeld", 4, 4, 4, "1",
		memoryHigh("Timoshenko and Gere, Theory of Elastic Stability, long plate, simply supported edges"))
	PlateFree = constant("PlateFree", 0.425, 0.425, 0.425, "1",
		memoryHigh("Timoshenko and Gere, one edge free; EN 1993-1-5, outstand 0.43"))

	// Poisson is Poisson's ratio, which differs too little between these metals to matter here.
	Poisson = constant("Poisson", 0.3, 0.27, 0.35, "1", memoryHigh("EN 1993-1-1; copper alloys 0.33 to 0.35"))
)
