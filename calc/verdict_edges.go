package calc

import (
	"math"

	"brazebooth/calc/limit"
)

// edges lists the edges of the window, each once, with the nearer of its limits.
func (v *verdict) edges() []Edge {
	if !v.modelled {
		return nil
	}
	list := make([]Edge, 0, limit.Count)
	for i := range limit.Count {
		if v.logs[i] >= limit.Far || v.logs.Unjudged(i) != "" {
			continue
		}
		e := Edge{Name: i.Edge(), Margin: within999(math.Abs(v.d[i])), Met: v.logs[i] >= 0, Basis: v.basis(i)}
		if n := len(list); n > 0 && list[n-1].Name == e.Name {
			if last := &list[n-1]; last.Met && (!e.Met || e.Margin < last.Margin) {
				*last = e
			}
			continue
		}
		list = append(list, e)
	}
	return list
}

// unjudged lists the edges that this setting cannot be judged by.
func (v *verdict) unjudged() (list []Unjudged) {
	if !v.modelled {
		return nil
	}
	for i := range limit.Count {
		if why := v.logs.Unjudged(i); v.logs[i] < limit.Far && why != "" {
			list = append(list, Unjudged{i.Edge(), why})
		}
	}
	if why := v.field.liquid.staysNotJudged(); why != "" { // of a filler whose melt is in no table
		list = append(list, Unjudged{limit.Stays.Edge(), why})
	}
	return list
}

// limitRows say what each limit is, where it comes from, and what it compares: what a setting has, and the border.
var limitRows = [limit.Count]struct {
	formula, source, has, unit string
	of                         func(v *verdict) (now, border float64)
}{
	limit.Wets: {"larger toe angle at most {limit}", "ISO 5817 no. 505 level C, written for fusion welds (memory high)",
		"larger toe angle", "deg", (*verdict).toeAngle},
	limit.Solid: {"peak of each member's skin at most {limit}",
		"low end of the base metal's solidus: brazing, not fusion", "peak of the skin", "C",
		func(v *verdict) (now, border float64) { return v.state.skin[v.hotter()], v.field.solid[v.hotter()] }},
	limit.Burn: {"core over the width of the arc at most {limit}", "liquidus of the base metal", "peak of the core",
		"C", func(v *verdict) (now, border float64) { return v.state.core[v.hotter()], v.field.melt[v.hotter()] }},
	limit.Filled: {"bead area at least {limit}", "gap, leg or throat of the joint", "bead area", "mm2",
		func(v *verdict) (now, border float64) { return v.state.o[oBead], v.field.wanted.at(&v.state) }},
	limit.Bridges: {"what the liquid bridges over the gap at least {limit}",
		"span, land, hold and sag of an open root, or the height of the metal over a gap; own computation, untested",
		"what it bridges over the gap", "",
		func(v *verdict) (now, border float64) { return math.Exp(v.logs[limit.Bridges]), 1 }},
	limit.Stays: {"what hangs over the metal that is there at least {limit}",
		"balance of surface tension, weight and the arc's push; own computation, untested",
		"what hangs over the metal that is there", "",
		func(v *verdict) (now, border float64) { return math.Exp(v.logs[limit.Stays]), 1 }},
	limit.Floor: {"current at least {limit}", "steady short arc by wire size; common practice, no source",
		"current", "A", func(v *verdict) (now, border float64) { return v.state.o[oAmps], v.field.floor }},
	limit.Spray: {"current at most {limit}", "AWS Welding Handbook, 8th ed. vol. 2, spray transition (memory high)",
		"current", "A", func(v *verdict) (now, border float64) { return v.state.o[oAmps], v.field.spray }},
	limit.Zinc: {"zinc boiled half-width at most {limit}", "given", "zinc boiled half-width", "mm",
		func(v *verdict) (now, border float64) {
			return v.state.boiled[v.field.whitest(&v.state)], v.field.zinc
		}},
	limit.Slow: {"travel at least {limit}", "what a hand holds; common practice, no source", "travel", "mm/s",
		func(v *verdict) (now, border float64) { return v.state.o[oTravel], v.field.slow }},
	limit.Fast: {"travel at most {limit}", "what a hand holds; common practice, no source", "travel", "mm/s",
		func(v *verdict) (now, border float64) { return v.state.o[oTravel], v.field.fast }},
}

