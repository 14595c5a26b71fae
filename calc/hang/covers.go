package hang

import (
	"fmt"

	"brazebooth/tables"
)

// notJudged says in a sentence why an edge is not judged, and what to try; "" if it is judged, or if the joint
// does not have it. What each edge covers:
//
//	bridges  a butt in sheet of 0.5 to 3 mm, any gap, every bronze, every position, dip and pulsed; or on a bar or strip
//	touches  a lap or tee, any gap and sheet, every bronze, dip and pulsed
//	fills    a lap, tee or corner
//	hangs    every joint but a plug, every bronze, dip and pulsed; flat asks for nothing
func (j *Joint) notJudged(edge string) string {
	if !j.asks(edge) {
		return ""
	}
	switch {
	case j.Kind == "plug":
		return "Not judged, because a plug's puddle is round and nothing here computes one; try it flat."
	case edge == "fills":
		return ""
	case !(j.Liquid.Tension > 0 && j.Liquid.Density > 0):
		return noMelt
	case j.Mode == "timed":
		return "Not judged, because a timed arc holds its puddle by its pauses; see what gap its arc times bridge."
	case edge == "bridges":
		return j.openRoot()
	}
	return ""
}

func (j *Joint) openRoot() string {
	switch thin, thick := j.thin(), max(j.Thick[0], j.Thick[1]); {
	case j.Backing == "patch":
		return "Not judged, because a patch makes two laps of the joint; judge each as a lap."
	case j.Backing != "":
		return ""
	case thin < tables.RootThinnest.V || thick > tables.RootThickest.V:
		try := "a backing bar"
		if thick > tables.RootThickest.V { // plate over a bar is not judged either
			try = "a closed root"
		}
		return fmt.Sprintf("Not judged, because what an open root may look like is known for sheet of %g to %g mm; "+
			"try %s.", tables.RootThinnest.V, tables.RootThickest.V, try)
	}
	return ""
}
