package tables

// The constants of the process: arc, wire, power source and hand. Properties of one material are in that
// material's row, and the errors of formulas in model.go.

// The arc and the heat that it gives the sheet.
var (
	// ArcEfficiency is the share of the arc's true power that reaches the work, droplets included; temperatures
	// are computed from it. No source covers a pulsed arc; for an arc without pulses the power is U·I. It is
	// measured, unlike HeatInputFactor. An abstract on a controlled short arc gives about 0.85 (doi
	// 10.1179/1362171810Y.0000000029).
	ArcEfficiency = constant("ArcEfficiency", 0.84, 0.79, 0.89, "1",
		read("DuPont and Marder, Welding Journal 1995, abstract: gas metal arc 0.84"))

	// HeatInputFactor is the factor k of a reported heat input. It is a convention and therefore exact.
	HeatInputFactor = constant("HeatInputFactor", 0.8, 0.8, 0.8, "1",
		memoryHigh("EN 1011-1 and ISO/TR 17671-1, thermal efficiency factor of processes 131 and 135"))

	// ArcWidth is the standard deviation of the Gaussian that describes both arc and filler. It is the same for
	// every job and is not calibrated.
	ArcWidth = constant("ArcWidth", 1.8, 1.6, 2.0, "mm",
		worked("assumed for arcs of 60 to 150 A in argon; not calibrated on any brazing result"))

	// Stirring multiplies the conductivity of the liquid filler, for the heat that its flow carries.
	Stirring = constant("Stirring", 2, 1, 4, "1", worked("assumed; 1 is metal at rest, 4 a strongly stirred pool"))

	// DropletSuperheat is the temperature of a drop above the liquidus when it arrives. As arc and filler have
	// one width, the whole range changes no result that matters.
	DropletSuperheat = constant("DropletSuperheat", 500, 200, 800, "K",
		worked("assumed; measured drops of other alloys span the range"))

	// DropletHeat is the specific heat of the liquid filler.
	DropletHeat = constant("DropletHeat", 0.5, 0.47, 0.55, "J/gK",
		memoryMedium("CRC Handbook: liquid copper 0.49 to 0.52; alloying raises it a little"))

	// SolidFillerConductivity is that of the solid bead near its toe. By Wiedemann-Franz, k = 2.44e-8·T/ρ, with
	// CuSi3's 24.6 uOhm cm rising by 0.0067 per K: 600 K → 0.055, 1200 K → 0.095 W/mmK. The data page's 0.036
	// at 20 C is the low end.
	SolidFillerConductivity = constant("SolidFillerConductivity", 0.055, 0.036, 0.095, "W/mmK",
		worked("Wiedemann-Franz law on the resistivity of the C65500 alloy data page"))

	// SurfaceLoss is the heat loss of each face of a hot sheet in the closed forms: convection, about 10, and
	// radiation. 500 C at emissivity 0.28 → 22, at 0.8 → 43; 907 C at 0.8 → 109 W/m2K. A bead cools mostly
	// between these temperatures.
	SurfaceLoss = constant("SurfaceLoss", 60, 30, 90, "W/m2K",
		worked("Stefan-Boltzmann law at 500 to 900 C with emissivities 0.28 to 0.8, and free convection"))

	// RoomTemperature is the temperature of parts that were not warmed, from a winter shed to a summer one.
	RoomTemperature = constant("RoomTemperature", 20, 0, 35, "C", practice)
)

// The wire.
var (
	// DepositionDip and DepositionPulsed are the shares of the melted wire that land in the joint.
	DepositionDip = constant("DepositionDip", 0.93, 0.90, 0.96, "1",
		memoryMedium("welding handbooks, deposition efficiency of solid wire in argon-rich gas, short arc"))
	DepositionPulsed = constant("DepositionPulsed", 0.97, 0.96, 0.98, "1",
		memoryHigh("welding handbooks, deposition efficiency of solid wire in argon-rich gas, pulsed"))

	// DefaultStickOut is the electrode extension, contact tip to arc, if nobody measured it.
	DefaultStickOut = constant("DefaultStickOut", 12, 8, 18, "mm", practice)
)

