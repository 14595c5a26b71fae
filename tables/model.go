package tables

// The errors of the closed forms and the resolution of a shop's instruments: uncertainties of a model or a
// reading, not of a material.
var (
	// CurrentForm is the error of the wire's energy balance itself if the stick-out was measured. With the
	// bands of its inputs it gives the stated 15 % on current. The trade's rule for steel wire is met within 9
	// % RMS.
	CurrentForm = constant("CurrentForm", 1, 0.91, 1.09, "1",
		worked("energy balance held against the in/min-per-ampere rule for steel wire, 9 % RMS"))

	// CurrentFormUnmeasured is the same if the stick-out is assumed: contact-tip wear, arc length and the
	// welder's habit are then unknown too, and the band is 20 %.
	CurrentFormUnmeasured = constant("CurrentFormUnmeasured", 1, 0.86, 1.14, "1",
		worked("as above, widened to the stated 20 % where nothing was measured"))

	// VoltFactorSigma is one standard deviation of the voltage factor before any reading.
	VoltFactorSigma = constant("VoltFactorSigma", 0.04, 0.04, 0.04, "1",
		worked("prior of the voltage factor, one standard deviation"))

	// ZincBandForm is the error of a zinc band because a point source in thin sheet is assumed. With its inputs
	// it gives about 30 %. It is not validated on zinc.
	ZincBandForm = constant("ZincBandForm", 1, 0.8, 1.25, "1",
		worked("point source against a two-dimensional one of the arc's width at hand speeds, and no measured zinc "+
			"band"))

	// SectionWidth is the cross-section model's uncertainty of the wetted width of one member, aim included;
	// SectionTotal is that of both together.
	SectionWidth = constant("SectionWidth", 1, 0.75, 1.25, "1",
		worked("cross-section model against moving two-dimensional ones, with arc width, stirring and aim varied"))
	SectionTotal = constant("SectionTotal", 1, 0.82, 1.24, "1",
		worked("arc width and stirring varied, and below that the 12 % by which the plane of thin steel wets less"))

	// IronBoils is the highest temperature that a steel surface can reach; a computed peak above it is
	// meaningless. The other metals here boil at or below it.
	IronBoils = constant("IronBoils", 2862, 2750, 2900, "C",
		memoryHigh("CRC Handbook of Chemistry and Physics, boiling points of the elements"))

	// SectionRiseEnding and SectionRiseThrough are the model's uncertainty of the peak's rise in the member
	// that ends at the joint and in the one that runs through.
	SectionRiseEnding = constant("SectionRiseEnding", 1, 0.84, 1.18, "1",
		worked("above: a model with the bead's true shape, hotter at the edge's corner; below: joined with the 10 % "+
			"by which the plane of thin steel stays cooler"))
	SectionRiseThrough = constant("SectionRiseThrough", 1, 0.85, 1.11, "1",
		worked("moving two-dimensional models; below: joined with the 10 % by which the plane of thin steel stays "+
			"cooler"))

	// SectionWidthThick is SectionWidth for members of more than 3 mm.
	SectionWidthThick = constant("SectionWidthThick", 1, 0.70, 1.30, "1",
		worked("cross-section model against three-dimensional ones of 4 to 12 mm, with arc width, stirring and aim "+
			"varied"))

	// WeldBraze is the ratio of the peak's rise to that of the toe's temperature when a bead just wets. A metal
	// that begins to melt below that peak cannot be wetted and stay solid.
	WeldBraze = constant("WeldBraze", 1.3, 1.3, 2.2, "1",
		worked("cross-sections of copper and grey iron, every thickness and preheat"))

	// OnePass is the most metal that one bead can lay with a clean shape.
	OnePass = constant("OnePass", 11, 10, 12, "mm2", practice)

	// TimedForm scales the heat into the sheet in the line-source estimate of arc times.
	TimedForm = constant("TimedForm", 1, 0.6, 1.6, "1",
		worked("neither floor nor ceiling: spread, droplets and melting left out"))

	// GapOnMin, GapOnMax and GapOff are the uncertainty of the limits of arc on and off over a root gap if the
	// arc's power is known. The constants ending in Power say how steeply each limit falls with that power.
	GapOnMin = constant("GapOnMin", 1, 0.75, 1.6, "1",
		worked("recomputed at the ends of arc efficiency, arc width, stirring, conductivity and melt depth, joined as "+
			"independent"))
	GapOnMax = constant("GapOnMax", 1, 0.6, 2.2, "1",
		worked("as above, where the base metal melts at the root edge; stirring is most of it"))
	GapOff        = constant("GapOff", 1, 0.62, 1.6, "1", worked("as above, the cooling of the puddle's middle"))
	GapOnMinPower = constant("GapOnMinPower", 1.9, 1.3, 2.8, "1", worked("recomputed at 15 % more and less power"))
	GapOnMaxPower = constant("GapOnMaxPower", 3.8, 2.4, 5.8, "1", worked("recomputed at 15 % more and less power"))
	GapOffPower   = constant("GapOffPower", 2, 0.4, 4, "1", worked("recomputed at 15 % more and less power"))

	// SteadyGap is the widest root opening that an arc without pauses is known to bridge in thin sheet.
	SteadyGap = constant("SteadyGap", 0.6, 0.6, 1, "mm",
		memoryMedium("papers on arc brazing of thin dual-phase sheet: 0.6 mm bridged without a pause"))

	// EdgeMelt is the share of the sheet's thickness that may be molten at the root edge. It has little effect
	// on the longest arc on.
	EdgeMelt = constant("EdgeMelt", 0.2, 0.05, 0.3, "1",
		worked("a rounded edge still carries the next spot; a fifth is the middle of what moves nothing"))

	// ShortestOn is the shortest arc on that a welder or a timer repeats evenly. LongestOn and LongestOff are
	// the limits beyond which on and off are no longer a rhythm.
	ShortestOn = constant("ShortestOn", 0.15, 0.1, 0.2, "s", practice)
	LongestOn  = constant("LongestOn", 2, 1, 3, "s", practice)
	LongestOff = constant("LongestOff", 8, 4, 10, "s", practice)

	// QuickestOff is the shortest pause that a welder keeps without a timer, and the shortest for which times are given:
	// below it they change without order from one thickness to the next. NarrowestOn is the narrowest range
	// from shortest to longest on that a welder can stay within.
	QuickestOff = constant("QuickestOff", 0.1, 0.08, 0.15, "s", practice)
	NarrowestOn = constant("NarrowestOn", 0.04, 0.02, 0.06, "s", practice)

	// ClosedGap is the root opening up to which edges count as touching: it is fit-up, not a gap.
	ClosedGap = constant("ClosedGap", 0.1, 0.05, 0.2, "mm", practice)

	// SeamShown is the length that a seam's time is given for if the job has no length.
	SeamShown = constant("SeamShown", 100, 100, 100, "mm", practice)

	// Reinforcement is the ratio of the metal above an open root to the metal in it.
	Reinforcement = constant("Reinforcement", 0.85, 0.7, 1, "1",
		worked("a Gaussian deposit over a gap of about its own width"))

	// StickOutReading is how accurately a welder reads and holds a stick-out, mm.
	StickOutReading = constant("StickOutReading", 1, 1, 1, "mm", practice)

	// CalliperReading is how accurately a sheet is measured with a shop calliper, mm.
	CalliperReading = constant("CalliperReading", 0.03, 0.03, 0.03, "mm", practice)

	// UnusualWireTolerance is the tolerance assumed for a wire that no standard lists, mm.
	UnusualWireTolerance = constant("UnusualWireTolerance", 0, -0.04, 0.0254, "mm",
		memoryMedium("the widest of AWS A5.02 and ISO 544 below 1.6 mm"))

	// AluSiliconDensity is the density of an aluminium-silicon coat, g/cm3.
	AluSiliconDensity = constant("AluSiliconDensity", 3.0, 2.7, 3.2, "g/cm3",
		memoryMedium("EN 10346, aluminium-silicon coatings"))
)

