package tables

// Option is a choice that consists of a name and what it means.
type Option struct {
	ID, Name, Line string
}

// Joints are the ways in which two pieces meet, and the overlay on one piece.
var Joints = Rows[Option]{
	{"lap", "lap", "One sheet over the other, bead along the upper edge; the easiest joint to braze"},
	{"butt", "butt", "Edge to edge; leave a root opening about as wide as the sheet is thick, or none on thin sheet"},
	{"tee", "tee fillet", "The first member stands on the second; one bead in the corner"},
	{"corner", "outside corner", "Two edges meet at the outside; the bead fills the open notch"},
	{"edge", "edge", "Two sheets side by side, their edges flush; the bead lies along both edges"},
	{"plug", "plug", "A hole in the upper sheet, filled onto the lower one"},
	{"overlay", "overlay", "Bronze laid on one part, for wear or size"},
}

// Modes are the ways in which the metal crosses the arc.
var Modes = Rows[Option]{
	{"dip", "short arc (dip)", "The wire dips and shorts; lowest heat, runs on every power source"},
	{"pulsed", "pulsed", "One drop a pulse; most heat, flattest and widest bead; needs a pulsed source"},
	{"timed", "timed arc", "Arc on and off by a timer or the trigger; bridges gaps and spares thin sheet"},
}

// Positions are the ways in which the seam lies.
var Positions = Rows[Option]{
	{"flat", "flat", "The easiest: gravity helps"},
	{"horizontal", "horizontal", "The bead sags to the lower member: smaller bead, aim higher"},
	{"vertical-up", "vertical up", "Slow and hot: smaller bead, for thicker sheet"},
	{"vertical-down", "vertical down", "Faster and colder: thin sheet"},
	{"overhead", "overhead", "Less puddle: smaller wire feed; hot drops fall on you"},
}

// Uses are the purposes of a joint; they decide what must be checked.
var Uses = Rows[Option]{
	{"decorative", "decorative", "It only has to hold together and look right"},
	{"seal", "seal", "It keeps water in or out, with no pressure behind it"},
	{"load", "load", "It carries a load that somebody worked out"},
	{"wear", "wear", "A surface that rubs"},
	{"bearing", "bearing", "A surface that a shaft runs on"},
}
