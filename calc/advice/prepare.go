package advice

import (
	"math"

	"brazebooth/calc"
	"brazebooth/tables"
)

// Prepare says what to do before the arc, by metal and mass, in the order of the work: clean, fit up, warm,
// lay, feed the wire, after. Its figures are the vent gap, tacks, bevel, preheat, interpass and the order of
// the seam's pieces.
func Prepare(card *calc.Card) (Page, error) {
	p := Page{Name: "prepare", Card: *card}
	for _, step := range [...]func(*Page, *calc.Card){
		(*Page).cleaning, (*Page).fitUp, (*Page).warming, (*Page).laying, (*Page).feeding, (*Page).after,
	} {
		step(&p, card)
	}
	return p, nil
}

// line adds a line of common practice under its topic.
func (p *Page) line(code string) *Reason {
	l, _ := tables.PracticeLines.ByID(code)
	r := p.Because(l.Origin, "%s", l.Text)
	r.Topic = l.Topic
	return r
}

// lineUnder adds a line under another topic than its own.
func (p *Page) lineUnder(topic, code string) { p.line(code).Topic = topic }

// row adds a figure from a table.
func (p *Page) row(name string, d tables.Datum, formula string) {
	p.take(calc.RowFigure(name, d, formula))
}

func (p *Page) cleaning(card *calc.Card) {
	p.lineUnder(tables.TopicClean, "clean")
	p.line("solvent-never")
	said := map[string]bool{}
	strip := p.stripsZinc(card)
	for _, m := range card.Setup.Joined() {
		code := map[tables.Family]string{tables.Stainless: "clean-stainless", tables.CastIron: "clean-iron",
			tables.CopperFam: "clean-copper", tables.Bronze: "clean-copper",
			tables.BrassFam: "clean-copper"}[m.Metal.Family]
		switch {
		case m.Coating.Zinc && strip:
			code = "strip-zinc"
		case m.Coating.Zinc:
			code = "clean-zinc"
		case code == "":
			code = "clean-steel"
		}
		if !said[code] {
			said[code] = true
			p.line(code)
		}
	}
	if strip {
		p.row("zinc_strip", tables.ZincStrip, "bare on both faces where zinc must not be heated")
		return
	}
	for _, m := range card.Setup.Joined() {
		if m.Coating.Zinc && 1000*calc.CoatDepth(m.Coating) > tables.CoatingTrial.V {
			p.lineUnder(tables.TopicClean, "coat-thick")
			return
		}
	}
}

func (p *Page) fitUp(card *calc.Card) {
	joint := card.Used.Joint
	thin := calc.MinCore(card.Setup.Joined())
	zinc := calc.Applies("zinc", card) && !p.stripsZinc(card)
	switch {
	case joint == "lap" && zinc:
		p.lineUnder(tables.TopicFitUp, "vent-gap")
		p.vent(card)
	case joint == "lap" || joint == "tee" || joint == "edge":
		p.line("fit-tight")
	case joint == "butt" && !backed(card) && thin <= tables.BackingUpTo.V:
		p.rootOpening(card, thin)
		p.line("backing")
	}
	switch {
	case p.has(tables.CastIron):
		p.line("bevel-iron")
		p.row("bevel", tables.Bevel, "groove to sound metal, both sides together")
	case joint == "butt" && thin > tables.SheetThickest.V:
		p.line("bevel-plate")
		p.row("bevel", tables.Bevel, "groove of a butt in plate, both sides together")
	}
	if backed(card) {
		p.line(card.Used.Backing)
	}
	p.lineUnder(tables.TopicFitUp, "work-lead")
	if joint == "overlay" {
		p.lineUnder(tables.TopicFitUp, "shaft")
		return
	}
	if p.has(tables.Stainless) || p.has(tables.CastIron) || calc.Applies("high-strength", card) {
		p.line("tacks-held")
		return
	}
	if joint != "plug" {
		p.tacks(card)
	}
}

// vent is the gap for zinc vapour: the thickness of the two coats that face each other, at most VentMost (0.1
// mm).
func (p *Page) vent(card *calc.Card) {
	sum := [3]float64{}
	for _, m := range card.Setup.Joined() {
		if !m.Coating.Zinc {
			continue
		}
		for i, side := range [...]float64{m.Coating.Side.V, m.Coating.Side.Low, m.Coating.Side.High} {
			sum[i] += side / tables.ZincDensity.V * 1e-3
		}
	}
	most := tables.VentMost
	p.add("vent_gap", "mm", min(sum[0], most.V), min(sum[1], most.V), most.High,
		calc.RowBasis("min({c}, {m})", most.Origin, calc.In("m", "widest", most.V, "mm"),
			calc.Derived("c", "coats that face each other", sum[0], "mm")))
}

// tacks are the tack beads along the seam.
func (p *Page) tacks(card *calc.Card) {
	p.line("tacks")
	length := p.seamLength(card)
	d := tables.TackPitch
	n := func(pitch float64) float64 { return math.Ceil(length/pitch-1e-9) + 1 }
	p.row("tack_pitch", d, "usual on sheet")
	p.add("tacks", "1", n(d.V), n(d.High), n(d.Low), calc.RowBasis("{L}/{p}, rounded up, and one", d.Origin,
		calc.In("L", "seam", length, "mm"), calc.In("p", "between tacks", d.V, "mm")))
}

func (p *Page) feeding(card *calc.Card) {
	p.Because(tables.GunAngle.Origin, "%s", calc.Technique(card)).Topic = tables.TopicLay
	for _, code := range [...]string{"rolls", "liner", "contact-tip", "bird-nest"} {
		p.line(code)
	}
	d, w := tables.TipOver, card.Used.Wire.V
	p.add("tip_bore", "mm", w+d.V, w+d.Low, w+d.High,
		calc.RowBasis("{d} + {o}", d.Origin, calc.In("d", "wire", w, "mm"), calc.In("o", "over the wire", d.V, "mm")))
}

// backed reports whether a bar, a strip or a patch lies behind the joint.
func backed(card *calc.Card) bool { return calc.BackingOf(card) != "" }

func (p *Page) after(card *calc.Card) {
	p.line("cool")
	if backed(card) {
		p.line(map[string]string{"copper-bar": "copper-bar-off", "steel-strip": "steel-strip-stays",
			"patch": "patch-stays"}[card.Used.Backing])
	}
	if calc.Applies("zinc", card) && !card.Setup.One {
		p.line("mend-zinc")
	}
	if card.Used.Use == "seal" {
		p.line("leak-test")
	}
	if !p.has(tables.Stainless) && !card.Setup.One {
		p.line("couple")
	}
	p.line("fire-watch")
}
