package correct

import (
	"fmt"
	"strings"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/calc/limit"
	"brazebooth/tables"
)

// A bead may look cold at a setting that is computed to melt the sheet, or hot at one that is computed not to
// wet. Then something was read or set wrongly, and a step in the direction of the look would make a real fault
// worse.

// farOff is 1 for a setting that is computed too hot by a wide margin, −1 for one too cold by a wide margin, 0
// for others. A setting that melts through at the computed heat is always too hot. Only the computation counts,
// not the beads.
func (v *posterior) farOff(job *calc.Job) float64 {
	if v.off {
		return 0
	}
	const wide, half = 0.95, 0.5 // of the computed heat's own spread
	list := v.causesAt(job)
	// A bead may melt the base and still not wet. It then counts on both sides: more heat is as wrong as less.
	var cold, hot float64
	for i, c := range list {
		switch heatOf(c) {
		case -1:
			cold += v.computed[i]
		case 1:
			hot += v.computed[i]
		}
	}
	if !v.timed {
		for i, l := range v.steadyLimits(job) {
			if l != nil && l[limit.Wets] < 0 && heatOf(list[i]) > 0 {
				cold += v.computed[i]
			}
		}
	}
	switch {
	case list[len(list)/2] == tables.CauseMelts, hot > wide:
		return 1
	case cold > wide && hot < half:
		return -1
	}
	return 0
}

// heatOf is −1 for a cause that asks for more heat, 1 for one that asks for less, 0 for others.
func heatOf(cause string) float64 {
	switch cause {
	case tables.CauseCold, tables.CauseOnShort:
		return -1
	case tables.CauseHot, tables.CauseMelts, tables.CauseOnLong:
		return 1
	}
	return 0
}

// barred reports whether a lever must not be moved that way: to more heat at a setting that is computed far too
// hot, to less at one far too cold.
func (v *posterior) barred(t *Try, l *lever, sign float64) bool {
	return sign*l.hotter*v.farOff(&t.Job) > 0
}

// dispute is the answer if a look asks for a step that the computation bars: measure what was set before any
// change. It names the card's own setting.
func (v *posterior) dispute(t *Try, top *advice.Likely, c *advice.Correction) {
	v.disputed = true
	side, step := "too cold by a wide margin", "less"
	if v.farOff(&t.Job) > 0 {
		side, step = "too hot by a wide margin", "more"
		if v.card.Zone == "burn-through" {
			side = "hot enough for burn-through"
		}
	}
	c.Why = fmt.Sprintf("Likeliest by its look: %s. But this setting is computed to be %s: one of the two is wrong, "+
		"and %s heat is no answer before that is clear.", top.Name, side, step)
	what := []string{"measure wire feed (a 6 s pull), stick-out and sheet, and read the meter while the arc burns"}
	if v.timed {
		what = []string{"measure wire feed (a 6 s pull), stick-out, sheet, gap and both times, and read the meter"}
	} else if j, ok := v.own(unaimed(t.Job), isGood); ok {
		what = append(what, fmt.Sprintf("if all is as typed, go to the card's own setting: %.1f m/min and %.1f mm/s",
			j.Feed.V, j.Travel.V))
	}
	if top.Do != "" {
		what = append(what, top.Do)
	}
	c.Do = strings.Join(what, "; ")
}
