package tables

// Overlay and build-up.
var (
	// PitchTangent and PitchFlat are the ratio of bead pitch to bead width in two rival models.
	PitchTangent = constant("PitchTangent", 0.738, 0.738, 0.738, "1",
		memoryHigh("Ding 2015, tangent overlapping model"))
	PitchFlat = constant("PitchFlat", 0.667, 0.667, 0.667, "1",
		memoryHigh("Suryakumar 2011, flat-top overlapping model"))

	// MachiningAllowance is laid on top of the wanted height and turned off again.
	MachiningAllowance = constant("MachiningAllowance", 1, 0.5, 1.5, "mm", practice)

	// OverlayUsual is the height up to which a shop builds up by overlay.
	OverlayUsual = constant("OverlayUsual", 10, 6, 12, "mm", practice)

	// FusedDilution is the share of base metal in a fused overlay; a brazed one has almost none.
	FusedDilution = constant("FusedDilution", 22.5, 20, 25, "%",
		read("InTech chapter on fused arc overlays, Diaz et al."))

	// InterpassSilicon and InterpassAluminium are the highest temperatures of a part before the next bead, on
	// silicon bronze and on aluminium bronze under 10 % Al.
	InterpassSilicon = constant("InterpassSilicon", 65, 65, 66, "C",
		memoryHigh("AWS A5.7 annex, silicon bronze base, 150 F"))
	InterpassAluminium = constant("InterpassAluminium", 150, 150, 150, "C",
		memoryMedium("AWS A5.7 annex, aluminium bronze under 10 % Al"))
)

// Cooling of a part between layers.
var (
	// FreeConvection is the heat transfer from a warm part to still air, without radiation.
	FreeConvection = constant("FreeConvection", 8, 5, 12, "W/m2K",
		memoryMedium("heat-transfer handbooks: free convection in air 2 to 25 W/m2K, parts of this size at 50 to 300 "+
			"C mostly 5 to 12"))

	// BarBeyond is how far a shaft extends beyond the overlay on each side, in diameters, if the job does not
	// say.
	BarBeyond = constant("BarBeyond", 4, 1, 10, "1", practice)
)

// Money. The user enters the prices; these describe how a shop's hours are spent.
var (
	OperatingFactor = constant("OperatingFactor", 40, 25, 60, "%",
		memoryMedium("welding cost handbooks, arc-on share of a semi-automatic booth's time"))
	LabourShare = constant("LabourShare", 85, 80, 90, "%",
		read("NAVEDTRA 14251A ch. 5: labour and overhead about 85 % of the total"))
)
