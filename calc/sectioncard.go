package calc

import (
	"errors"
	"math"

	"brazebooth/calc/formula"
	"brazebooth/calc/section"
	"brazebooth/internal/crew"
	"brazebooth/tables"
)

// verdict is what the cross-section says about a card's setting.
type verdict struct {
	state    heatState
	logs     [limitCount]float64
	courses  [limitCount]courses // how each changes along feed and along travel
	d        [limitCount]float64 // change of feed or travel that reaches each limit, %; below zero where it is not met
	zone     string
	why      string // for not-modelled
	margins  margins
	variants variants
	modelled bool
}

// verdict computes the section at the setting, a little beside it, and with what its figures depend on changed.
func (b *board) verdict(card *Card, s *spread) (verdict, error) {
	var v verdict
	if why := b.notModelled(card); why != "" {
		v.zone, v.why = "not-modelled", why
		return v, nil
	}
	v.margins = newMargins(b, card)
	m := &v.margins
	h := b.heatField(card)
	feed, travel := s.value[oFeed], s.value[oTravel]
	var beside [2][2]Limits
	var err error
	var wg crew.Crew // somebody waits for this one too
	for axis, by := range [2][2]float64{{probe, 0}, {0, probe}} {
		for side, sign := range [2]float64{-1, 1} {
			wg.Go(func() { beside[axis][side] = m.beside(&h, feed*math.Exp(sign*by[0]), travel*math.Exp(sign*by[1])) })
		}
	}
	v.variants.look(&h, feed, travel, s, &wg)
	v.state, err = h.at(feed, travel, true)
	wg.Wait()
	switch {
	case errors.Is(err, formula.ErrRange) || errors.Is(err, section.ErrRange):
		v.zone, v.why = "not-modelled", "this heat is outside what the cross-section can follow"
		return v, nil
	case err != nil:
		return v, err
	case !bothWays(&beside), v.variants.hot == nil && v.variants.cold == nil:
		return verdict{zone: "not-modelled", why: "this heat is at the border of what the cross-section can follow"}, nil
	}
	v.modelled = true
	v.variants.at = variant{v.state, h.in.Thick}
	v.logs = m.logs(&v.state)
	v.zone = zone(&v.logs)
	v.courses, v.d = (*Limits)(&v.logs).along(&beside)
	return v, nil
}

// Limits are the logarithms of all limits at a state.
type Limits [limitCount]float64

func (l *Limits) known() bool { return !math.IsNaN(l[0]) }

// bothWays reports whether limits are known on at least one side along feed and along travel.
func bothWays(beside *[2][2]Limits) bool {
	for axis := range beside {
		if !beside[axis][0].known() && !beside[axis][1].known() {
			return false
		}
	}
	return true
}

// along returns each limit's courses, from the limits a probe to each side, and the change in per cent that reaches it.
func (l *Limits) along(beside *[2][2]Limits) (c [limitCount]courses, d [limitCount]float64) {
	for i, here := range l {
		for axis := range c[i] {
			c[i][axis] = courseOf(here, beside[axis][0][i], beside[axis][1][i])
		}
		d[i] = c[i].reach(here)
	}
	return c, d
}

// beside are the limits at another feed and travel; NaN where the model does not reach.
func (m *margins) beside(h *heatField, feed, travel float64) (l Limits) {
	s, err := h.at(feed, travel, m.zinc > 0)
	if err != nil {
		for i := range l {
			l[i] = math.NaN()
		}
		return l
	}
	return m.logs(&s)
}

// notModelled says why the cross-section has no verdict, "" where it has one.
func (b *board) notModelled(card *Card) string {
	switch {
	case b.chain.plug:
		return "a plug is round: no travelling arc, no section"
	case b.chain.timed:
		return "a timed arc lays spots: a section of a steady bead says nothing of them"
	case card.Used.Gap.V > 2*tables.ArcWidth.V:
		return "the gap is wider than the arc's own width, which finds little sheet to land on"
	case MinCore(card.Setup.Joined()) > tables.SheetThickest.V && card.Used.Joint != "overlay":
		return "above about 3 mm the heat flows in three dimensions"
	}
	return ""
}

