package tables

// Learning from a booth's own readings.
var (
	// ReadingSigma is one standard deviation of a reading, as a share of it.
	ReadingSigma = Datum{0.015, 0.01, 0.03, "1", practice}

	// LearnedFloor is the 95 % band that stays however many readings come in: what they all share.
	LearnedFloor = Datum{0.02, 0.02, 0.02, "1",
		worked("systematic floor: meters, stick-out and timing are wrong in the same way each time")}

	// EtaSigma is one standard deviation of a booth's arc efficiency before any verdict.
	EtaSigma = Datum{0.025, 0.025, 0.025, "1", worked("half of the 95 % band between measured efficiencies")}
)
