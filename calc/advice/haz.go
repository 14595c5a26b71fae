package advice

import (
	"context"
	"fmt"
	"math"
	"slices"

	"brazebooth/calc"
	"brazebooth/calc/formula"
	"brazebooth/tables"
)

const (
	hardnessSource = "Yurioka and others 1987 and Düren 1985 (memory medium), the mean of both; typical composition of the grade; t8/5 by EN 1011-2"
	softSource     = "cross-section of a moving arc down to where the sheet softens; published heat-affected zones (memory medium)"
)

// Zone is the page of the heat-affected zone: how hard the sheet becomes beside the bead, how soft further out, and
// how wide both are.
func Zone(card *calc.Card) (Page, error) { return ZoneContext(context.Background(), card) }

// ZoneContext is Zone for a caller who may leave meanwhile; its error is then the context's.
func ZoneContext(ctx context.Context, card *calc.Card) (Page, error) {
	p := Page{Name: "haz", Card: *card}
	for i := range card.Setup.Joined() {
		if i > 0 && card.Setup.Members[1].Metal.ID == card.Setup.Members[0].Metal.ID {
			break // the same sheet on both sides is told once, by the member that gets hotter for its thickness
		}
		p.zoneOf(ctx, card, i)
	}
	if err := ctx.Err(); err != nil {
		return Page{}, err
	}
	p.because("what was computed is the metal beside the bead: bend, peel or saw a test piece of the same sheet before it counts", string(tables.Practice), "common practice, no source")
	return p, nil
}

// zoneOf adds what the heat does to one member.
func (p *Page) zoneOf(ctx context.Context, card *calc.Card, member int) {
	m := &card.Setup.Members[member].Metal
	steel, hardens := hardeningOf(m)
	switch {
	case hardens:
		p.hardening(ctx, card, member, &steel)
	case m.Family == tables.CastIron:
		p.because(m.ID+": not judged, because the hardness formulas hold for steel. Iron that passed some 750 °C beside the bead is hard and brittle (carbides, martensite): preheat, cool slowly, see the page prepare", string(tables.MemoryHigh), "ASM Handbook vol. 6, welding of cast irons")
	default:
		p.softening(ctx, card, member, m)
	}
}

// hardeningOf is the row of a ferritic sheet; mild steel's for every coat of it.
func hardeningOf(m *tables.Metal) (tables.HardeningSteel, bool) {
	if m.Family != tables.Steel {
		return tables.HardeningSteel{}, false
	}
	rows := tables.HardeningSteels()
	if i := slices.IndexFunc(rows, func(h tables.HardeningSteel) bool { return h.Metal == m.ID }); i >= 0 {
		return rows[i], true
	}
	return rows[0], true
}

// hardening adds a ferritic sheet's hard zone and, where it has strength to lose, its soft one.
func (p *Page) hardening(ctx context.Context, card *calc.Card, member int, steel *tables.HardeningSteel) {
	suffix := [2]string{"", "_2"}[member]
	p.add("sheet_hardness"+suffix, "HV", steel.Hardness.V, steel.Hardness.Low, steel.Hardness.High,
		calc.Basis{Formula: "of the sheet before the seam", Source: steel.Hardness.Source, Known: string(steel.Hardness.Known)})
	at := []float64{tables.Ac1.V}
	soft, softens := softSheet(steel.Metal)
	if softens {
		at = append(at, soft.From.V)
	}
	reach, ok := calc.ReachOf(ctx, card, at...)
	time, timed := card.Figure("cooling_time")
	if !ok || !timed {
		p.because("hard and soft zone: not judged, because no cross-section or no cooling time is computed for this job; try a running arc on a lap, tee, butt or corner", calc.OwnCalc, calc.SectionSource)
		return
	}
	hard := reach[member][0]
	p.add("hardened_halfwidth"+suffix, "mm", hard.V, hard.Low, hard.High, calc.Basis{
		Formula: "from the joint's line to where the peak falls to {Ac1}", Source: calc.SectionSource, Known: calc.OwnCalc,
		Inputs: []calc.Input{{Symbol: "Ac1", Name: "where the sheet begins to turn into austenite", Value: tables.Ac1.V, Unit: "C"}}})
	if !(hard.V > 0) {
		p.because("nowhere does the sheet pass "+degrees(tables.Ac1.V)+": it does not harden", calc.OwnCalc, calc.SectionSource)
	} else {
		p.hardest(steel, time, suffix)
	}
	if softens {
		p.softZone(steel, &soft, hard, reach[member][1], suffix)
	}
}