// edges lists the borders of the operating window, each once, with the smaller of its two limits.
func (v *verdict) edges() []Edge {
	if !v.modelled {
		return nil
	}
	m := &v.margins
	list := make([]Edge, 0, limitCount)
	for i := range limitCount {
		if v.logs[i] >= far {
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
		value, unit, has, now = m.need, "mm2", "bead area", o[oBead]
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
	return Basis{Formula: edgeSource[i].formula, Source: edgeSource[i].source, Known: OwnCalc,
		Inputs: []Input{{Symbol: "limit", Name: "limit", Value: value, Unit: unit}, {Name: has, Value: now, Unit: unit, Derived: true}}}
}

// hotter is the member whose skin comes closer to its solidus.
func (m *margins) hotter(v *verdict) int {
	if m.members == 2 && v.state.skin[1]-m.solid[1] > v.state.skin[0]-m.solid[0] {
		return 1
	}
	return 0
}

// worst names the two edges that are furthest from being met.
func (v *verdict) worst() (first, second string) {
	first = v.worstBut("")
	second = v.worstBut(first)
	return "“" + first + "”", "“" + second + "”"
}

func (v *verdict) worstBut(edge string) (name string) {
	least := 0.0
	for i, d := range v.d {
		if edgeNames[i] != edge && (name == "" || d < least) {
			name, least = edgeNames[i], d
		}
	}
	return name
}

// margin is the change of feed or travel that reaches the nearest edge, %, below zero where that edge is not met. Its
// interval ends where the nearest edge lies with every edge's own figure at the low and at the high end of its
// interval: another edge may be the nearest there.
func (v *verdict) margin(list []Figure, b *board, s *spread) (Figure, bool) {
	at, d := nearest(&v.d)
	if math.IsInf(d, 0) {
		return Figure{}, false
	}
	var low, high [limitCount]float64
	for i := range limitCount {
		down, up := v.uncertainty(i, list, b, s)
		low[i], high[i] = v.courses[i].reach(v.logs[i]+down), v.courses[i].reach(v.logs[i]+up)
	}
	_, least := nearest(&low)
	_, most := nearest(&high)
	return Figure{"margin", within999(d), within999(least), within999(most), "%",
		Basis{Formula: "smallest change of feed or travel that reaches the nearest edge: " + edgeNames[at],
			Source: SectionSource, Known: OwnCalc}}, true
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
	case lFloor:
		d, u := ratio(s.value[oAmps], s.low[oAmps], s.high[oAmps])
		return -u, -d
	case lSpray:
		return ratio(s.value[oAmps], s.low[oAmps], s.high[oAmps])
	}
	return 0, 0 // a travel is what the welder makes of it
}

// FigureNamed finds a figure of a list by its JSON name.
func FigureNamed(list []Figure, name string) (Figure, bool) {
	for _, f := range list {
		if f.Name == name {
			return f, true
		}
	}
	return Figure{}, false
}

// section is what a picture of the joint needs.
func (v *verdict) section(card *Card) Section {
	if !v.modelled {
		return Section{}
	}
	st := &v.state
	s := Section{Drawn: true, Joint: card.Used.Joint, Thick: [2]float64{card.Setup.Members[0].Core, card.Setup.Members[1].Core},
		Gap: card.Used.Gap.V, Wet: st.wet}
	if st.bridged {
		s.Phi = st.toes.Phi
	}
	for i, m := range card.Setup.Joined() {
		if !m.Coating.Zinc {
			continue
		}
		s.Boiled[i], s.Melted[i] = known(st.boiled[i]), known(st.melted[i])
		s.BoiledBack[i], s.MeltedBack[i] = known(st.boiledBack[i]), known(st.meltedBack[i])
	}
	return s
}

// known is v, or 0 where the grid did not reach.
func known(v float64) float64 {
	if math.IsNaN(v) {
		return 0
	}
	return v
}
