package tables

// Learning from trials of a timed arc. Each row has four slopes, for shortest and longest on and shortest and
// longest off: how much the logarithm of that limit changes with the logarithm of the liquid filler's stirring,
// of the arc's spread or of its power.
var (
	SlopesOfStirring = [4]Datum{{0.15, 0, 0.45, "1", rhythmSlopes}, {0.5, 0.25, 1, "1", rhythmSlopes},
		{-0.42, -0.52, -0.3, "1", rhythmSlopes}, {-0.08, -0.2, 0, "1", rhythmSlopes}}
	SlopesOfSpread = [4]Datum{{1.1, 0.7, 1.6, "1", rhythmSlopes}, {2, 1.7, 2.2, "1", rhythmSlopes},
		{-1.7, -2.8, -1.2, "1", rhythmSlopes}, {-1.3, -2, -0.6, "1", rhythmSlopes}}
	SlopesOfPower = [4]Datum{{-1.6, -2.2, -1.4, "1", rhythmSlopes}, {-3.8, -6.2, -2.6, "1", rhythmSlopes},
		{4.1, 3.2, 7.5, "1", rhythmSlopes}, {2.7, 2.1, 4, "1", rhythmSlopes}}

	// StirringSigma is one standard deviation of the logarithm of stirring before any trial: 1 to 4 is four of
	// them.
	StirringSigma = constant("StirringSigma", 0.347, 0.3, 0.4, "1",
		worked("a quarter of the logarithm of 4, the band of what is assumed"))

	// RhythmDoubt is one standard deviation of the logarithm of a limit, as far as stirring, spread and power
	// do not explain it.
	RhythmDoubt = constant("RhythmDoubt", 0.1, 0.05, 0.15, "1",
		worked("judgement: conductivity, edge preparation and the hand"))

	// RunIn is the time from the timer's start to the arc's: the wire must reach the sheet and ignite.
	RunIn = constant("RunIn", 0.06, 0.03, 0.1, "s",
		worked("judgement: a wire that starts some millimetres off the sheet"))
)

var rhythmSlopes = worked("recomputed for five butts and a lap of 0.8 to 2 mm, gaps to 3 mm, with stirring over and " +
	"under by 42 %, spread by 6 % and power by 10 %")
