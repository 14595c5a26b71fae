package calc

import (
	"math"
	"slices"

	"brazebooth/calc/hang"
	"brazebooth/calc/limit"
	"brazebooth/calc/section"
	"brazebooth/tables"
)

// SectionSource is the source of the figures that the cross-section gives.
const SectionSource = "cross-section of a moving arc: arms with skin and core, steel by EN 1993-1-2, filler arriving " +
	"hot and melting over its range"

// sectionList makes the figures of the section, each with an interval from what moves it.
type sectionList struct {
	b    *board
	card *Card
	s    *spread
	v    *verdict
	list []Figure
}

// sectionFigures replaces figures of the closed forms by the section's and adds those that only the section has.
func (b *board) sectionFigures(list []Figure, card *Card, s *spread, v *verdict) []Figure {
	l := sectionList{b, card, s, v, list}
	l.width()
	l.zinc()
	for i := range card.Setup.Joined() {
		r := reading{of: func(x *variant) float64 { return x.wet[i] }}
		l.add(memberFigure("wetted_width", i), "mm", "where the peak of the member's skin falls to {T_toe}", r,
			formOf(l.widthDoubt()))
	}
	if v.state.bridged {
		l.angles()
		l.throat()
	}
	l.peak()
	l.liquid()
	if f, ok := v.margin(l.list, b); ok {
		l.list = append(l.list, f)
	}
	v.chance.spoil(l.list)
	l.list = append(l.list, v.chance.figure())
	return l.list
}

// liquid adds the figures of bridging and staying, where the job asks for them.
func (l *sectionList) liquid() {
	const bridges = "span, land, hold and sag of an open root, each gap with a cross-section of its own; untested"
	const stays = "balance of surface tension and weight; untested"
	h, st := &l.v.field, &l.v.state
	put := func(name, unit, formula, source string, e hang.Estimate, ok bool) {
		if ok {
			l.list = append(l.list, NewFigure(name, unit, e.V, e.Low, e.High, OwnBasis(formula, source)))
		}
	}
	if l.v.logs.Unjudged(limit.Bridges) != "" { // then staying is not judged either
		return
	}
	e, ok := h.bridgesUpTo(l.s.value[oFeed], l.s.value[oTravel])
	put("largest_gap", "mm", "widest root opening that this setting bridges", bridges, e, ok)
	e, ok = h.liquid.estimate(st, func(j *hang.Joint) (hang.Estimate, error) {
		return hang.SagHeight(j, &l.card.Setup.Filler)
	})
	put("root_sag", "mm", "height of the root's bead below the sheet", bridges, e, ok)
	e, ok = h.liquid.estimate(st, hang.LargestBead)
	put("largest_bead", "mm2", "largest bead that stays where it is laid, on this width", stays, e, ok)
}

// widthDoubt is the model's uncertainty of one member's wetted width: one value up to 3 mm, another from 4 mm on, and
// interpolated between the two, so that no interval jumps.
func (l *sectionList) widthDoubt() *tables.Datum {
	d, thick := tables.SectionWidth, &tables.SectionWidthThick
	share := max(0, min(1, maxCore(l.card.Setup.Joined())-tables.SheetThickest.V))
	d.Low, d.High = d.Low+share*(thick.Low-d.Low), d.High+share*(thick.High-d.High)
	return &d
}

// formOf is the effect of what a model leaves out of a width that it computes itself.
func formOf(d *tables.Datum) effect { return effect{byModel, math.Log(d.Low), math.Log(d.High)} }

func memberFigure(name string, member int) string { return name + [2]string{"_1", "_2"}[member] }

// add appends a figure that is read off the section and returns it, for further limits of its interval.
func (l *sectionList) add(name, unit, formula string, r reading, more ...effect) *Figure {
	l.list = append(l.list, l.figure(name, unit, formula, r, more...))
	return &l.list[len(l.list)-1]
}

