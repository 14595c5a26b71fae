package advice

import (
	"fmt"
	"math"
	"strings"

	"brazebooth/calc"
	"brazebooth/calc/formula"
)

// plugWay is a change of one thing of a plug, each step of it further from the job's own.
type plugWay struct {
	what  string // with a verb for its value
	steps []float64
	set   func(j *calc.Job, to float64)
}

// plugWays are the holes that the trade takes, the wire feeds that this wire's arc holds and thinner sheets below.
func plugWays(card *calc.Card) []plugWay {
	least, most := formula.PlugHole(card.Setup.Members[0].Core)
	hole := least
	if card.Job.Hole.Set {
		hole = card.Job.Hole.V
	}
	toHole := func(j *calc.Job, to float64) { j.Hole = calc.Some(to) }
	larger, smaller := plugWay{what: "a larger hole, %.1f mm", set: toHole}, plugWay{what: "a smaller hole, %.1f mm",
		set: toHole}
	for d := math.Ceil(2*least) / 2; d <= most; d += 0.5 {
		if d > hole {
			larger.steps = append(larger.steps, d)
		} else if d < hole {
			smaller.steps = append([]float64{d}, smaller.steps...)
		}
	}
	feed, _ := card.Figure("wire_feed")
	toFeed := func(j *calc.Job, to float64) { j.Feed, j.Amps, j.Volts = calc.Some(to), calc.Opt{}, calc.Opt{} }
	more, less := plugWay{what: "more wire feed, %.1f m/min", set: toFeed}, plugWay{what: "less wire feed, %.1f m/min",
		set: toFeed}
	for i := 1; i <= 6; i++ {
		more.steps = append(more.steps, feed.Value*(1+0.1*float64(i)))
		less.steps = append(less.steps, feed.Value*(1-0.1*float64(i)))
	}
	thinner := plugWay{what: "thinner sheet below, %.1f mm",
		set: func(j *calc.Job, to float64) { j.Thickness2, j.Gauge2 = calc.Some(to), 0 }}
	for share := 0.9; share > 0.35; share -= 0.1 {
		if t := math.Floor(10*share*card.Setup.Members[1].Core) / 10; t >= 0.4 {
			thinner.steps = append(thinner.steps, t)
		}
	}
	return []plugWay{larger, smaller, more, less, thinner}
}

// plugCure says which hole, feed or sheet below is computed to wet the rim and to leave the middle solid; where none
// of those is, that, and what of them makes the rim hottest.
func plugCure(card *calc.Card, rim calc.Figure) string {
	var cures []string
	hottest, by := rim.Value, ""
	for _, way := range plugWays(card) {
		for _, to := range way.steps {
			j := card.Job
			way.set(&j, to)
			other, err := calc.Solve(j)
			if err != nil || other.Warned("spray") || other.Warned("arc-unsteady") {
				break
			}
			r, m, judged := plugHeat(&other)
			solid := m.Value <= other.Setup.Members[1].Metal.Solidus.V
			if judged && solid && r.Value >= other.Setup.Filler.Toe.V {
				cures = append(cures, fmt.Sprintf(way.what, to))
				break
			}
			if judged && solid && r.Value > hottest {
				hottest, by = r.Value, fmt.Sprintf(way.what, to)
			}
		}
	}
	switch {
	case len(cures) > 0:
		return "computed to wet the rim and to leave the middle solid: " + strings.Join(cures, "; or ")
	case by != "":
		return fmt.Sprintf("no hole that the trade takes, no steady wire feed and no thinner sheet below is computed "+
			"to do both; nearest comes %s, with a rim of %.0f °C", by, hottest)
	}
	return "no hole that the trade takes, no steady wire feed and no thinner sheet below is computed to do both"
}