// The toe angle above which a bead counts as a cold lap. It is 180 degrees less the outer angle that an
// inspector accepts for quality level C.
var (
	ColdAngleFillet = constant("ColdAngleFillet", 80, 80, 80, "deg",
		memoryHigh("ISO 5817 no. 505 level C, written for fusion welds: fillet toe at least 100 degrees"))
	ColdAngleButt = constant("ColdAngleButt", 70, 70, 70, "deg",
		memoryHigh("ISO 5817 no. 505 level C, written for fusion welds: butt toe at least 110 degrees"))
)

// Learning from a booth's own readings.
var (
	// ReadingSigma is one standard deviation of a reading, as a share of it.
	ReadingSigma = constant("ReadingSigma", 0.015, 0.01, 0.03, "1", practice)

	// LearnedFloor is the 95 % band that remains however many readings there are: the error that they all
	// share.
	LearnedFloor = constant("LearnedFloor", 0.02, 0.02, 0.02, "1",
		worked("systematic floor: meters, stick-out and timing are wrong in the same way each time"))

	// DialSigma is one standard deviation of the value that a dial's position gives, as a share of it: a pull
	// timed by hand, a scale read by eye.
	DialSigma = constant("DialSigma", 0.02, 0.01, 0.04, "1", practice)

	// DialFirm is how many readings of a dial DialSigma counts for.
	DialFirm = constant("DialFirm", 4, 2, 8, "1",
		worked("simulated booths whose readings scatter as expected or less keep their band"))

	// EtaSigma is one standard deviation of a booth's arc efficiency before any verdict.
	EtaSigma = constant("EtaSigma", 0.025, 0.025, 0.025, "1",
		worked("half of the 95 % band between measured efficiencies"))
)