// figure is a figure that is read off the section. Its interval comes from the section's own effects and from more.
func (l *sectionList) figure(name, unit, formula string, r reading, more ...effect) Figure {
	v := r.of(&l.v.variants.at)
	var effects []effect
	low, high := 0.0, 0.0
	if v > 0 || r.difference {
		effects = append(l.effects(&r), more...)
		down, up := join(effects)
		if low, high = v-down, v+up; !r.difference {
			low, high = v*math.Exp(-down), l.highEnd(&r, v, up, more)
		}
	} else if l.v.variants.hot != nil { // zero here, but perhaps not at the hot end
		high = l.summed(&r, v, nil)
	}
	return NewFigure(name, unit, v, low, high,
		OwnBasis(formula, SectionSource, l.inputs(effects, &r, v, formula)...))
}

// byWidths are the effects of the model's uncertainty of the wetted widths on a reading that follows from both: of both
// widths together, and, for the part of one member's uncertainty that goes beyond that, of one width at the other's
// cost.
func (l *sectionList) byWidths(r *reading) []effect {
	at, total, one := &l.v.variants.at, &tables.SectionTotal, l.widthDoubt()
	list := []effect{{byModel, r.step(at, l.reshaped(total.Low, total.Low, 1)),
		r.step(at, l.reshaped(total.High, total.High, 1))}}
	if l.card.Setup.One {
		return list
	}
	rest := func(one, total float64) float64 {
		a, b := math.Log(one), math.Log(total)
		return math.Copysign(math.Sqrt(max(0, a*a-b*b)), a)
	}
	less, more := math.Exp(rest(one.Low, total.Low)), math.Exp(rest(one.High, total.High))
	return append(list, effect{byAim, r.step(at, l.reshaped(less, more, 1)), r.step(at, l.reshaped(more, less, 1))})
}

// byArea is the effect of the uncertainty of the bead's area on a reading that follows from it.
func (l *sectionList) byArea(r *reading) effect {
	at, v := &l.v.variants.at, l.s.value[oBead]
	return effect{Derived("", "bead area", v, "mm2"), r.step(at, l.reshaped(1, 1, l.s.low[oBead]/v)),
		r.step(at, l.reshaped(1, 1, l.s.high[oBead]/v))}
}

// reshaped is the bead with its wetted widths and its area multiplied by factors.
func (l *sectionList) reshaped(first, second, area float64) *variant {
	x := l.v.variants.at
	x.wet[0], x.wet[1] = x.wet[0]*first, x.wet[1]*second
	toes, err := l.v.field.wanted.toes(x.o[oBead]*area, x.wet[0], x.wet[1])
	x.toes, x.bridged = toes, err == nil
	return &x
}

// width replaces the bead width of the closed form by the section's; metal that does not wet both members has none.
func (l *sectionList) width() {
	at := slices.IndexFunc(l.list, func(f Figure) bool { return f.Name == "bead_width" })
	switch {
	case at < 0:
		return
	case !l.v.variants.at.bridged:
		l.list = slices.Delete(l.list, at, at+1)
		return
	}
	r := reading{of: func(x *variant) float64 { return ofBead(x, x.toes.Chord) }}
	formula := "chord from toe to toe of the section, each toe where the skin's peak falls to {T_toe}"
	if l.card.Used.Joint == "edge" {
		formula = "edges and outer faces, unfolded, as far as the skin's peak reaches {T_toe}"
	}
	f := l.figure("bead_width", "mm", formula, r, formOf(&tables.SectionTotal))
	if cold := l.v.variants.cold; cold != nil && !cold.bridged { // the cold end wets one member only, or neither
		toes, _ := l.v.field.wanted.toes(cold.o[oBead], cold.wet[0], cold.wet[1]) // known even if the angle is not
		f.Low = min(f.Low, toes.Chord)
	}
	l.list[at] = f
}

