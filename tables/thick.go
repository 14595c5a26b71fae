package tables

// Thick parts: how far they are warmed, and which parts warm up by themselves.
var (
	// PreheatUsual is the preheat up to which a shop simply warms a part. Up to PreheatMost a thicker wire is
	// offered as well, and above it another process. Both are assumed: the first is what somebody can stand
	// beside, the second what a torch can hold in a part that loses heat. BelowSolidus is how far below its
	// solidus a part must stay to keep its shape; it is assumed too.
	PreheatUsual = constant("PreheatUsual", 350, 300, 400, "C", practice)
	PreheatMost  = constant("PreheatMost", 600, 500, 650, "C", practice)

	// HardenedWarmest is how warm hardened sheet may be kept before it begins to soften.
	HardenedWarmest = constant("HardenedWarmest", 200, 200, 250, "C", practice)
	BelowSolidus    = constant("BelowSolidus", 300, 300, 300, "K", practice)

	// GroovePass is the least metal for which a pass in a groove is worth laying.
	GroovePass = constant("GroovePass", 5.5, 4, 8, "mm2", practice)

	// SoakWidth is how far to each side of the seam a part is warmed, if its width is not given.
	SoakWidth = constant("SoakWidth", 75, 50, 100, "mm", practice)

	// StripShare is the share of the heat reflected by a strip's edges that arrives where the peak is.
	StripShare = constant("StripShare", 0.75, 0.55, 0.95, "1",
		worked("a three-dimensional model of strips 30 and 60 mm wide: 38 of 53 K, 170 of 244 K"))
)
