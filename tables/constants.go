package tables

// The constants of the process: arc, wire, power source, hand. What belongs to one material stands in
// that material's row; what a formula leaves out stands in chain.go of package calc.

// The arc and what it gives the sheet.
var (
	// ArcEfficiency is the share of the arc's true power that reaches the work, droplets included: what
	// temperatures are computed from. No source names a pulsed arc; without pulses that power is U·I. Measured,
	// unlike the reporting factor below. An abstract on a controlled short arc gives about 0.85 (doi
	// 10.1179/1362171810Y.0000000029).
	ArcEfficiency = constant("ArcEfficiency", 0.84, 0.79, 0.89, "1",
		read("DuPont and Marder, Welding Journal 1995, abstract: gas metal arc 0.84"))

	// HeatInputFactor is the k that a heat input for reports is multiplied with. A convention, hence exact.
	HeatInputFactor = constant("HeatInputFactor", 0.8, 0.8, 0.8, "1",
		memoryHigh("EN 1011-1 and ISO/TR 17671-1, thermal efficiency factor of processes 131 and 135"))

	// ArcWidth is the standard deviation of the Gaussian that arc and filler share. One constant for
	// every job, calibrated on nothing.
	ArcWidth = constant("ArcWidth", 1.8, 1.6, 2.0, "mm",
		worked("assumed for arcs of 60 to 150 A in argon; not calibrated on any brazing result"))

	// Stirring multiplies the conductivity of liquid filler for the heat that its flow carries.
	Stirring = constant("Stirring", 2, 1, 4, "1", worked("assumed; 1 is metal at rest, 4 a strongly stirred pool"))

	// DropletSuperheat is how far a drop arrives above the liquidus. With arc and filler on one width
	// the whole range moves no result that matters.
	DropletSuperheat = constant("DropletSuperheat", 500, 200, 800, "K",
		worked("assumed; measured drops of other alloys span the range"))

	// DropletHeat is the specific heat of the liquid filler.
	DropletHeat = constant("DropletHeat", 0.5, 0.47, 0.55, "J/gK",
		memoryMedium("CRC Handbook: liquid copper 0.49 to 0.52; alloying raises it a little"))

	// SolidFillerConductivity holds for the solid bead near its toe. Wiedemann-Franz, k = 2.44e-8·T/ρ,
	// on CuSi3's 24.6 uOhm cm rising 0.0067 per K: 600 K → 0.055, 1200 K → 0.095 W/mmK; the page's
	// 0.036 at 20 C is the low end.
	SolidFillerConductivity = constant("SolidFillerConductivity", 0.055, 0.036, 0.095, "W/mmK",
		worked("Wiedemann-Franz law on the resistivity of the C65500 alloy data page"))

	// SurfaceLoss is the loss from each face of a hot sheet in the closed forms, convection about 10
	// with radiation: 500 C at emissivity 0.28 → 22, at 0.8 → 43; 907 C at 0.8 → 109 W/m2K. Most of a
	// bead's cooling lies between.
	SurfaceLoss = constant("SurfaceLoss", 60, 30, 90, "W/m2K",
		worked("Stefan-Boltzmann law at 500 to 900 C with emissivities 0.28 to 0.8, and free convection"))

	// RoomTemperature is the temperature of parts that nobody warmed, from a winter shed to a summer one.
	RoomTemperature = constant("RoomTemperature", 20, 0, 35, "C", practice)
)

// The wire.
var (
	// DepositionDip and DepositionPulsed are the share of the melted wire that lands in the joint.
	DepositionDip = constant("DepositionDip", 0.93, 0.90, 0.96, "1",
		memoryMedium("welding handbooks, deposition efficiency of solid wire in argon-rich gas, short arc"))
	DepositionPulsed = constant("DepositionPulsed", 0.97, 0.96, 0.98, "1",
		memoryHigh("welding handbooks, deposition efficiency of solid wire in argon-rich gas, pulsed"))

	// DefaultStickOut is the electrode extension, contact tip to arc, where nobody measured it.
	DefaultStickOut = constant("DefaultStickOut", 12, 8, 18, "mm", practice)
)