func degrees(c float64) string { return fmt.Sprintf("%.0f °C", c) }

// hardest adds the hardness of what was austenite.
func (p *Page) hardest(steel *tables.HardeningSteel, time calc.Figure, suffix string) {
	h, ok := hardnessOf(steel, time)
	if !ok {
		p.because(fmt.Sprintf("hardness: not judged, because the sheet cools in %.1f s, beyond what its formulas cover", time.Value), calc.OwnCalc, hardnessSource)
		return
	}
	s := composition(steel, middle)
	b := calc.Basis{Formula: "of what was austenite, from composition and {t}", Source: hardnessSource, Known: calc.OwnCalc, Inputs: []calc.Input{
		{Symbol: "t", Name: "time from 800 to 500 °C", Value: time.Value, Unit: "s", Derived: true},
		{Name: "carbon", Value: steel.C.V, Unit: "%", Assumed: true}, {Name: "manganese", Value: steel.Mn.V, Unit: "%", Assumed: true},
		{Name: "silicon", Value: steel.Si.V, Unit: "%", Assumed: true}, {Name: "chromium", Value: steel.Cr.V, Unit: "%", Assumed: true}}}
	p.add("haz_hardness"+suffix, "HV", h.mid, h.low, h.high, b)
	p.because(fmt.Sprintf("carbon equivalents of a typical %s: CEV %.2f, CET %.2f, Pcm %.2f %%", steel.Metal, s.CEV(), s.CET(), s.Pcm()), string(tables.MemoryMedium), "EN 10025, EN 1011-2 method B, Ito and Bessyo; the sheet's own certificate goes before them")
	limit := tables.HardestAllowed
	switch {
	case h.mid > limit.V:
		p.warn("haz-hard", fmt.Sprintf("The sheet beside the bead becomes some %.0f HV, over the %.0f HV up to which weld procedures are accepted: it may crack when it is bent or shaken. More heat per length or preheat cools it slower; the page prepare and the sheet's maker say what is allowed.", h.mid, limit.V), limit.Source)
	case h.high > limit.V:
		p.because(fmt.Sprintf("at the hard end of its band the zone passes %.0f HV: bend a test piece", limit.V), string(limit.Known), limit.Source)
	}
}

func (p *Page) warn(code, text, basis string) {
	p.Warnings = append(p.Warnings, calc.Warning{Code: code, Severity: calc.Caution, Text: text, Basis: basis})
}

// softSheet is the row of a sheet that loses strength to the heat.
func softSheet(metal string) (tables.SoftSheet, bool) {
	rows := tables.SoftSheets()
	if i := slices.IndexFunc(rows, func(s tables.SoftSheet) bool { return s.Metal == metal }); i >= 0 {
		return rows[i], true
	}
	return tables.SoftSheet{}, false
}

// softZone adds how wide and how soft the tempered sheet is beyond the hard zone.
func (p *Page) softZone(steel *tables.HardeningSteel, sheet *tables.SoftSheet, hard, soft calc.Reach, suffix string) {
	width, form := soft.V-hard.V, tables.ZincBandForm
	byHeat := [2]float64{math.Log((soft.Cold - hard.Cold) / width), math.Log((soft.Hot - hard.Hot) / width)}
	down := math.Hypot(min(0, byHeat[0], byHeat[1]), math.Log(form.Low))
	up := math.Hypot(max(0, byHeat[0], byHeat[1]), math.Log(form.High))
	p.add("softened_width"+suffix, "mm", width, width*math.Exp(-down), width*math.Exp(up), calc.Basis{
		Formula: "from where the peak is {Ac1} out to where it is {T}", Source: softSource, Known: calc.OwnCalc, Inputs: []calc.Input{
			{Symbol: "Ac1", Name: "where the sheet begins to turn into austenite", Value: tables.Ac1.V, Unit: "C"},
			{Symbol: "T", Name: "where it begins to soften", Value: sheet.From.V, Unit: "C"}}})
	left, was := sheet.Left, steel.Hardness
	p.add("softened_hardness"+suffix, "HV", left.V, left.Low, left.High, calc.Basis{Formula: "where it is softest", Source: left.Source, Known: string(left.Known)})
	share := func(a, b float64) float64 { return math.Min(100, 100*a/b) }
	p.add("softened_strength"+suffix, "%", share(left.V, was.V), share(left.Low, was.High), share(left.High, was.Low), calc.Basis{
		Formula: "100·{s}/{h}", Source: "strength goes with hardness, ISO 18265 (memory high)", Known: calc.OwnCalc, Inputs: []calc.Input{
			{Symbol: "s", Name: "hardness where it is softest", Value: left.V, Unit: "HV"}, {Symbol: "h", Name: "hardness of the sheet", Value: was.V, Unit: "HV"}}})
	if steel.Boron {
		p.warn("haz-soft", fmt.Sprintf("A band some %.0f mm wide beside the bead keeps about %.0f %% of the sheet's strength. In a crash structure only the vehicle maker's repair procedure decides.", width, share(left.V, was.V)), left.Source)
	}
}

