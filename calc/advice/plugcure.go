package advice

import (
	"fmt"
	"math"
	"strings"

	"brazebooth/calc"
	"brazebooth/calc/formula"
)

// plugWay is a change of one property of a plug; each step is further from the job's own value.
type plugWay struct {
	what  string // with a format verb for the value
	steps []float64
	set   func(j *calc.Job, to float64)
}

// crowns are the heights of a plug over the sheet that are tried, mm, flush first: a shop dresses the crown
// off.
var crowns = []float64{0, 0.5, 1, 1.5, 2, 2.5, 3}

// plugWays are the changes to try: none, the holes that the trade uses, the wire feeds that this wire's arc
// holds, and thinner sheets below.
func plugWays(card *calc.Card) []plugWay {
	least, most := formula.PlugHole(card.Setup.Members[0].Core)
	hole := card.Job.Hole.Or(least)
	toHole := func(j *calc.Job, to float64) { j.Hole = calc.Some(to) }
	larger := plugWay{what: "a larger hole, %.1f mm", set: toHole}
	smaller := plugWay{what: "a smaller hole, %.1f mm", set: toHole}
	for d := math.Ceil(2*least) / 2; d <= most; d += 0.5 {
		if d > hole {
			larger.steps = append(larger.steps, d)
		} else if d < hole {
			smaller.steps = append([]float64{d}, smaller.steps...)
		}
	}
	feed, _ := card.Figure("wire_feed")
	toFeed := func(j *calc.Job, to float64) { j.Feed, j.Amps, j.Volts = calc.Some(to), calc.Opt{}, calc.Opt{} }
	more := plugWay{what: "more wire feed, %.1f m/min", set: toFeed}
	less := plugWay{what: "less wire feed, %.1f m/min", set: toFeed}
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
	asIs := plugWay{steps: []float64{0}, set: func(*calc.Job, float64) {}}
	return []plugWay{asIs, larger, smaller, more, less, thinner}
}

// plugCure says which holes, feeds, sheets below or crowns are computed to wet the rim and leave the middle
// solid. If no single change does, it names two changes together; if those fail too, the nearest one. near is
// false if nothing comes near.
func plugCure(card *calc.Card) (says string, near bool) {
	var one, two []string
	hottest, by := 0.0, ""
	for i, way := range plugWays(card) {
		flush, proud := "", ""
		for _, to := range way.steps {
			j := card.Job
			way.set(&j, to)
			other, err := calc.Solve(j)
			if err != nil || other.Warned("spray") || other.Warned("arc-unsteady") {
				break
			}
			for _, crown := range crowns {
				r, judged := plugTried(&other, crown)
				if !judged || r.middle() > other.Setup.Members[1].Metal.Solidus.V {
					continue
				}
				text := way.says(to, crown, r.Seconds)
				if r.rim() > hottest && text != "" {
					hottest, by = r.rim(), text
				}
				if r.rim() < other.Setup.Filler.Toe.V {
					continue
				}
				if crown == 0 {
					flush = text
				} else if proud == "" {
					proud = text
				}
				break
			}
			if flush != "" {
				break
			}
		}
		switch {
		case flush != "":
			one = append(one, flush)
		case proud != "" && i == 0:
			one = append(one, proud)
		case proud != "":
			two = append(two, proud)
		}
	}
	list := one
	if len(list) == 0 {
		list = two[:min(len(two), 2)]
	}
	toe := card.Setup.Filler.Toe.V
	const none = "No hole that the trade takes, no steady wire feed, no thinner sheet below and no crown of up to 3 " +
		"mm "
	switch {
	case len(list) > 0:
		return "These are computed to wet the rim and to leave the middle solid: " + strings.Join(list, "; or ") + ".",
			true
	case by != "" && hottest > almostWets*toe:
		return fmt.Sprintf("%sis computed to do both. The nearest is %s, with a rim of %.0f °C.", none, by, hottest),
			true
	}
	return none + "comes near: choose another joint or process.", false
}

// almostWets: a change that does not wet the rim is still named if its rim reaches this share of the wetting
// temperature, both in °C.
const almostWets = 0.9

// says describes a way's step with its crown, "" for the job as it is.
func (w *plugWay) says(to, crown, seconds float64) string {
	var parts []string
	if w.what != "" {
		parts = append(parts, fmt.Sprintf(w.what, to))
	}
	if crown > 0 {
		parts = append(parts, fmt.Sprintf("filled on until it stands %.1f mm proud, %.1f s in all", crown, seconds))
	}
	return strings.Join(parts, ", ")
}

// plugTried computes a card's plug with a crown, by the middle values; false if it is not judged.
func plugTried(card *calc.Card, crown float64) (*heatedPlug, bool) {
	p := Page{Card: *card}
	time, ok := p.filled(card)
	if !ok {
		return nil, false
	}
	hole, _ := p.Figure("hole")
	return plugOf(card, hole.Value, time.Value, crown)
}
