package calc

import (
	"strings"

	"brazebooth/calc/thinsheet"
	"brazebooth/tables"
)

// warmParts is the advice in the texts below; where the parts have zinc it is replaced by stripping them.
const warmParts = "warm the parts"

// reasonOf says what a reason means for this card.
func reasonOf(r thinsheet.Reason, card *Card) string {
	text := reasonText[r]
	if text == "" {
		return openReason(r, card)
	}
	if !Applies("zinc", card) {
		return text
	}
	return strings.ReplaceAll(strings.ReplaceAll(text, warmParts+", then keep these times", StripZinc(card)), warmParts,
		StripZinc(card))
}

// reasonText tells a welder what each reason means.
var reasonText = map[thinsheet.Reason]string{
	thinsheet.EdgeCold:     "shorter, and a root edge is not wetted through",
	thinsheet.JointCold:    "shorter, and the filler does not wet the joint's line",
	thinsheet.EdgeMelts:    "longer melts the base metal at the root edge",
	thinsheet.Patience:     "longer is too slow for a rhythm; the edge would still bear it",
	thinsheet.CentreLiquid: "shorter, and the arc strikes into a puddle that is all liquid and can fall through",
	thinsheet.Frozen:       "longer, and the puddle is frozen before the next spot",
	thinsheet.NextCold:     "longer, and the next spot no longer wets both edges",
	thinsheet.StepFill:     "further apart leaves the gap unfilled",
	thinsheet.StepOverlap:  "further apart no longer overlaps the last puddle by half",
	thinsheet.NeverWets: "The root edges never reach the filler's liquidus at this setting: more wire feed, or " +
		warmParts + ".",
	thinsheet.MeltsFirst: "The root edge melts on top before its back is wet: less wire feed, or thinner sheet.",
	thinsheet.TooHot: "Too hot for timed arc: the edge melts before a hand or a timer can let go. Less wire " +
		"feed or a thinner wire.",
	thinsheet.TwoSettings: "No one timer setting: the cold first spot needs longer than a warm one bears. Hold the " +
		"first spot longer, or " + warmParts + ", then keep these times.",
	thinsheet.NoCycle: "The cycle did not settle within fourteen spots: take these times as a start only.",
	roundHole:         "Not judged, because a plug is round and the plane's model has no hole in it; try it on scrap.",
	openFillet: "Not judged, because an open root is modelled between edges that face each other (butt, corner); " +
		"try this joint closed.",
}

// openReason is the sentence of a reason whose remedy depends on the joint: it names the ways that the job does not use
// yet and that are judged. A timed arc is never judged over a bar or strip, so backing is offered with an arc without
// pauses.
func openReason(r thinsheet.Reason, card *Card) string {
	steady := candidate{"an arc without pauses", pauseless}
	switch r {
	case thinsheet.Falls:
		ways := carriesMore(card)
		if len(ways) == 0 {
			ways = []string{"less wire feed"}
		}
		return "The puddle does not stay in the joint: tension carries neither its weight nor the arc's push. Try " +
			either(ways) + "."
	case thinsheet.WideGap:
		return "Not judged, because the gap is wider than the arc's own width, and the arc finds little sheet to " +
			"land on; try " + OverOpening(card) + "."
	case thinsheet.NoPause:
		return orTry(card, "No pause to keep, because by this computation the puddle freezes within "+
			Number(tables.QuickestOff.V)+" s: no hand strikes again so soon, and times that short for a timer are not "+
			"judged here", steady) + "."
	case thinsheet.TooThick:
		ways := []candidate{steady}
		if card.Used.Gap.V > 0 {
			ways = append(ways, candidate{"an arc without pauses with the opening closed", func(j *Job) {
				pauseless(j)
				closed(j)
			}})
		}
		return orTry(card, "Not judged, because above about 3 mm the heat flows in three dimensions", ways...) + "."
	case onBacking:
		return orTry(card, "Not judged, because nothing here follows a timed arc over a bar or strip", steady,
			candidate{"it without the " + backingName(card.Used.Backing), func(j *Job) { j.Backing = "" }}) + "."
	}
	return ""
}

// pauseless turns a timed job into one of an arc without pauses.
func pauseless(j *Job) {
	*j = withoutTimes(*j)
	j.Mode = "dip"
}

// carriesMore are the ways to hold up a timed arc's puddle better, without those that the job already uses.
func carriesMore(card *Card) (words []string) {
	u := &card.Used
	if u.Gap.V > 0 {
		words = append(words, "a closer gap")
	}
	if u.Position != defaultPosition {
		words = append(words, "the parts laid flat")
	}
	return append(words, advised(card, candidate{"an arc without pauses over a copper bar", func(j *Job) {
		if j.Joint == "butt" {
			pauseless(j)
			j.Backing = copperBar
		}
	}})...)
}