// softening adds how far a metal that does not harden turns soft, if it was hard.
func (p *Page) softening(ctx context.Context, card *calc.Card, member int, m *tables.Metal) {
	rows := tables.Softenings()
	i := slices.IndexFunc(rows, func(s tables.Softening) bool { return s.Family == m.Family })
	if i < 0 {
		return
	}
	s := &rows[i]
	p.because(m.ID+": it does not harden; "+s.Note, string(s.From.Known), s.From.Source)
	if m.Family == tables.Stainless {
		p.because("carbides at its grain boundaries need minutes between 500 and 850 °C: a seam in sheet gives seconds. Thick parts and many passes: a low-carbon grade", string(tables.MemoryHigh), "ASM Handbook vol. 6, austenitic stainless steels")
	}
	reach, ok := calc.ReachOf(ctx, card, s.From.Low, s.From.V, s.From.High)
	if !ok {
		p.because(m.ID+": how far it softens is not judged, because no cross-section is computed for this job, or the heat runs further than it follows", calc.OwnCalc, calc.SectionSource)
		return
	}
	r := reach[member]
	p.add("softened_halfwidth"+[2]string{"", "_2"}[member], "mm", r[1].V, r[2].Low, r[0].High, calc.Basis{
		Formula: "from the joint's line to where the peak falls to {T}", Source: softSource, Known: calc.OwnCalc,
		Inputs: []calc.Input{{Symbol: "T", Name: "where hardened metal turns soft", Value: s.From.V, Unit: "C"}}})
}

// composition is a typical cast, each element as at picks it from its band.
func composition(s *tables.HardeningSteel, at func(d *tables.Datum) float64) formula.Steel {
	return formula.Steel{C: at(&s.C), Si: at(&s.Si), Mn: at(&s.Mn), Cr: at(&s.Cr)}
}

func middle(d *tables.Datum) float64 { return d.V }

// hardnessOf is the hardness of what was austenite with its interval: each element, the time, what the formulas
// disagree about and what both leave out, each at the ends of its own, joined by root-sum-square.
func hardnessOf(steel *tables.HardeningSteel, time calc.Figure) (ends, bool) {
	s := composition(steel, middle)
	mid, apart, ok := meanHardness(steel, s, time.Value)
	if !ok {
		return ends{}, false
	}
	down, up := math.Hypot(tables.HardnessForm.Low, apart), math.Hypot(tables.HardnessForm.High, apart)
	join := func(s formula.Steel, t float64) {
		h, _, ok := meanHardness(steel, s, t)
		switch {
		case !ok:
		case h > mid:
			up = math.Hypot(up, h-mid)
		default:
			down = math.Hypot(down, mid-h)
		}
	}
	for _, e := range [...]struct {
		d   *tables.Datum
		set func(v float64) formula.Steel
	}{
		{&steel.C, func(v float64) formula.Steel { x := s; x.C = v; return x }},
		{&steel.Si, func(v float64) formula.Steel { x := s; x.Si = v; return x }},
		{&steel.Mn, func(v float64) formula.Steel { x := s; x.Mn = v; return x }},
		{&steel.Cr, func(v float64) formula.Steel { x := s; x.Cr = v; return x }},
	} {
		join(e.set(e.d.Low), time.Value)
		join(e.set(e.d.High), time.Value)
	}
	join(s, time.Low)
	join(s, time.High)
	return ends{mid - down, mid, mid + up}, true
}

// meanHardness is the mean of both formulas and half of what lies between them, HV. Boron steel that cools fast enough
// is martensite throughout; the formulas know nothing of boron, so that they are not asked beyond.
func meanHardness(steel *tables.HardeningSteel, s formula.Steel, t float64) (mean, apart float64, ok bool) {
	if steel.Boron {
		h, err := formula.HardnessMartensite(s)
		return h, 0, err == nil && t <= tables.BoronMartensite.V
	}
	a, err := formula.HardnessYurioka(s, t)
	b, err2 := formula.HardnessDuren(s, t)
	return (a + b) / 2, math.Abs(a-b) / 2, err == nil && err2 == nil
}
