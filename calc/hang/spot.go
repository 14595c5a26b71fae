package hang

import (
	"math"

	"brazebooth/tables"
)

// SpotEdges returns what keeps a timed arc's metal where it landed, judged at the end of on, when the puddle is largest:
// "holds", that tension carries metal and arc across an open butt root, and "hangs" in the joint's position. The joint's
// Pool is the puddle's length and its Bead what a step lays, over the step. Of a running arc's other ways to fail none
// is left: the next spot lands on the last one, and the frozen metal behind keeps the puddle from running along the gap.
// That this metal carries too is not counted. Chord, Under and Phi follow from the wetted widths here. Errors as Edges.
func SpotEdges(j *Joint) ([2]Edge, error) {
	list := [2]Edge{{Name: "holds", Margin: Most, Doubt: tables.BridgesDoubt.V},
		{Name: "hangs", Margin: Most, Doubt: j.hangDoubt()}}
	s := *j
	s.stand()
	if err := s.check(); err != nil {
		return list, err
	}
	liquid := s.Liquid.Tension > 0 && s.Liquid.Density > 0
	if s.Kind == "butt" && s.Gap > 0 && s.Backing == "" {
		if liquid {
			o := s.opening()
			list[0].Margin = o.Bridge().Hold
		} else {
			list[0].Why = noMelt
		}
	}
	if s.asks("hangs") {
		if liquid {
			list[1].Margin = s.hangs()
		} else {
			list[1].Why = noMelt
		}
	}
	return list, nil
}

const noMelt = "Not judged, because the melt of this filler is in no table here; try a bronze that is."

// stand finds the chord from toe to toe, what lies under it, and the angle of the metal above it.
func (j *Joint) stand() {
	low, up := j.Wet[1], j.Wet[0]
	switch j.Kind {
	case "lap", "tee":
		if j.Kind == "lap" {
			up = min(up, j.Thick[0])
		}
		j.Chord, j.Under = math.Hypot(low, up), low*up/2
	case "corner":
		j.Chord, j.Under = math.Hypot(low, up), 0
	default:
		j.Chord, j.Under = j.Gap+low+up, j.Gap*j.thin()
	}
	above := j.above()
	c := max(j.Chord, leastChord)
	j.Phi = zero(func(phi float64) float64 { return c*c/4*segment(phi) - above }, 0, math.Pi/2)
}
