package tables

import "strings"

// Cause is a possible reason for the look of a test bead. Base is its probability before anything is seen. It
// is 0 for causes of heat, whose probability follows from the computed window, and 1 for a wrong current, whose
// probability follows from the computed current.
type Cause struct {
	ID, Name, Do string
	Base         float64
	Origin
}

// Ids of the causes.
const (
	CauseCold     = "cold"
	CauseHot      = "hot"
	CauseMelts    = "melts-through"
	CauseFine     = "fine"
	CauseOnLong   = "on-too-long"
	CauseOnShort  = "on-too-short"
	CauseOffLong  = "off-too-long"
	CauseOffShort = "off-too-short"
	CauseVoltsLow = "volts-low"
	CauseVoltsHi  = "volts-high"
	CauseStiff    = "arc-stiff"
	CauseSluggish = "inductance-too-much"
	CauseVapour   = "zinc-vapour"
	CauseDirt     = "dirt"
	CauseGas      = "gas"
	CauseCopper   = "copper-penetration"
	CauseHeld     = "restraint"
	CauseHollow   = "hollow-bead"
	CauseAbrupt   = "ended-abruptly"
	CauseSlips    = "feed-slips"
	CauseUneven   = "current-outside"
)

// Causes lists the reasons for a bead's look, those of heat first.
var Causes = []Cause{
	{CauseCold, "too little heat for the metal laid", "cleaner metal; push, do not drag", 0, practice},
	{CauseHot, "too much heat: the base metal's skin melts", "keep the arc moving; let the sheet cool between beads", 0,
		practice},
	{CauseMelts, "the base metal melts through", "close the gap; backing bar; timed arc", 0, handbookRow},
	{CauseFine, "nothing in the settings", "keep them and write them down", 0, practice},
	{CauseOnLong, "arc on too long", "smaller step; backing strip", 0, practice},
	{CauseOnShort, "arc on too short", "hold the first spot longer: it is cold", 0, practice},
	{CauseOffLong, "arc off too long, or the step too big", "smaller step", 0, practice},
	{CauseOffShort, "arc off too short: the puddle never freezes", "backing strip; smaller step", 0, practice},
	{CauseVoltsLow, "volts low for the wire feed", "read the meter while the arc burns", 0.1, practice},
	{CauseVoltsHi, "volts high for the wire feed", "read the meter while the arc burns", 0.1, practice},
	{CauseStiff, "arc too stiff: too little inductance", "more inductance; look at the contact tip", 0.1, handbookRow},
	{CauseSluggish, "too much inductance", "less inductance", 0.08, practice},
	{CauseVapour, "zinc vapour that cannot get out", "vent gap between the sheets, up to 0.1 mm", 0.15, handbookRow},
	{CauseDirt, "dirt, oil, paint or damp",
		"degrease, let it dry, brush to metal; never a chlorinated solvent near the arc", 0.1, handbookRow},
	{CauseGas, "shielding gas: flow, leak or draught", "flow at the nozzle, hoses, spatter in the nozzle, draughts",
		0.08, handbookRow},
	{CauseCopper, "liquid copper in stressed grain boundaries",
		"no clamps while it is hot, aluminium-bearing wire, short time at heat", 0.2,
		read("Savage, Nippes and Mushala 1978; abstract of doi 10.1088/2053-1591/ab4835")},
	{CauseHeld, "parts held so that they cannot shrink", "unclamp, tack less, short beads, cool slowly",
		0.05, practice},
	{CauseHollow, "hollow, thin bead", "a fuller bead", 0.04, practice},
	{CauseAbrupt, "the arc was ended abruptly", "go back about 6 mm over the bead before you stop", 0.05, handbookRow},
	{CauseSlips, "the wire slips or sticks on its way",
		"liner, tip, rolls: see feeding soft wire; let the gun hang straight", 0.05, practice},
	{CauseUneven, "current outside what burns steadily with this wire", "another wire size", 1, practice},
}

// Evidence says how often a cause produces a sight. The shares are a practitioner's judgement and coarse on
// purpose: they are good enough to rank causes, not to count them.
type Evidence struct {
	Sight, Cause string
	Share        float64
}

// SeldomSeen is the share of a pair that is not listed: anything can happen on a test bead.
var SeldomSeen = constant("SeldomSeen", 0.02, 0.01, 0.05, "1", practice)

