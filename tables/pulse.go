package tables

// One drop a pulse.
var (
	// PulseDetach is peak current squared times pulse time that detaches one drop from a wire of PulseWire, for
	// steel in argon-rich gas. For another wire it is proportional to the square of the spray transition and to
	// the drop's natural period, d^(3/2).
	PulseDetach = constant("PulseDetach", 490, 300, 800, "A2s",
		memoryLow("Allum 1985 and Amin 1983 for 1.2 mm steel in argon-rich gas; no published law for bronze is known "+
			"here"))
	PulseWire       = constant("PulseWire", 1.2, 1.2, 1.2, "mm", memoryMedium("the wire of PulseDetach"))
	PulseTransition = constant("PulseTransition", 230, 220, 240, "A",
		memoryMedium("AWS Welding Handbook, spray transition of 1.2 mm steel in argon with oxygen"))

	// PulsePeakOver is the ratio of the peak current to the spray transition.
	PulsePeakOver = constant("PulsePeakOver", 1.5, 1.25, 1.9, "1", practice)

	// PulseBaseLeast is the current below which the arc goes out between pulses.
	PulseBaseLeast = constant("PulseBaseLeast", 20, 12, 30, "A", practice)

	// ArcSlope is how much the arc's voltage rises with current at the same length.
	ArcSlope = constant("ArcSlope", 0.03, 0.015, 0.05, "V/A",
		memoryLow("static characteristic of a gas metal arc in argon"))
)
