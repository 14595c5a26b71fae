package hang

import (
	"fmt"

	"brazebooth/tables"
)

// gapNotJudged says why it is not judged whether the metal bridges a gap, and what to try; "" if it is.
// It is judged, for every bronze, dip and pulsed, in every position, over any gap of a butt in sheet of 0.5 to 3 mm or
// on a bar or strip, and of a lap or tee in any sheet.
func (j *Joint) gapNotJudged() string {
	if why := j.notJudged(); why != "" || j.Kind != "butt" {
		return why
	}
	return j.openRoot()
}

// hangNotJudged says the same of whether the metal hangs where it is laid. That is judged for every joint but a plug,
// every bronze, dip and pulsed.
func (j *Joint) hangNotJudged() string {
	if j.Kind == "plug" {
		return "a plug's puddle is round and nothing here computes one; try it flat"
	}
	return j.notJudged()
}

// notJudged says why nothing of the joint's liquid is judged.
func (j *Joint) notJudged() string {
	switch {
	case !j.Liquid.known():
		return noMelt
	case j.Mode == "timed":
		return "a timed arc holds its puddle by its pauses; see what gap its arc times bridge"
	}
	return ""
}

func (j *Joint) openRoot() string {
	thick := max(j.Thick[0], j.Thick[1])
	if j.Backing != "" || j.thin() >= tables.RootThinnest.V && thick <= tables.RootThickest.V {
		return ""
	}
	try := "a backing bar"
	if thick > tables.RootThickest.V { // plate over a bar is not judged either
		try = "a closed root"
	}
	return fmt.Sprintf("what an open root may look like is known for sheet of %g to %g mm; try %s",
		tables.RootThinnest.V, tables.RootThickest.V, try)
}
