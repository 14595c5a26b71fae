package advice

import (
	"math"
	"slices"

	"brazebooth/calc"
	"brazebooth/tables"
)

// shrinker is one metal of a joint: its share of the heat and how that heat shrinks it.
type shrinker struct {
	mark     string // suffix of its symbols if the joint has two metals
	share    float64
	row      *tables.Shrinker
	capacity tables.Datum // J/mm3K
	tensile  float64      // MPa
}

// shrinking lists the metals of a joint, each with its share of the heat by thickness and effusivity. Members
// that shrink alike count as one. The order of the members does not matter.
func shrinking(card *calc.Card) []shrinker {
	joined, arms := card.Setup.Joined(), calc.Paths(card.Used.Joint)
	var list []shrinker
	sum := 0.0
	for i := range joined {
		m := &joined[i]
		at := slices.IndexFunc(tables.Shrinkers, func(s tables.Shrinker) bool { return s.Family == m.Metal.Family })
		if at < 0 {
			continue // cast iron, for which this page has no figures
		}
		draws := arms[i] * calc.Draws(m.Core, m.Metal.Conductivity.V, m.Metal.HeatCapacity.V)
		sum += draws
		list = append(list, shrinker{share: draws, row: &tables.Shrinkers[at], capacity: m.Metal.HeatCapacity,
			tensile: m.Metal.Tensile.V})
	}
	for i := range list {
		list[i].share /= sum
	}
	band := func(d tables.Datum) [3]float64 { return [...]float64{d.V, d.Low, d.High} }
	if len(list) == 2 && list[0].row == list[1].row && band(list[0].capacity) == band(list[1].capacity) {
		list[0].share, list[0].tensile = 1, (list[0].tensile+list[1].tensile)/2
		return list[:1]
	}
	if len(list) == 2 {
		list[0].mark, list[1].mark = "1", "2"
	}
	return list
}

// mean is the mean over the metals.
func (s *shrinkage) mean(of func(m *shrinker) float64) float64 {
	sum := 0.0
	for i := range s.metals {
		sum += of(&s.metals[i])
	}
	return sum / float64(len(s.metals))
}

// band is the uncertainty of a metal's shrinkage per heat, as logarithms; stiff includes its modulus.
func (m *shrinker) band(stiff bool) (less, more float64) {
	less = math.Hypot(math.Log(m.row.Expansion.V/m.row.Expansion.Low), math.Log(m.capacity.High/m.capacity.V))
	more = math.Hypot(math.Log(m.row.Expansion.High/m.row.Expansion.V), math.Log(m.capacity.V/m.capacity.Low))
	if stiff {
		e := m.row.Modulus
		less, more = math.Hypot(less, math.Log(e.V/e.Low)), math.Hypot(more, math.Log(e.High/e.V))
	}
	return less, more
}

func (m *shrinker) inputs(stiff bool) []calc.Input {
	list := []calc.Input{calc.In("a"+m.mark, "expansion", m.row.Expansion.V, "1e-6/K"),
		calc.In("c"+m.mark, "heat capacity", m.capacity.V, "J/mm3K")}
	if stiff {
		list = append(list, calc.In("E"+m.mark, "modulus", m.row.Modulus.V, "GPa"))
	}
	if m.mark != "" {
		list = append(list, calc.Derived("s"+m.mark, "share of the heat", m.share, ""))
	}
	return list
}

// shrinkForm is the formula of the metals' shrinkage per unit of heat.
func shrinkForm(metals []shrinker, stiff bool) string {
	e := [2]string{"{E1}·", "{E2}·"}
	switch {
	case len(metals) == 1 && stiff:
		return "{E}·{a}/{c}"
	case len(metals) == 1:
		return "{a}/{c}"
	case !stiff:
		e = [2]string{}
	}
	return "({s1}·" + e[0] + "{a1}/{c1} + {s2}·" + e[1] + "{a2}/{c2})"
}
