package calc

import "math"

// edges lists the borders of the operating window, each once, with the smaller of its two limits.
func (v *verdict) edges() []Edge {
	if !v.modelled {
		return nil
	}
	m := &v.margins
	list := make([]Edge, 0, limitCount)
	for i := range limitCount {
		if v.logs[i] >= far || v.logs.unjudged(i) != "" {
			continue
		}
		e := Edge{Name: edgeNames[i], Margin: within999(math.Abs(v.d[i])), Met: v.logs[i] >= 0, Basis: m.basis(i, v)}
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

// unjudged lists the edges that this setting is not judged by.
func (v *verdict) unjudged() (list []Unjudged) {
	for i := range limitCount {
		if why := v.logs.unjudged(i); v.modelled && v.logs[i] < far && why != "" {
			list = append(list, Unjudged{edgeNames[i], why})
		}
	}
	return list
}

// unjudged says why a limit means nothing at a state, "" where it does: liquid bridges and holds between members that
// are there and wetted.
func (l *Limits) unjudged(at limit) string {
	switch {
	case at != lBridges && at != lStays:
	case l[lBurn] < 0:
		return "the base melts through here, and nothing is left that the metal could hold to; try a setting that " +
			"does not burn through"
	case l[warm] < 0:
		return "a member stays too cold to be wetted here, so that no metal holds to it; try a setting that wets"
	}
	return ""
}

// basis is the basis of one limit: what it compares with what.
func (m *margins) basis(i limit, v *verdict) Basis {
	value, unit := 0.0, ""
	has := ""
	o := &v.state.o
	now := 0.0
	switch i {
	case lWets:
		value, unit, has, now = m.cold*180/math.Pi, "deg", "larger toe angle", v.state.toes.Larger()*180/math.Pi
		if !v.state.bridged || now > 180 {
			now = 180
		}
	case lSolid:
		value, unit, has, now = m.solid[m.hotter(v)], "C", "peak of the skin", v.state.skin[m.hotter(v)]
	case lBurn:
		value, unit, has, now = m.melt[m.hotter(v)], "C", "peak of the core", v.state.core[m.hotter(v)]
	case lFilled:
		value, unit, has, now = m.wanted.at(&v.state), "mm2", "bead area", o[oBead]
	case lBridges:
		value, has, now = 1, "what it bridges over the gap", math.Exp(v.logs[i])
	case lStays:
		value, has, now = 1, "what hangs over the metal that is there", math.Exp(v.logs[i])
	case lFloor:
		value, unit, has, now = m.floor, "A", "current", o[oAmps]
	case lSpray:
		value, unit, has, now = m.spray, "A", "current", o[oAmps]
	case lZinc:
		value, unit, has, now = m.zinc, "mm", "zinc boiled half-width", v.state.boiled[m.whitest(&v.state)]
	case lSlow:
		value, unit, has, now = m.slow, "mm/s", "travel", o[oTravel]
	case lFast:
		value, unit, has, now = m.fast, "mm/s", "travel", o[oTravel]
	}
	return OwnBasis(edgeSource[i].formula, edgeSource[i].source, In("limit", "limit", value, unit),
		Derived("", has, now, unit))
}

// hotter is the member whose skin comes closer to its solidus.
func (m *margins) hotter(v *verdict) int {
	if m.members == 2 && v.state.skin[1]-m.solid[1] > v.state.skin[0]-m.solid[0] {
		return 1
	}
	return 0
}

// margin is the change of feed or travel that reaches the nearest edge, %, below zero where that edge is not met. Its
// interval ends where the nearest edge lies with every edge's own figure at the low and at the high end of its
// interval: another edge may be the nearest there.
func (v *verdict) margin(list []Figure, b *board, s *spread) (Figure, bool) {
	at, d := nearest(&v.d)
	if math.IsInf(d, 0) {
		return Figure{}, false
	}
	var low, high Limits
	for i := range limitCount {
		if low[i], high[i] = v.d[i], v.d[i]; v.logs.unjudged(i) != "" {
			continue
		}
		down, up := v.uncertainty(i, list, b, s)
		low[i], high[i] = v.courses[i].reach(v.logs[i]+down), v.courses[i].reach(v.logs[i]+up)
	}
	_, least := nearest(&low)
	_, most := nearest(&high)
	return Figure{"margin", within999(d), within999(least), within999(most), "%",
			OwnBasis("smallest change of feed or travel that reaches the nearest edge: "+edgeNames[at], SectionSource)},
		true
}

// within999 is a change in per cent, 999 where there is none or it is larger.
func within999(percent float64) float64 { return max(-999, min(999, percent)) }

// flattest is the smallest toe angle that counts as one, degrees.
const flattest = 0.02 * 180 / math.Pi

// uncertainty is how far a limit's logarithm moves down and up with the interval of the figure that it compares.
func (v *verdict) uncertainty(at limit, list []Figure, b *board, s *spread) (down, up float64) {
	ratio := func(v, low, high float64) (float64, float64) { // a limit from above: more of the figure is nearer
		if !(low > 0) || !(v > 0) {
			return 0, 0
		}
		return -math.Log(high / v), -math.Log(low / v)
	}
	start := b.inputs[inRoom]
	switch at {
	case lWets:
		if f, ok := FigureNamed(list, "wetting_angle"); ok {
			return ratio(max(f.Value, flattest), max(f.Low, flattest), max(f.High, flattest))
		}
	case lSolid, lBurn:
		if f, ok := FigureNamed(list, "base_peak_temperature"); ok {
			return ratio(f.Value-start, f.Low-start, f.High-start)
		}
	case lZinc:
		if f, ok := FigureNamed(list, "zinc_boiled_halfwidth"+[2]string{"", "_2"}[v.margins.whitest(&v.state)]); ok {
			return ratio(f.Value, f.Low, f.High)
		}
	case lFilled:
		d, u := ratio(s.value[oBead], s.low[oBead], s.high[oBead])
		return -u, -d
	case lBridges, lStays:
		half := 1.96 * v.margins.liquid.doubt(at)
		return -half, half
	case lFloor:
		d, u := ratio(s.value[oAmps], s.low[oAmps], s.high[oAmps])
		return -u, -d
	case lSpray:
		return ratio(s.value[oAmps], s.low[oAmps], s.high[oAmps])
	}
	return 0, 0 // a travel is what the welder makes of it
}
