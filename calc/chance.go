package calc

import (
	"math"

	"brazebooth/calc/limit"
	"brazebooth/calc/suggest"
	"brazebooth/tables"
)

// Chance says how likely a setting is good: a margin alone hides how uncertain the model is.
type Chance struct {
	Good    float64 `json:"chance_good"` // %, that every edge is met
	Missed  string  `json:"missed"`      // the edge that is missed most often, "" with none
	Spoiler string  `json:"spoiler"`     // the input that this edge depends on most, "" with none

	missed limit.Limit
	shares []Input // how often each edge is met, %
}

// Words name the edge that is missed most often and what moves it; "" where none is missed.
func (c *Chance) Words() string {
	switch {
	case c.Missed == "":
		return ""
	case c.Spoiler == "":
		return "“" + c.Missed + "”"
	}
	return "“" + c.Missed + "”, moved most by " + c.Spoiler
}

// weighs are the doubts that a chance is made of, as standard deviations of logarithms: the heat's, and each edge's in
// the order of limit.All.Weigh.
type weighs struct {
	heat  float64
	edges [limit.Weighed]float64
}

// weights are the doubts at a setting. Those of heat and current are the card's own bands, so that readings of a booth
// make a chance surer.
func weights(s *spread, m *margins) weighs {
	amps := s.doubt(oAmps)
	return weighs{s.doubt(oNet), [limit.Weighed]float64{tables.WetsDoubt.V, tables.SolidDoubt.V,
		m.liquid.doubt(limit.Filled),
		amps, amps, tables.ZincDoubt.V, m.liquid.doubt(limit.Bridges), m.liquid.doubt(limit.Stays)}}
}

// doubt is an output's standard deviation as that of a logarithm.
func (s *spread) doubt(i out) float64 {
	const deviations = 2 * 1.96 // between the ends of a 95 % interval
	return max(leastDoubt, math.Log(s.high[i]/s.low[i])/deviations)
}

// leastDoubt is the doubt of what a job gives as exact.
const leastDoubt = 0.01

// chanceOf is the chance from the limits at three heats and a travel in mm/s, by the same function that finds the
// suggestion, and the edge that is missed most often.
func chanceOf(l *[3]limit.All, w *weighs, m *margins, travel float64) Chance {
	var at [3][]float64
	for k := range at {
		at[k] = make([]float64, limit.Weighed)
		l[k].Weigh(at[k])
	}
	hand := suggest.Range{Low: m.slow, High: m.fast}
	c := Chance{Good: 100 * suggest.Chance(at, w.edges[:], hand, travel)}
	solid := limit.Solid
	if l[1][limit.Burn] < l[1][limit.Solid] {
		solid = limit.Burn
	}
	least := rarelyMissed
	note := func(edge limit.Limit, met float64) {
		if l[1].Unjudged(edge) != "" {
			return
		}
		if met < 1-1e-6 {
			c.shares = append(c.shares, Derived("", "“"+edge.Edge()+"” met", 100*met, "%"))
		}
		if met < least {
			c.Missed, c.missed, least = edge.Edge(), edge, met
		}
	}
	for i, edge := range [limit.Weighed]limit.Limit{limit.Wets, solid, limit.Filled, limit.Floor, limit.Spray,
		limit.Zinc, limit.Bridges, limit.Stays} {
		alone := [3][]float64{at[0][i : i+1], at[1][i : i+1], at[2][i : i+1]}
		note(edge, math.Exp(suggest.LogChance(alone, w.edges[i:i+1])))
	}
	note(limit.Slow, suggest.Chance([3][]float64{}, nil, hand, travel))
	return c
}

// rarelyMissed is the chance to meet an edge from which it is not mentioned.
const rarelyMissed = 0.995

// chanceError is the largest error of three heats against a fine sum over all heats, in points of 100; a test holds
// them to it.
const chanceError = 6

// shown is the chance rounded as a card shows it, %; texts go by this value.
func (c *Chance) shown() float64 { return math.Round(10*c.Good) / 10 }

// figure is the chance as a figure of the card.
func (c *Chance) figure() Figure {
	what := "share of three heats, each edge with its own doubt, at which every edge is met"
	if math.Abs(c.shown()-tables.MarginalUnder.V) <= chanceError {
		what += "; about even: good and marginal lie closer than it is known"
	}
	return Figure{"chance", c.shown(), max(0, c.Good-chanceError), min(100, c.Good+chanceError), "%",
		OwnBasis(what,
			"the doubts of heat and current as on this card, of the rest by judgement; own computation", c.shares...)}
}

// comparedFigures are the figures that the edges compare.
var comparedFigures = map[limit.Limit]string{limit.Wets: "wetting_angle", limit.Solid: "base_peak_temperature",
	limit.Burn: "base_peak_temperature", limit.Filled: "bead_area", limit.Floor: "current", limit.Spray: "current",
	limit.Zinc: "zinc_boiled_halfwidth"}

// spoil finds the input that moves the figure of the missed edge most. Factors of 1, which say what a model leaves out,
// do not count: a shop cannot know them better.
func (c *Chance) spoil(list []Figure) {
	f, ok := FigureNamed(list, comparedFigures[c.missed])
	if c.Missed == "" || !ok {
		return
	}
	most := 0.0
	for _, in := range f.Basis.Inputs {
		if s := math.Abs(in.Sensitivity); !in.Derived && s > most && !(in.Unit == "" && in.Value == 1) {
			c.Spoiler, most = in.Name, s
		}
	}
}
