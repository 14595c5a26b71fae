package tables

// Remedy is something that a bead shows, what it probably means and what to change, one thing at a time.
type Remedy struct {
	Code, Seen, Likely, Change string
	Origin
}

var handbookRow = read("GMAW/FCAW Handbook 2018 pp. 155-156; the rest common practice")

// Remedies lists what to change for each sight.
var Remedies = []Remedy{
	{"cold-lap", "rolled edge, bead sits on top", "too little heat for the metal laid",
		"Stick-out 2 to 3 mm shorter; then volts up 0.5; then slower, or less wire at the same speed; " +
			"cleaner metal; push, not drag", practice},
	{"too-hot", "thin flat bead, wide bluing, zinc gone at the back", "too much heat",
		"Faster; volts down 0.5; less wire", practice},
	{"burn-through", "edges melted away, hole", "base metal melting",
		"Faster; smaller wire feed; timed arc; close the gap; backing", handbookRow},
	{"spatter", "spatter, harsh arc", "arc too stiff, volts off",
		"Inductance up; volts up a little; stick-out shorter; contact tip", handbookRow},
	{"stubbing", "wire pushes the gun", "volts low for the feed, or too much inductance",
		"Volts up; feed down; inductance down", practice},
	{"burn-back", "wire burns back to the tip", "volts high for the feed; feed slipping",
		"Volts down; feed up; liner, rolls", practice},
	{"pores", "pores, pinholes, popping", "zinc vapour, dirt, gas",
		"Vent gap; less heat; clean; gas flow, leaks, draughts; pulsed or plain dip", handbookRow},
	{"crack", "crack along the bead, or beside it on stainless", "copper penetration, restraint, concave bead",
		"Unclamp; aluminium-bearing wire; fuller bead", practice},
	{"drops-through", "bridging fails, metal drops through", "on too long, off too short",
		"On 10 to 20 % shorter, off 10 to 20 % longer, never in steps under 0.02 s; smaller step; backing strip",
		practice},
	{"spots-apart", "spots do not fuse into one another", "off too long, step too big",
		"Off 10 to 20 % shorter; smaller step", practice},
	{"crater", "crater at the end", "ended abruptly",
		"Go back about 6 mm over the bead before stopping", handbookRow},
	{"bird-nest", "wire tangles at the rolls", "feed path",
		"Liner, tip, rolls: see feeding soft wire", practice},
}
