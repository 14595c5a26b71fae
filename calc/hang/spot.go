package hang

import (
	"math"

	"brazebooth/tables"
)

// SpotEdges returns what keeps a timed arc's metal where it landed, judged at the end of the on time, when the
// puddle is largest: "holds", that tension carries metal and arc across an open butt root, and "hangs" in the
// joint's position. The joint's Pool is the puddle's length and its Bead the metal per step, over the step. The
// other failures of a running arc cannot happen: the next spot lands on the last one, and the frozen metal
// behind keeps the puddle from running along the gap. That this frozen metal also carries is not counted.
// Chord, Under and Phi are computed here from the wetted widths. Errors as Edges.
func SpotEdges(j *Joint) (holds, hangs Edge, err error) {
	holds, hangs = Edge{Margin: Most, Doubt: tables.BridgesDoubt.V}, Edge{Margin: Most, Doubt: j.hangDoubt()}
	s := *j
	s.stand()
	if err := s.check(); err != nil {
		return holds, hangs, err
	}
	why := ""
	if !s.Liquid.known() {
		why = noMelt
	}
	if s.Kind == "butt" && s.Gap > 0 && s.Backing == "" {
		holds.judge(why, func() float64 {
			o := s.opening()
			o.Arc *= o.pushShare()
			return o.Bridge().Hold
		})
	}
	if s.mayHang() {
		hangs.judge(why, s.hangs)
	}
	return holds, hangs, nil
}

// pushShare is the even pressure over a root, as a share of the arc's pressure in its middle, that bulges the root
// as far as the arc does: a membrane over a long slot under a Gaussian load. Across the slot it is the load's
// moment over that of an even load; along it, the Gaussian against the membrane's own reach, 2/π of half the
// chord. It is within 7 % of the membrane solved on a grid, for half chords from a third of the arc's pressure
// width to four of them.
func (o *Opening) pushShare() float64 {
	half, sigma := o.rootChord()/2, o.Assumed.PressureWidth
	across := half*sigma*math.Sqrt(math.Pi/2)*math.Erf(half/sigma/math.Sqrt2) +
		sigma*sigma*math.Expm1(-half*half/(2*sigma*sigma))
	s := sigma * math.Pi / (2 * half)
	return across / (half * half / 2) * s * math.Sqrt(math.Pi/2) * scaledErfc(s/math.Sqrt2)
}

// scaledErfc is exp(x²)·erfc(x), by its continued fraction where one factor would overflow and the other
// vanish.
func scaledErfc(x float64) float64 {
	if x < 5 {
		return math.Exp(x*x) * math.Erfc(x)
	}
	return 1 / (math.Sqrt(math.Pi) * (x + 1/(2*x+2/(x+3/(2*x)))))
}

const noMelt = "the melt of this filler is in no table here; try a bronze that is"

// stand finds the chord from toe to toe, the area under it, and the angle of the metal above it.
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