// toeAngle is the larger toe angle, upright for a bead that does not wet both members, and the largest that is no cold
// lap, degrees.
func (v *verdict) toeAngle() (now, border float64) {
	now = 180
	if v.state.bridged {
		now = min(now, v.state.toes.Larger()*180/math.Pi)
	}
	return now, v.field.cold * 180 / math.Pi
}

// basis says what a limit compares with what.
func (v *verdict) basis(i limit.Limit) Basis {
	row := &limitRows[i]
	now, border := row.of(v)
	return OwnBasis(row.formula, row.source, In("limit", "limit", border, row.unit),
		Derived("", row.has, now, row.unit))
}

// hotter is the member whose skin is closer to its solidus.
func (v *verdict) hotter() int {
	skin, solid := &v.state.skin, &v.field.solid
	if v.field.members == 2 && skin[1]-solid[1] > skin[0]-solid[0] {
		return 1
	}
	return 0
}

// margin is the change of feed or travel that reaches the nearest edge, %, below zero where that edge is not met. Its
// interval ends at the nearest edge where every edge's own figure is at the low, or at the high, end of its interval:
// another edge may be the nearest there. For Wets the interval of the toe angle moves the part that decides, also the
// colder member's heat, which has none of its own: the interval alone of the angle on its own course was half of what
// the section gives with the heat at its low end.
func (v *verdict) margin(list []Figure, b *board) (Figure, bool) {
	at, d := limit.Nearest(&v.d)
	if math.IsInf(d, 0) {
		return Figure{}, false
	}
	var low, high limit.All
	for i := range limit.Count {
		if low[i], high[i] = v.d[i], v.d[i]; v.logs.Unjudged(i) != "" {
			continue
		}
		down, up := v.uncertainty(i, list, b)
		low[i] = min(v.d[i], v.courses[i].Reach(v.logs[i]+down)) // lookFurther's distances do not come from the courses
		high[i] = max(v.d[i], v.courses[i].Reach(v.logs[i]+up))
	}
	_, least := limit.Nearest(&low)
	_, most := limit.Nearest(&high)
	return Figure{"margin", within999(d), within999(least), within999(most), "%",
			OwnBasis("smallest change of feed or travel that reaches the nearest edge: "+at.Edge(), SectionSource)},
		true
}

// within999 limits a change, %, to ±999; an infinite one becomes 999.
func within999(percent float64) float64 { return max(-999, min(999, percent)) }

// flattest is the smallest toe angle that counts as one, degrees.
const flattest = 0.02 * 180 / math.Pi

// uncertainty is how far a limit moves down and up with the interval of the figure that it compares. The welder sets
// the travel: it has no interval.
func (v *verdict) uncertainty(at limit.Limit, list []Figure, b *board) (down, up float64) {
	if at == limit.Bridges || at == limit.Stays {
		half := 1.96 * v.field.liquid.doubt(at)
		return -half, half
	}
	name := comparedFigures[at]
	if at == limit.Zinc {
		name += [2]string{"", "_2"}[v.field.whitest(&v.state)]
	}
	zero, least := 0.0, 0.0
	switch at {
	case limit.Wets:
		least = flattest
	case limit.Solid, limit.Burn:
		zero = b.inputs[inRoom]
	}
	f, _ := FigureNamed(list, name)
	value, low, high := max(f.Value-zero, least), max(f.Low-zero, least), max(f.High-zero, least)
	switch {
	case name == "" || !(low > 0) || !(value > 0):
		return 0, 0
	case at == limit.Filled || at == limit.Floor: // lower limits: a larger figure is further off
		return math.Log(low / value), math.Log(high / value)
	}
	return -math.Log(high / value), -math.Log(low / value)
}
