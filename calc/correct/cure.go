package correct

import (
	"math"
	"slices"
	"strings"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/tables"
)

// chanceNoise is how much the grid of the section alone may change a chance between neighbouring settings.
const chanceNoise = 0.03

// way is a lever and the sign of its change.
type way struct {
	lever int
	sign  float64
}

// treatments are the settings that treat a cause other than heat, in the welder's order; nil if there are none.
func (v *posterior) treatments(cause string, j *calc.Job) []way {
	switch cause {
	case tables.CauseVoltsLow:
		return []way{{leverVolts, 1}, {leverFeed, -1}}
	case tables.CauseVoltsHi:
		return []way{{leverVolts, -1}, {leverFeed, 1}}
	case tables.CauseHollow: // slower lays more metal
		return []way{{leverTravel, -1}, {leverFeed, 1}}
	case tables.CauseUneven:
		if below, above := v.outside(j); below < above {
			return []way{{leverFeed, -1}}
		}
		return []way{{leverFeed, 1}}
	case tables.CauseVapour:
		if !v.closed(j) { // the vapour can escape: less heat drives off less zinc
			return []way{{leverTravel, 1}}
		}
	}
	return nil
}

// treat is the first setting that treats a cause other than heat and leaves the heat as likely right as before.
// It is nil if no setting treats the cause, or if every one would spoil the heat.
func (v *posterior) treat(t *Try, cause string, before float64) *move {
	for _, w := range v.treatments(cause, &t.Job) {
		step := v.usualStep
		if cause == tables.CauseUneven {
			step = v.toSteady
		}
		m := step(t, &levers[w.lever], w.sign)
		if m != nil && (v.off || m.good >= before-chanceNoise || w.lever == leverVolts && v.proven(cause, &t.Job)) {
			return m
		}
	}
	return nil
}

// toSteady is the smallest change that probably brings the current into the steady range, or else the largest
// step.
func (v *posterior) toSteady(t *Try, l *lever, sign float64) *move {
	list := v.notches(t, l, sign)
	if len(list) == 0 {
		return nil
	}
	steady := slices.IndexFunc(list, func(x float64) bool {
		j := t.Job
		*l.opt(&j) = calc.Some(x)
		below, above := v.outside(&j)
		return below+above < 0.5
	})
	if steady < 0 {
		steady = len(list) - 1
	}
	return v.set(t, l, list[steady])
}

// proven reports whether the volts were read and differ from the usual ones by at least the width of their
// band. The heat does not matter while the arc stutters.
func (v *posterior) proven(cause string, j *calc.Job) bool {
	side := 1.0
	if cause == tables.CauseVoltsLow {
		side = -1
	}
	return v.voltsOff(j, side) >= math.Exp(2)
}

// closed reports whether two members enclose the zinc between them.
func (v *posterior) closed(j *calc.Job) bool {
	return (v.card.Used.Joint == "lap" || v.card.Used.Joint == "tee") && j.Gap.V == 0
}

// outside is the probability that the current lies below, and above, the steady range, by its interval on the
// card.
func (v *posterior) outside(j *calc.Job) (below, above float64) {
	f, ok := v.card.Figure("current")
	if !ok || !(f.Low > 0) {
		return 0, 0
	}
	sigma := math.Log(f.High/f.Low) / 4
	p, err := calc.ProbeOf(v.ctx, j)
	if err != nil || !(sigma > 0) {
		return 0, 0
	}
	amps, ok := p.Amps()
	if !ok {
		return 0, 0
	}
	past := func(z float64) float64 { return math.Erfc(-z/math.Sqrt2) / 2 }
	floor, spray := calc.SteadyRange(v.card.Used.Wire.V)
	if floor > 0 {
		below = past(math.Log(floor/amps) / sigma)
	}
	if spray > 0 {
		above = past(math.Log(amps/spray) / sigma)
	}
	return below, above
}

// recall goes through the beads before the last: what they say about the heat, and which cures did not help.
func (v *posterior) recall() {
	for i := range v.laid[:len(v.laid)-1] {
		t, next := &v.laid[i], &v.laid[i+1]
		then := *v // the state when this bead was the last
		then.laid, then.onlyZinc = v.laid[:i+1], false
		again := t.Job == next.Job && sharesSight(t.Seen, next.Seen)
		var c advice.Correction
		if again {
			c.Causes = then.rank(t)
		}
		v.learn(t)
		if !again || contradicts(t.Seen) {
			continue
		}
		then.choose(t, &c)
		if c.Do != "" && !OfHeat(c.Causes[0].ID) {
			v.cured[c.Causes[0].ID] = true
		}
	}
}

// sharesSight reports whether two beads have a sight in common.
func sharesSight(a, b string) bool {
	other := strings.Split(b, ",")
	return slices.ContainsFunc(strings.Split(a, ","), func(s string) bool { return slices.Contains(other, s) })
}
