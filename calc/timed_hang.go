package calc

import (
	"math"

	"brazebooth/calc/hang"
	"brazebooth/calc/thinsheet"
	"brazebooth/tables"
)

// stays returns how far a cycle's puddle is from falling out of the joint, zero on the edge and positive inside; nil
// where nothing is judged.
func (g *timedRun) stays() func(*thinsheet.OnOff) float64 {
	u := &g.card.Used
	if !(u.Joint == "butt" && u.Gap.V > 0) && (u.Position == "flat" || u.Position == "") {
		return nil
	}
	l := newLiquid(g.board, &g.card)
	return func(c *thinsheet.OnOff) float64 {
		least := float64(hang.Most)
		for _, e := range g.edgesOf(&l, c) {
			if e.Why == "" {
				least = min(least, e.Margin)
			}
		}
		return least
	}
}

// edgesOf are the edges of the liquid for the puddle at the end of on.
func (g *timedRun) edgesOf(l *liquid, c *thinsheet.OnOff) [2]hang.Edge {
	j := l.joint
	j.Bead = g.in.Feed * c.On / g.in.Filler.Density / c.Step
	j.Wet, j.Pool, j.Amps, j.Deposition = c.Wide, c.Puddle, g.o[oAmps], g.in.Feed
	if throughJoint(j.Kind) {
		j.Back = c.Wide
	}
	holds, hangs, err := hang.SpotEdges(&j)
	if err != nil { // a cycle that no joint can have: other limits say what is wrong
		return [2]hang.Edge{}
	}
	return [2]hang.Edge{holds, hangs}
}

// mayFall warns where it is in doubt whether the puddle stays, and says what is not judged.
func (g *timedRun) mayFall(w *warnings) {
	if g.in.Stays == nil || !(g.times.OnOff.On > 0) {
		return
	}
	source := "own computation: " + tables.BridgesDoubt.Source
	l := newLiquid(g.board, &g.card)
	chance := 1.0
	for _, e := range g.edgesOf(&l, &g.times.OnOff) {
		if e.Why != "" {
			w.tell("timed-not-judged", Caution, source, "Whether the puddle stays where it lands is not judged, "+
				"because %s.", e.Why)
		} else if e.Doubt > 0 {
			chance *= e.Chance()
		}
	}
	const sure = 0.75
	if chance < sure {
		w.tell("timed-may-fall", Caution, source, "The puddle may fall: by a balance of tension, weight and arc, "+
			"untested, it stays in %.0f of 100. Try %s.", 100*math.Max(0.01, chance),
			either(append([]string{"shorter on", "less wire feed"}, carriesMore(&g.card)...)))
	}
}
