package tables

// Grooves of a butt in plate. The rows of the standards are for welds in steel; bronze must wet both faces,
// which a wider V allows (Bevel).
var (
	// GrooveLeast and GrooveMost are the limits of the thicknesses for which a groove is planned.
	GrooveLeast = constant("GrooveLeast", 2, 1.5, 3, "mm", practice)
	GrooveMost  = constant("GrooveMost", 12, 10, 15, "mm", practice)

	// SquareOpening is the root opening of a square butt, as a share of the thickness.
	SquareOpening = constant("SquareOpening", 0.5, 0.3, 1, "1",
		memoryMedium("ISO 9692-1 no. 1.2, square butt from one side up to 4 mm: opening up to the thickness; half "+
			"by practice"))

	// VeeOpening and VeeFace are the root opening and the root face of a single V.
	VeeOpening = constant("VeeOpening", 2, 1, 4, "mm",
		memoryMedium("ISO 9692-1 no. 1.3, single V: opening at most 4 mm; 2 by practice"))
	VeeFace = constant("VeeFace", 1, 0, 2, "mm",
		memoryMedium("ISO 9692-1 no. 1.3, single V: root face at most 2 mm"))

	// GrooveEdgeHeld and GrooveAngleHeld are how far opening and root face, and the angle, differ from the plan
	// when they are made.
	GrooveEdgeHeld  = constant("GrooveEdgeHeld", 0.5, 0.25, 1, "mm", practice)
	GrooveAngleHeld = constant("GrooveAngleHeld", 5, 3, 10, "deg", practice)

	// BothSidesFrom is the thickness from which a V from each face is worth turning the part.
	BothSidesFrom = constant("BothSidesFrom", 8, 6, 10, "mm",
		memoryMedium("ISO 9692-1 no. 2.5, double V from about 10 mm; from 8 by practice"))
)