// The power source.
var (
	// LoadLineBase, LoadLineSlope and LoadLineCap define the conventional load line: U = 14 + 0.05·I up to 600
	// A, then 44 V. It is for rating power sources and is not the voltage of an arc.
	LoadLineBase = constant("LoadLineBase", 14, 14, 14, "V",
		memoryHigh("IEC 60974-1, conventional load voltage for MIG/MAG"))
	LoadLineSlope = constant("LoadLineSlope", 0.05, 0.05, 0.05, "V/A",
		memoryHigh("IEC 60974-1, conventional load voltage for MIG/MAG"))
	LoadLineCap = constant("LoadLineCap", 44, 44, 44, "V",
		memoryHigh("IEC 60974-1, conventional load voltage for MIG/MAG above 600 A"))

	// DipVoltFactor scales the load line to a short arc in argon. Two settings known to run give 14.8/18.65 =
	// 0.794 at 93 A and 16.5/19.7 = 0.838 at 114 A. DipVoltBand is the half-band in volts and holds the whole
	// uncertainty.
	DipVoltFactor = constant("DipVoltFactor", 0.81, 0.81, 0.81, "1",
		worked("between two short-arc settings of common practice, 93 A 14.8 V and 114 A 16.5 V"))
	DipVoltBand = constant("DipVoltBand", 1.2, 1.2, 1.2, "V",
		worked("spread of two short-arc settings about the scaled load line, and of power sources"))

	// PulsedVoltFactor and PulsedVoltBand are the same for the mean of a pulsed waveform, whose shape differs
	// between power sources.
	PulsedVoltFactor = constant("PulsedVoltFactor", 0.95, 0.95, 0.95, "1",
		worked("assumed: the mean of a pulsed arc runs a little under the load line"))
	PulsedVoltBand = constant("PulsedVoltBand", 3, 3, 3, "V",
		worked("assumed: waveforms differ from one power source to the next"))

	// DutyPeriod is the period that a rated duty refers to.
	DutyPeriod = constant("DutyPeriod", 10, 10, 10, "min", memoryHigh("IEC 60974-1, duty cycle"))
)

// The welder's hand and the job.
var (
	// HandSpeedLow and HandSpeedHigh are the limits of the travel that a hand can hold evenly.
	HandSpeedLow  = constant("HandSpeedLow", 4, 3, 5, "mm/s", practice)
	HandSpeedHigh = constant("HandSpeedHigh", 14, 12, 16, "mm/s", practice)

	// HandAim is the 95 % half-band of the arc's position across the joint when a hand aims it.
	HandAim = constant("HandAim", 0.5, 0.5, 0.5, "mm", practice)

	// UnequalFrom is the ratio of two thicknesses, or of the heat that two members carry away, above which a
	// welder aims at the member that carries more. AimOff is how far off the joint they then aim at most.
	// AimShare is the share of AimOff for a tee, a butt or a corner, where more would leave the other member
	// unwetted.
	UnequalFrom = constant("UnequalFrom", 1.25, 1.2, 1.5, "1", practice)
	AimOff      = constant("AimOff", 1, 0, 1, "mm", practice)
	AimShare    = constant("AimShare", 0.7, 0.5, 1, "1",
		worked("the cross-section's chances over aims, 0.8 to 3 mm; own computation"))

	// HandRepeats is how closely a hand repeats a travel, and a feeder a feed, from bead to bead.
	HandRepeats = constant("HandRepeats", 5, 3, 10, "%", practice)

	// MarginalUnder is the chance below which a setting is not called good although it meets every edge: even
	// odds.
	MarginalUnder = constant("MarginalUnder", 50, 50, 50, "%", practice)

	// GunAngle is the push angle, measured from square to the seam.
	GunAngle = constant("GunAngle", 15, 10, 20, "deg", practice)

	// SheetThinnest and SheetThickest are the limits of the sheet that arc brazing suits.
	SheetThinnest = constant("SheetThinnest", 0.2, 0.2, 0.2, "mm", read("TWI Job Knowledge 134"))
	SheetThickest = constant("SheetThickest", 3, 3, 3, "mm", read("TWI Job Knowledge 134: to about 3 mm"))

	// SectionThickest is the thickness up to which the cross-section model was compared with anything.
	SectionThickest = constant("SectionThickest", 25, 25, 25, "mm",
		worked("exact plates and a three-dimensional model of 0.2 to 25 mm"))

	// ServiceLimit is the highest continuous service temperature of a joint brazed with a copper alloy. 400 F
	// is itself allowed, so its 204.44 C is below the value.
	ServiceLimit = constant("ServiceLimit", 204.5, 200, 204.5, "C",
		memoryMedium("brazing handbooks, continuous service of copper-alloy brazed joints, 400 F"))
)
