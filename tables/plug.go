package tables

// A plug: a hole in the upper sheet that is filled, with filler that wets the sheet under it.
var (
	// PlugPullOut is the pull square to the sheet at which the upper sheet tears off its plug, divided by
	// t·d·R.
	PlugPullOut = constant("PlugPullOut", 1, 0.7, 1.3, "1",
		memoryMedium("AISI S100, arc spot welds in tension: 0.8·(Fu/Fy)²·t·d·Fu for Fu/Fy from 1 to 1.3; older "+
			"editions 0.7·t·d·Fu"))

	// PlugLed is the radius of the circle in which the arc is moved around a hole, as a share of the hole's
	// diameter.
	PlugLed = constant("PlugLed", 0.25, 0.05, 0.35, "1", practice)

	// PlugContact is the heat transfer between the two sheets around a plug's hole.
	PlugContact = constant("PlugContact", 0.001, 0, 0.01, "W/mm2K", worked("air of 0.06 mm at 500 C conducts 0.001; "+
		"nothing: sheets that part in the heat; 0.01: zinc that melted between them"))

	// PlugForm scales the rise in a plug.
	PlugForm = constant("PlugForm", 1, 0.8, 1.2, "1", worked("half the fall of some 300 K through bronze and "+
		"sheet, of a rise of some 1000, beside bronze that levels at once and zinc; held against no test"))
)