// The power source.
var (
	// LoadLineBase, LoadLineSlope and LoadLineCap make the conventional load line U = 14 + 0.05·I up
	// to 600 A, then 44 V. It rates power sources; it is not an arc's voltage.
	LoadLineBase = constant("LoadLineBase", 14, 14, 14, "V",
		memoryHigh("IEC 60974-1, conventional load voltage for MIG/MAG"))
	LoadLineSlope = constant("LoadLineSlope", 0.05, 0.05, 0.05, "V/A",
		memoryHigh("IEC 60974-1, conventional load voltage for MIG/MAG"))
	LoadLineCap = constant("LoadLineCap", 44, 44, 44, "V",
		memoryHigh("IEC 60974-1, conventional load voltage for MIG/MAG above 600 A"))

	// DipVoltFactor scales the load line to a short arc in argon. Two settings known to run give
	// 14.8/18.65 = 0.794 at 93 A and 16.5/19.7 = 0.838 at 114 A. DipVoltBand is the half-band in volts
	// and carries the whole uncertainty.
	DipVoltFactor = constant("DipVoltFactor", 0.81, 0.81, 0.81, "1",
		worked("between two short-arc settings of common practice, 93 A 14.8 V and 114 A 16.5 V"))
	DipVoltBand = constant("DipVoltBand", 1.2, 1.2, 1.2, "V",
		worked("spread of two short-arc settings about the scaled load line, and of power sources"))

	// PulsedVoltFactor and PulsedVoltBand are the same for the mean of a pulsed waveform, which every
	// power source shapes in its own way.
	PulsedVoltFactor = constant("PulsedVoltFactor", 0.95, 0.95, 0.95, "1",
		worked("assumed: the mean of a pulsed arc runs a little under the load line"))
	PulsedVoltBand = constant("PulsedVoltBand", 3, 3, 3, "V",
		worked("assumed: waveforms differ from one power source to the next"))

	// DutyPeriod is the time over which a rated duty is counted.
	DutyPeriod = constant("DutyPeriod", 10, 10, 10, "min", memoryHigh("IEC 60974-1, duty cycle"))
)

// The welder's hand and the job.
var (
	// HandSpeedLow and HandSpeedHigh bound the travel that a hand holds evenly.
	HandSpeedLow  = constant("HandSpeedLow", 4, 3, 5, "mm/s", practice)
	HandSpeedHigh = constant("HandSpeedHigh", 14, 12, 16, "mm/s", practice)

	// HandAim is the 95 % half-band of where a hand points the arc across the joint.
	HandAim = constant("HandAim", 0.5, 0.5, 0.5, "mm", practice)

	// UnequalFrom is the ratio of two thicknesses, or of the heat that two members carry away, from which a welder aims
	// at the one that carries more, AimOff how far off the joint they then aim at most, AimShare the share of that on a
	// tee, a butt or a corner, where more costs the other member its wetting.
	UnequalFrom = constant("UnequalFrom", 1.25, 1.2, 1.5, "1", practice)
	AimOff      = constant("AimOff", 1, 0, 1, "mm", practice)
	AimShare    = constant("AimShare", 0.7, 0.5, 1, "1",
		worked("the cross-section's chances over aims, 0.8 to 3 mm; own computation"))

	// HandRepeats is how closely a hand repeats a travel, and a feeder a feed, from bead to bead.
	HandRepeats = constant("HandRepeats", 5, 3, 10, "%", practice)

	// MarginalUnder is the chance under which a setting that meets every edge is not called good: even odds.
	MarginalUnder = constant("MarginalUnder", 50, 50, 50, "%", practice)

	// GunAngle is the push angle from square to the seam.
	GunAngle = constant("GunAngle", 15, 10, 20, "deg", practice)

	// SheetThinnest and SheetThickest bound the sheet that arc brazing suits.
	SheetThinnest = constant("SheetThinnest", 0.2, 0.2, 0.2, "mm", read("TWI Job Knowledge 134"))
	SheetThickest = constant("SheetThickest", 3, 3, 3, "mm", read("TWI Job Knowledge 134: to about 3 mm"))

	// SectionThickest is the thickness up to which the cross-section was held against anything.
	SectionThickest = constant("SectionThickest", 25, 25, 25, "mm",
		worked("exact plates and a three-dimensional model of 0.2 to 25 mm"))

	// ServiceLimit is the continuous service temperature of a joint brazed with a copper alloy: 400 F, which itself is
	// allowed, so that its 204.44 C lies within.
	ServiceLimit = constant("ServiceLimit", 204.5, 200, 204.5, "C",
		memoryMedium("brazing handbooks, continuous service of copper-alloy brazed joints, 400 F"))
)
