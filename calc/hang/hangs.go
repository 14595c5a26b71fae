package hang

import (
	"math"

	"brazebooth/tables"
)

// above is the liquid metal over the chord, mm2, which hangs. The metal under the chord lies in the joint.
func (j *Joint) above() float64 {
	c := max(j.Chord, leastChord)
	return max(j.liquidBead()-j.Under, 0.02*c*c)
}

// atRest is overhead and horizontal: the metal that would hang at rest, overhead times the share that short
// circuits and an unsteady hand leave, over the metal that is there.
func (j *Joint) atRest() float64 {
	return margin(j.holds(), j.above())
}

// holds is the largest liquid area over the chord, mm2, that stays overhead or horizontal.
func (j *Joint) holds() float64 {
	most := Holds(j.Kind, j.Position, max(j.Chord, leastChord), j.Liquid.Length())
	if j.Position == "overhead" {
		most *= tables.OverheadShare.V
	}
	return most
}

// uphill is vertical-up: the pool narrows to the frozen shelf below it, whose edge carries the weight of the metal on
// it: 2/chord of tension against taper·pool/l².
func (j *Joint) uphill() float64 {
	l := j.Liquid.Length()
	return margin(2*l*l, tables.PoolTaper.V*j.Pool*max(j.Chord, leastChord))
}

// downhill is vertical-down. The front below is held across its chord, by its own roundness and by half the
// arc's push; the mean pressure of the round bead and the head of the pool above weigh on it.
func (j *Joint) downhill() float64 { return margin(j.front(), j.bulge()+j.head()) }

func (j *Joint) front() float64 {
	c := max(j.Chord, leastChord)
	high := max(j.liquidBead()/c, 0.5)
	return 2/c + (1-math.Cos(tables.FrontAngle.V*math.Pi/180))/high + j.Liquid.curvature(j.ArcPressure())/2
}

func (j *Joint) bulge() float64 {
	return 2 * math.Sin(max(0, min(j.Phi, math.Pi/2))) / max(j.Chord, leastChord)
}

func (j *Joint) head() float64 {
	l := j.Liquid.Length()
	return 2 * j.Pool / (3 * l * l)
}