// ofBead is a size of a bead that wets both members; NaN for others.
func ofBead(x *variant, size float64) float64 {
	if !x.bridged {
		return math.NaN()
	}
	return size
}

// angles adds the angles inside the bead at its toes. A bead that does not wet both members, or that bulges over a
// member, counts as upright.
func (l *sectionList) angles() {
	angle := func(name, formula string, of func(section.Toes) float64) {
		r := reading{difference: true, of: func(x *variant) float64 {
			if !x.bridged {
				return 180
			}
			// Below zero the metal cannot cover what is wetted: flat at the toes.
			return min(180, max(0, of(x.toes))*180/math.Pi)
		}}
		f := l.add(name, "deg", formula, r, append(l.byWidths(&r), l.byArea(&r))...)
		f.Low, f.High = max(0, f.Low), min(180, f.High)
	}
	const inside = "angle inside the bead between its surface and the member: circular arc over the chord that holds " +
		"the bead's area"
	angle("wetting_angle", "larger of the toe angles", section.Toes.Larger)
	angle("toe_angle_1", inside, func(t section.Toes) float64 { return t.First })
	if !l.card.Setup.One {
		angle("toe_angle_2", inside, func(t section.Toes) float64 { return t.Second })
	}
}

// peak adds the highest temperature of the hotter member's skin. What the model leaves out is a share of its rise.
func (l *sectionList) peak() {
	st, start := &l.v.state, l.b.inputs[inRoom]
	through := len(l.card.Setup.Joined()) == 2 && st.skin[1] > st.skin[0] &&
		(l.card.Used.Joint == "lap" || l.card.Used.Joint == "tee")
	d := tables.SectionRiseEnding
	if through {
		d = tables.SectionRiseThrough
	}
	r := reading{difference: true, of: func(x *variant) float64 { return max(x.skin[0], x.skin[1]) }}
	rise := r.of(&l.v.variants.at) - start
	l.add("base_peak_temperature", "C", "highest temperature of the hotter member's skin", r,
		effect{byModel, (d.Low - 1) * rise, (d.High - 1) * rise})
}

// zinc replaces the closed forms' zinc bands by the section's. Of a band that leaves the section's grid the closed form
// is kept on sheet.
func (l *sectionList) zinc() {
	for i, suffix := range [...]string{"", "_2"} {
		for name, of := range map[string]func(v *variant) float64{
			"boiled": func(v *variant) float64 { return v.boiled[i] },
			"melted": func(v *variant) float64 { return v.melted[i] },
		} {
			n := slices.IndexFunc(l.list, func(f Figure) bool { return f.Name == "zinc_"+name+"_halfwidth"+suffix })
			switch {
			case n < 0:
			case !math.IsNaN(of(&l.v.variants.at)):
				l.reached(&l.list[n], of)
			case l.card.Setup.Members[i].Core > tables.SheetThickest.V:
				l.list = slices.Delete(l.list, n, n+1)
			}
		}
	}
}

// reached replaces the half-width of the closed form by the section's, with the relative interval of the closed form,
// which includes the uncertainty of zinc. Where the peak hardly passes the zinc's temperature a share of the half-width
// is too narrow: the interval holds at least what the section finds at both ends of the heat's.
func (l *sectionList) reached(f *Figure, of func(v *variant) float64) {
	e := &l.v.variants
	v := of(&e.at)
	r := v / f.Value
	f.Value, f.Low, f.High = v, f.Low*r, f.High*r
	for _, x := range [...]*variant{e.cold, e.hot} {
		if x != nil && !math.IsNaN(of(x)) {
			f.Low, f.High = min(f.Low, of(x)), max(f.High, of(x))
		}
	}
	f.Basis.Formula = "in the section; its band by the closed form, at least as wide as the heat's in the section: " +
		f.Basis.Formula
	f.Basis.Source = SectionSource + "; not validated on zinc"
}
