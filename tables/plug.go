package tables

// A plug: a hole in the upper sheet that is filled and wetted to the sheet under it.
var (
	// PlugPullOut is the pull square to the sheet at which the upper sheet tears off its plug, over t·d·R.
	PlugPullOut = constant("PlugPullOut", 1, 0.7, 1.3, "1",
		memoryMedium("AISI S100, arc spot welds in tension: 0.8·(Fu/Fy)²·t·d·Fu "+
			"for Fu/Fy from 1 to 1.3; older editions 0.7·t·d·Fu"))

	// PlugLed is the radius of the circle on which the arc is led around a hole, as a share of its diameter.
	PlugLed = constant("PlugLed", 0.25, 0.05, 0.35, "1", practice)

	// PlugUpperShare is how much of the upper sheet's metal takes part in leading the heat of a plug away.
	PlugUpperShare = constant("PlugUpperShare", 0.8, 0.5, 1, "1", worked("it is heated over the hole's rim only"))

	// PlugForm scales the rise under a resting arc.
	PlugForm = constant("PlugForm", 1, 0.7, 1.4, "1",
		worked("the pool's stirring, zinc, what air lies between the sheets; held against no test"))
)
