package tables

// Preparation.
var (
	// TackPitch is the distance between tacks on sheet.
	TackPitch = constant("TackPitch", 40, 25, 50, "mm", practice)

	// SeamPiece is the length of one piece of a seam laid in skips, IronBead that of a bead on cast iron.
	// SkipFrom is the length from which a seam is laid in skips.
	SeamPiece = constant("SeamPiece", 75, 50, 100, "mm", practice)
	IronBead  = constant("IronBead", 25, 20, 30, "mm", practice)
	SkipFrom  = constant("SkipFrom", 150, 100, 200, "mm", practice)

	// IronPreheat is the least preheat of cast iron: 150 to 200 F. ChillOff is warm to the hand.
	IronPreheat = constant("IronPreheat", 80, 66, 93, "C", practice)
	ChillOff    = constant("ChillOff", 40, 30, 50, "C", practice)

	// ChillFrom is the thickness from which a part counts as heavy.
	ChillFrom = constant("ChillFrom", 6, 5, 10, "mm", practice)

	// IronPeak is the local temperature from which grey iron is in danger.
	IronPeak = constant("IronPeak", 1100, 1100, 1130, "C",
		memoryMedium("iron-carbon-silicon diagram: grey iron begins to melt near 1130 C, care from 1100"))

	// ZincStrip is how far back zinc is stripped beside stainless or hardened steel.
	ZincStrip = constant("ZincStrip", 25, 25, 50, "mm", practice)

	// VentMost is the widest gap left in a lap for zinc vapour to escape.
	VentMost = constant("VentMost", 0.1, 0.05, 0.1, "mm", read("a text on laser joining of zinc-coated laps"))

	// Bevel is the angle of a groove in a casting or in plate.
	Bevel = constant("Bevel", 75, 60, 90, "deg", read("US Army TM 9-237, castings; plate by common practice"))

	// BackingUpTo is the sheet thickness up to which a backing bar helps a butt.
	BackingUpTo = constant("BackingUpTo", 1.2, 1, 1.5, "mm", practice)

	// TipOver is how much wider than soft wire the bore of its contact tip is.
	TipOver = constant("TipOver", 0.15, 0.1, 0.2, "mm", memoryMedium("Gas Metal Arc Welding Handbook 2008"))
)
