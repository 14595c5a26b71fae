package tables

// What an arc does to a liquid root, and how far the models of open roots, gaps and positions can be trusted. A
// doubt is one standard deviation of the logarithm of an edge's ratio.

// The force of the arc.
var (
	// ArcForce is the arc's force over the square of the current.
	ArcForce = constant("ArcForce", 3e-7, 1.5e-7, 6e-7, "N/A2",
		memoryLow("measured arc forces in argon at 50 to 200 A"))

	// RMSDip and RMSPulsed are the ratio of the root mean square of the current to its mean. Pulses of 350 A
	// over 40 A with a mean of 100 A give 1.57.
	RMSDip = constant("RMSDip", 1.2, 1.1, 1.35, "1",
		worked("assumed: shorts at 1.5 to 2 times the mean, a third of the time"))
	RMSPulsed = constant("RMSPulsed", 1.6, 1.4, 1.9, "1",
		worked("pulses of 300 to 400 A over 30 to 50 A, mean 80 to 130 A"))

	// ArcPressureWidth is the standard deviation of the pressure distribution over the pool.
	ArcPressureWidth = constant("ArcPressureWidth", 1.2, 1, 1.5, "mm", worked("assumed: narrower than the heat's"))

	// DropSpeed is the speed at which filler arrives.
	DropSpeed = constant("DropSpeed", 0.3, 0.1, 1, "m/s",
		worked("assumed; drops that fly freely go faster than short circuits"))
)

// The open root of a butt.
var (
	// RootWetted is the share of the hot back width, on each edge, that the root's metal wets. RootGrows is the
	// gap over which this builds up: nothing runs through a closed joint.
	RootWetted = constant("RootWetted", 0.5, 0, 1, "1", worked("assumed: half of what is hot enough"))
	RootGrows  = constant("RootGrows", 0.3, 0.15, 0.6, "mm",
		worked("assumed: nearly nothing runs through a tenth of it"))

	// RootOpeningSheet and RootOpeningWire are a square butt's root opening relative to the thinner sheet and
	// to the wire. The smaller of the two openings is filled to nine tenths and still bridged.
	RootOpeningSheet = constant("RootOpeningSheet", 0.9, 0.5, 0.9, "1",
		worked("the root's four margins at a chance of 80 in 100; ISO 9692-1 allows about the thickness for fusion "+
			"welds (memory medium)"))
	RootOpeningWire = constant("RootOpeningWire", 1, 0.6, 1.2, "1",
		worked("the root's four margins at a chance of 80 in 100"))

	// LandClearance is the distance that the wire keeps from the end of the puddle.
	LandClearance = constant("LandClearance", 0.3, 0.1, 0.6, "mm",
		worked("assumed: a wire's weave and the puddle's own motion"))

	// RootBulge and RootBulgePerWidth are the limits of the root's height: 1 mm and 0.3 of its width.
	RootBulge = constant("RootBulge", 1, 1, 1, "mm",
		read("ISO 5817 no. 504 level C, 0.5 to 3 mm, written for fusion welds"))
	RootBulgePerWidth = constant("RootBulgePerWidth", 0.3, 0.3, 0.3, "1", read("ISO 5817 no. 504 level C, 0.5 to 3 mm"))

	// RootThinnest and RootThickest are the limits of the sheet whose open root is judged.
	RootThinnest = constant("RootThinnest", 0.5, 0.5, 0.5, "mm", read("ISO 5817 no. 504, its range for thin sheet"))
	RootThickest = constant("RootThickest", 3, 3, 3, "mm", read("ISO 5817 no. 504, its range for thin sheet"))

	BridgesDoubt = constant("BridgesDoubt", 0.28, 0.28, 0.28, "1",
		worked("judgement: wetting angle -42 to +14 %, pressure 15 %, the puddle's front 0.5 mm, fit-up 0.2 mm; held "+
			"against no brazing test"))
)

// A lap, tee or corner with a gap.
var (
	// CreepsIn is how far metal runs into the gap, relative to the narrower wetted width.
	CreepsIn = constant("CreepsIn", 0.7, 0, 1, "1",
		worked("assumed; nothing at one end, as far as on the face at the other"))

	TouchDoubt = constant("TouchDoubt", 0.22, 0.22, 0.22, "1",
		worked("judgement: how far metal creeps in, fit-up 0.2 mm"))
	GapFilledDoubt = constant("GapFilledDoubt", 0.12, 0.12, 0.12, "1",
		worked("judgement: how far metal creeps in, fit-up"))
)

// Positions.
var (
	// OverheadShare is how much of the bead that would hang at rest still hangs with short circuits and an
	// unsteady hand, as a share.
	OverheadShare = constant("OverheadShare", 0.7, 0.45, 1.1, "1",
		worked("assumed; an overhead fillet of 8 mm, the largest that AWS D1.1 lets pass in one run (memory medium), "+
			"is 0.7 of the chord that hangs at rest"))

	// PoolTaper is the greatest ratio of a pool's area to its bounding box for a pool that narrows behind the
	// arc. It gives the pool's weight on the shelf.
	PoolTaper = constant("PoolTaper", 0.42, 0.39, 0.47, "1", worked("pools from the cross-section's freezing times"))

	// FrontAngle is the angle at which the front of a pool that runs down meets the bare sheet.
	FrontAngle = constant("FrontAngle", 90, 60, 120, "deg",
		worked("assumed: between wetting hot steel and standing on cold"))

	OverheadDoubt   = constant("OverheadDoubt", 0.24, 0.24, 0.24, "1", worked("judgement: the share above"))
	HorizontalDoubt = constant("HorizontalDoubt", 0.22, 0.22, 0.22, "1",
		worked("the lower toe's angle from 70 to 120 degrees"))
	UpDoubt   = constant("UpDoubt", 0.25, 0.25, 0.25, "1", worked("judgement: the pool's length -25 to +30 %"))
	DownDoubt = constant("DownDoubt", 0.30, 0.30, 0.30, "1",
		worked("judgement: front's angle, pool's length, arc's force"))
)

// The edges of a joint without a gap, for the chance that a setting works. The doubts of the heat and of the
// current come from each card.
var (
	WetsDoubt = constant("WetsDoubt", 0.20, 0.20, 0.20, "1",
		worked("judgement: the cross-section's width, -13 to +24 %"))
	SolidDoubt = constant("SolidDoubt", 0.06, 0.06, 0.06, "1",
		worked("judgement: the section's temperatures without the heat's doubt"))
	FilledDoubt = constant("FilledDoubt", 0.05, 0.05, 0.05, "1",
		worked("judgement: deposition efficiency, feed, travel"))
	ZincDoubt = constant("ZincDoubt", 0.20, 0.20, 0.20, "1",
		worked("judgement: the zinc band's own form, 25 to 30 %"))
	SlowDoubt = constant("SlowDoubt", 0.06, 0.06, 0.06, "1", practice)
	FastDoubt = constant("FastDoubt", 0.04, 0.04, 0.04, "1", practice)
)
