package calc

import (
	"math"

	"brazebooth/calc/suggest"
	"brazebooth/tables"
)

// Chance says how likely a setting is good: a margin alone hides how uncertain the model is.
type Chance struct {
	Good    float64 `json:"chance_good"` // %, that every edge is met
	Missed  string  `json:"missed"`      // the edge that is missed most often, "" with none
	Spoiler string  `json:"spoiler"`     // the input that this edge depends on most, "" with none
}

// Words say what is missed most often and what moves it; "" where nothing is missed.
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
// the order of Limits.weigh.
type weighs struct {
	heat  float64
	edges [weighedEdges]float64
}

// weighedEdges is how many edges a chance counts beside the hand's.
const weighedEdges = 8

// weigh lists what a chance counts: the base's two edges count as one, the nearer.
func (l *Limits) weigh(into []float64) {
	list := [weighedEdges]float64{l[lWets], min(l[lSolid], l[lBurn]), l[lFilled], l[lFloor], l[lSpray], l[lZinc],
		l[lBridges], l[lStays]}
	for i, m := range list {
		into[i] = max(-furthest, min(furthest, m))
	}
}

// furthest is the margin, a logarithm, beyond which one more or less changes nothing.
const furthest = 3

// weights are the doubts at a setting. Those of the heat and the current are the card's own bands, so that what a
// booth measured makes a chance surer.
func weights(s *spread, m *margins) weighs {
	amps := s.doubt(oAmps)
	return weighs{s.doubt(oNet), [weighedEdges]float64{tables.WetsDoubt.V, tables.SolidDoubt.V, m.liquid.doubt(lFilled),
		amps, amps, tables.ZincDoubt.V, m.liquid.doubt(lBridges), m.liquid.doubt(lStays)}}
}

// doubt is an output's standard deviation as that of a logarithm.
func (s *spread) doubt(i out) float64 {
	const deviations = 2 * 1.96 // between the ends of a 95 % interval
	return max(leastDoubt, math.Log(s.high[i]/s.low[i])/deviations)
}

// leastDoubt is that of what a job gives as exact.
const leastDoubt = 0.01

// chanceOf is the chance with the limits at the three heats, at a travel in mm/s, by the function that the suggestion
// is found with, and the edge that is missed most often.
func chanceOf(l *[3]Limits, w *weighs, m *margins, travel float64) Chance {
	var at [3][]float64
	for k := range at {
		at[k] = make([]float64, weighedEdges)
		l[k].weigh(at[k])
	}
	hand := suggest.Range{Low: m.slow, High: m.fast}
	c := Chance{Good: 100 * suggest.Chance(at, w.edges[:], hand, travel)}
	least := 0.995 // an edge that is missed less often is not worth a word
	note := func(edge limit, met float64) {
		if met < least {
			c.Missed, least = edgeNames[edge], met
		}
	}
	solid := lSolid
	if l[1][lBurn] < l[1][lSolid] {
		solid = lBurn
	}
	for i, edge := range [weighedEdges]limit{lWets, solid, lFilled, lFloor, lSpray, lZinc, lBridges, lStays} {
		alone := [3][]float64{at[0][i : i+1], at[1][i : i+1], at[2][i : i+1]}
		note(edge, math.Exp(suggest.LogChance(alone, w.edges[i:i+1])))
	}
	note(lSlow, suggest.Chance([3][]float64{}, nil, hand, travel))
	return c
}
