package tables

// shopTerms are words of the shop that the program's texts use but that name no choice or figure: about the
// joint, the gun, what a bead shows, and the air.
var shopTerms = [...]Term{
	{"bevel", []string{"bevelled"}, "An edge of thick stock that is cut at a slant, so that the bronze gets down to " +
		"the root. Sheet that one bead fills needs none.", "degrees", awsTerms},
	{"root", []string{"root edge"},
		"Where the two pieces come nearest to each other at the bottom of a joint. The opening there is the gap.",
		"", awsTerms},
	{"groove", []string{"groove area", "groove width", "groove, both sides", "root face", "joint area"},
		"A hollow along the joint. One that is cut before the arc lets bronze in; one that is left beside a bead " +
			"means too little bronze or a melted edge.", "", awsTerms},
	{"pass", []string{"passes"}, "One bead along the joint. A groove or a fillet that one bead does not fill takes " +
		"several, each laid when the one before has cooled.", "", awsTerms},
	{"fillet", nil, "A bead in the corner of two faces, as in a lap or a tee. Its size is its leg or its throat.", "",
		awsTerms},
	{"fit-up", nil, "How closely the pieces lie together before the arc. Where the opening changes along the seam no " +
		"one setting suits it.", "", awsTerms},
	{"backing", []string{"backing bar", "backing strip", "chill bar"},
		"A bar, mostly of copper, held against the far side. It draws heat out of thin sheet and holds the puddle up.",
		"", awsTerms},
	{"run-in", []string{"run in"}, "The time from the start of a timer to the start of the arc, while the wire comes " +
		"to the sheet. The timer's on holds it besides the time that the arc burns.", "s", practice},
	{"puddle", []string{"pool"}, "The bronze that is liquid under the arc. Where it runs ahead of the arc it lies on " +
		"sheet that is too cold to hold it.", "", awsTerms},
	{"back-step", nil, "A long seam laid in short pieces, each begun ahead and run back to the one before. " +
		"So the sheet warps less.", "", awsTerms},
	{"stringer", []string{"stringer bead"}, "A bead laid straight on, without swinging the gun. Bronze runs wide by " +
		"itself, and a straight bead is the coolest.", "", awsTerms},
	{"weave", []string{"weaving"},
		"Swinging the gun from side to side along the seam. It widens the bead and puts in more heat than thin sheet " +
			"likes.", "", awsTerms},
	{"drag", []string{"pull angle"}, "Leaning the gun so that the wire points back at the bead. It lays narrower and " +
		"deeper than pushing, which bronze does not want.", "", awsTerms},
	{"contact tip", []string{"tip"}, "The copper piece in the gun that gives the wire its current. In a worn or wide " +
		"bore the current wanders, and the arc with it.", "mm", awsTerms},
	{"liner", nil, "The tube in the gun's cable that the wire slides through. Soft bronze wants a clean one of " +
		"plastic and a short cable: it buckles where steel would not.", "", practice},
	{"bird-nest", []string{"bird nest"}, "A tangle of wire at the drive rolls. Something ahead of them holds the " +
		"wire: the tip, the liner, or rolls that are too tight.", "", practice},
	{"stubbing", []string{"stubs"}, "The wire runs into the sheet before the arc has melted it, and pushes the gun " +
		"back. More volts or less feed ends it.", "", practice},
	{"burn-back", []string{"burnt-back"}, "The arc climbs to the contact tip and melts the wire to it. Too little " +
		"feed for the volts does it, or a wire that slips.", "", awsTerms},
	{"spatter", nil, "Drops that fly from the arc and stick beside the bead. Zinc that boils under it throws them, " +
		"and so do volts that do not fit the feed.", "", awsTerms},
	{"pores", []string{"porosity", "pinholes"},
		"Holes that gas leaves in the bronze. Zinc vapour, oil, a draught or too little argon make them.", "",
		awsTerms},
	{"crack", []string{"cracks"}, "A split in the bead or beside it. Pieces that cannot move, a hollow crater or a " +
		"filler that does not suit the metal bring it.", "", awsTerms},
	{"crater", nil, "The hollow at the end of a bead. Go back a little over the bead before you stop, " +
		"or it cracks there.", "", awsTerms},
	{"peel", []string{"peel test", "peeled"}, "One piece of a test bead is levered off the other. Bronze on both " +
		"faces is a bond; a face that comes off bare was never wetted.", "", practice},
	{"bond", nil, "Where bronze holds to a face that never melted. It is as good as that face was clean and hot.", "",
		awsTerms},
	{"dilution", nil, "How much of the base got into the bead by melting. A brazed bead has next to none of it; " +
		"iron makes bronze hard.", "%", awsTerms},
	{"peen", []string{"peening"},
		"Light blows on a bead while it is warm. They stretch it, so that it pulls less on a casting that would crack.",
		"", awsTerms},
	{"plume", nil, "The smoke that rises from the arc. What is in it is in your breath, unless it is drawn " +
		"off beside the arc.", "", awsTerms},
	{"extraction", nil, "Drawing the smoke off close to the arc. Near enough it takes the plume; too near or too " +
		"strong it takes the argon too.", "", practice},
	{"respirator", nil, "A mask, fitted to its wearer, that filters what is breathed. It comes after extraction " +
		"and not in its place.", "", memoryHigh("29 CFR 1910.134")},
	{"fume fever", []string{"metal fume fever"}, "Shivering and aching some hours after breathing zinc smoke. " +
		"It passes in a day or two and says that the air was bad; what lasts is for a doctor.", "",
		memoryHigh("OSHA, NIOSH: metal fume fever")},
	{"arc efficiency", []string{"efficiency"}, "The share of the arc's energy that gets into the sheet. " +
		"It is measured in laboratories; readings and test beads say which share your booth has.", "",
		memoryHigh("DuPont and Marder 1995")},
	{"galvanized", []string{"galvannealed", "hot-dip", "hot-dip galvanized"},
		"Steel sheet with a coat of zinc from a hot bath. Heated on until the zinc is an alloy with iron it is " +
			"galvannealed: grey and dull.", "",
		memoryHigh("ASTM A653")},
}