// EvidenceRows lists the shares.
var EvidenceRows = []Evidence{
	{"rolled-edge", CauseCold, 0.8}, {"rolled-edge", CauseOnShort, 0.6}, {"rolled-edge", CauseVoltsLow, 0.25},
	{"rolled-edge", CauseDirt, 0.25}, {"rolled-edge", CauseStiff, 0.15}, {"rolled-edge", CauseFine, 0.03},
	{"thin-wide", CauseHot, 0.7}, {"thin-wide", CauseMelts, 0.4}, {"thin-wide", CauseVoltsHi, 0.35},
	{"thin-wide", CauseFine, 0.06},
	{"zinc-gone-behind", CauseHot, 0.6}, {"zinc-gone-behind", CauseMelts, 0.7}, {"zinc-gone-behind", CauseOnLong, 0.4},
	{"zinc-gone-behind", CauseFine, 0.15},
	{"burn-through", CauseMelts, 0.9}, {"burn-through", CauseHot, 0.25}, {"burn-through", CauseOnLong, 0.6},
	{"edges-melted", CauseMelts, 0.6}, {"edges-melted", CauseHot, 0.6}, {"edges-melted", CauseOnLong, 0.5},
	{"undercut", CauseVoltsHi, 0.5}, {"undercut", CauseHot, 0.45}, {"undercut", CauseMelts, 0.3},
	{"undercut", CauseHollow, 0.35}, {"undercut", CauseOnLong, 0.3}, {"undercut", CauseFine, 0.03},
	{"spatter", CauseStiff, 0.6}, {"spatter", CauseVapour, 0.45}, {"spatter", CauseVoltsLow, 0.4},
	{"spatter", CauseVoltsHi, 0.2},
	{"spatter", CauseDirt, 0.3}, {"spatter", CauseGas, 0.15}, {"spatter", CauseFine, 0.05},
	{"spatter", CauseUneven, 0.6},
	{"stubbing", CauseVoltsLow, 0.8}, {"stubbing", CauseSluggish, 0.6}, {"stubbing", CauseCold, 0.1},
	{"stubbing", CauseOnShort, 0.1}, {"stubbing", CauseUneven, 0.2},
	{"burn-back", CauseVoltsHi, 0.7}, {"burn-back", CauseSlips, 0.6},
	{"pores", CauseVapour, 0.7}, {"pores", CauseDirt, 0.5}, {"pores", CauseGas, 0.6}, {"pores", CauseHot, 0.1},
	{"crack", CauseCopper, 0.7}, {"crack", CauseHeld, 0.5}, {"crack", CauseHollow, 0.5}, {"crack", CauseHot, 0.05},
	{"drops-through", CauseOnLong, 0.8}, {"drops-through", CauseOffShort, 0.8}, {"drops-through", CauseMelts, 0.6},
	{"drops-through", CauseHot, 0.15},
	{"spots-apart", CauseOffLong, 0.8}, {"spots-apart", CauseOnShort, 0.05}, {"spots-apart", CauseCold, 0.1},
	{"crater", CauseAbrupt, 0.9}, {"crater", CauseHot, 0.05},
	{"good", CauseFine, 0.95}, {"good", CauseCold, 0.05}, {"good", CauseHot, 0.1}, {"good", CauseOnShort, 0.05},
	{"good", CauseOffLong, 0.05},
}

// ShareSeen returns how often a cause produces a sight, 0 to 1.
func ShareSeen(sight, cause string) float64 {
	for i := range EvidenceRows {
		if EvidenceRows[i].Sight == sight && EvidenceRows[i].Cause == cause {
			return EvidenceRows[i].Share
		}
	}
	return SeldomSeen.V
}

// ShareAllSeen returns how often a cause produces all of several sights, whose ids are separated by commas.
func ShareAllSeen(sights, cause string) float64 {
	p := 1.0
	for s := range strings.SplitSeq(sights, ",") {
		p *= ShareSeen(s, cause)
	}
	return p
}

// How much a setting changes from one test bead to the next: the low end is the usual step, the value the largest.
var (
	StepStickOut = constant("StepStickOut", 3, 2, 3, "mm", practice)
	StepVolts    = constant("StepVolts", 1, 0.5, 1, "V", practice)
	StepFeed     = constant("StepFeed", 15, 5, 15, "%", practice)
	StepTravel   = constant("StepTravel", 30, 10, 30, "%", practice)
	StepPreheat  = constant("StepPreheat", 100, 50, 100, "K", practice)
	StepOnOff    = constant("StepOnOff", 20, 10, 20, "%", practice)

	// The highest temperature to which parts are warmed to help the arc: above it steel and its coat suffer,
	// and nobody can work close to the part.
	PreheatSteel  = constant("PreheatSteel", 100, 20, 150, "C", practice)
	PreheatIron   = constant("PreheatIron", 150, 66, 300, "C", practice)
	PreheatCopper = constant("PreheatCopper", 250, 20, 400, "C", practice)

	// StickOutHeld is the stick-out that a welder is advised to keep.
	StickOutHeld = constant("StickOutHeld", 12, 10, 15, "mm", practice)

	// LeastOnOff is the smallest change of arc on or off that a welder or a timer can make.
	LeastOnOff = constant("LeastOnOff", 0.02, 0.02, 0.02, "s", practice)
)
