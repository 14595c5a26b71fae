package advice

import (
	"context"
	"fmt"
	"math"
	"slices"

	"brazebooth/calc"
	"brazebooth/tables"
)

const (
	hardnessSource = "Yurioka and others 1987 and Düren 1985 (memory medium), the mean of both; typical composition " +
		"of the grade; t8/5 by EN 1011-2"
	softSource = "cross-section of a moving arc down to where the sheet softens; published heat-affected zones " +
		"(memory medium)"
)

// Zone is the page of the heat-affected zone: how hard the sheet becomes beside the bead, how soft further out, and
// how wide both are.
func Zone(ctx context.Context, card *calc.Card) (Page, error) {
	p := Page{Name: "haz", Card: *card}
	for i := range card.Setup.Joined() {
		if i > 0 && card.Setup.Members[1].Metal.ID == card.Setup.Members[0].Metal.ID {
			break // the same sheet on both sides is described once
		}
		z := zone{p: &p, card: card, member: i, metal: &card.Setup.Members[i].Metal, suffix: members[i]}
		z.find(ctx)
	}
	if err := ctx.Err(); err != nil {
		return Page{}, err
	}
	p.asIfSound(card)
	p.Because(practice, "what was computed is the metal beside the bead: bend, peel or saw a test piece of the same "+
		"sheet before it counts")
	return p, nil
}

// zone is what the heat does to one member.
type zone struct {
	p      *Page
	card   *calc.Card
	member int
	metal  *tables.Metal
	suffix string
}

func (z *zone) find(ctx context.Context) {
	switch steel, hardens := hardeningOf(z.metal); {
	case hardens:
		z.harden(ctx, &steel)
	case z.metal.Family == tables.CastIron:
		first := unlessZinc(z.card, "preheat")
		if first != "" {
			first += ", then "
		}
		z.p.Because(ironWelds, "%s: not judged, because the hardness formulas hold for steel. Iron that passed some "+
			"750 °C beside the bead is hard and brittle (carbides, martensite): %scool slowly; see the page prepare",
			z.metal.ID, first)
	default:
		z.soften(ctx)
	}
}

// hardeningOf is the row of a ferritic sheet; a sheet without its own row gets that of mild steel.
func hardeningOf(m *tables.Metal) (tables.HardeningSteel, bool) {
	if m.Family != tables.Steel {
		return tables.HardeningSteel{}, false
	}
	rows := tables.HardeningSteels
	i := slices.IndexFunc(rows, func(h tables.HardeningSteel) bool { return h.Metal == m.ID })
	return rows[max(0, i)], true
}

// toAc1 is an input that two figures share.
func toAc1() calc.Input {
	return calc.In("Ac1", "where it begins to turn into austenite", tables.Ac1.V, "C")
}

// harden adds the hard zone of a ferritic sheet and, for a sheet that can lose strength, its soft zone.
func (z *zone) harden(ctx context.Context, steel *tables.HardeningSteel) {
	p, was := z.p, steel.Hardness
	p.add("sheet_hardness"+z.suffix, "HV", was.V, was.Low, was.High,
		calc.RowBasis("of the sheet before the seam", was.Origin))
	at := []float64{tables.Ac1.V}
	soft, softens := tables.SoftSheets.ByID(steel.Metal)
	if softens {
		at = append(at, soft.From.V)
	}
	reach, ok := calc.ReachOf(ctx, z.card, at...)
	if !ok {
		p.Because(ownSection, "hard and soft zone: not judged, because %s", z.unreached())
		return
	}
	hard := reach[z.member][0]
	p.add("changed_halfwidth"+z.suffix, "mm", hard.V, hard.Low, hard.High, calc.OwnBasis(
		"width, from the joint's line, whose peak passes {Ac1}", calc.SectionSource, toAc1()))
	if hard.V > 0 {
		z.hardest(steel)
	} else {
		p.Because(ownSection, "nowhere does the sheet pass %.0f °C: it does not harden", tables.Ac1.V)
	}
	if softens {
		z.softened(steel, &soft, hard, reach[z.member][1])
	}
}

// unreached says why a reach of the heat is not judged.
func (z *zone) unreached() string {
	if _, computed := z.card.Figure("base_peak_temperature"); computed {
		return "the heat runs to the end of a member, where the cross-section ends"
	}
	return "no cross-section is computed for this job; try a running arc on a lap, tee, butt or corner"
}

// hardest adds the hardness of the metal that turned to austenite.
func (z *zone) hardest(steel *tables.HardeningSteel) {
	p, limit := z.p, tables.HardestAllowed
	time, timed := z.card.Figure("cooling_time")
	if !timed {
		p.Because(Own(hardnessSource), "hardness: not judged, because %s; try a test piece, sawn through", z.untimed())
		return
	}
	h, ok := hardnessOf(steel, time)
	if !ok {
		p.Because(Own(hardnessSource), "hardness: not judged, because the sheet cools in %s s, beyond what its "+
			"formulas cover", calc.Digits(time.Value, 3))
		return
	}
	p.add("haz_hardness"+z.suffix, "HV", h.mid, h.low, h.high, calc.OwnBasis(
		"of what was austenite, from composition and {t}", hardnessSource, time.As("t"),
		calc.Assumed("", "carbon", steel.C.V, "%"), calc.Assumed("", "manganese", steel.Mn.V, "%"),
		calc.Assumed("", "silicon", steel.Si.V, "%"), calc.Assumed("", "chromium", steel.Cr.V, "%")))
	s := composition(steel)
	p.Because(tables.Origin{Source: "EN 10025, EN 1011-2 method B, Ito and Bessyo; the sheet's own certificate goes " +
		"before them", Known: tables.MemoryMedium}, "carbon equivalents of a typical %s: CEV %.2f, CET %.2f, Pcm "+
		"%.2f %%", steel.Metal, s.CEV(), s.CET(), s.Pcm())
	switch {
	case h.mid > limit.V:
		p.Warn("haz-hard", limit.Source, "The sheet beside the bead becomes some %.0f HV, over the %.0f HV up to "+
			"which weld procedures are accepted: it may crack when it is bent or shaken. It cools slower with more "+
			"heat per length%s. The page prepare and the sheet's maker say what is allowed.", h.mid, limit.V,
			unlessZinc(z.card, " or preheat"))
	case h.high > limit.V:
		p.Because(limit.Origin, "at the hard end of its band the zone passes %.0f HV: bend a test piece", limit.V)
	}
}

// untimed says why a card has no cooling time.
func (z *zone) untimed() string {
	if slices.ContainsFunc(z.card.Setup.Joined(), func(m calc.Member) bool { return m.Metal.Family != tables.Steel }) {
		return "the cooling time is computed only where both members are ferritic steel: the other leads the heat " +
			"away at a pace of its own"
	}
	if start, most := z.card.Used.Preheat.V, tables.CoolingStart.V; start > most {
		return fmt.Sprintf("parts that start at %.0f °C cool to 500 °C as slowly as the air lets them, and the "+
			"cooling time is computed up to a start of %.0f °C", start, most)
	}
	return "no cooling time is computed for this job"
}

// softened adds the width and the hardness of the tempered band beyond the hard zone.
func (z *zone) softened(steel *tables.HardeningSteel, sheet *tables.SoftSheet, hard, soft calc.Reach) {
	p, form := z.p, tables.ZincBandForm
	width := soft.V - hard.V
	byHeat := [2]float64{math.Log((soft.Cold - hard.Cold) / width), math.Log((soft.Hot - hard.Hot) / width)}
	down := math.Hypot(min(0, byHeat[0], byHeat[1]), math.Log(form.Low))
	up := math.Hypot(max(0, byHeat[0], byHeat[1]), math.Log(form.High))
	p.add("softened_width"+z.suffix, "mm", width, width*math.Exp(-down), width*math.Exp(up), calc.OwnBasis(
		"from where the peak is {Ac1} out to where it is {T}", softSource, toAc1(),
		calc.In("T", "where it begins to soften", sheet.From.V, "C")))
	left, was := sheet.Left, steel.Hardness
	least := p.add("softened_hardness"+z.suffix, "HV", left.V, left.Low, left.High,
		calc.RowBasis("where it is softest", left.Origin))
	share := func(a, b float64) float64 { return min(100, 100*a/b) }
	kept := p.add("softened_strength"+z.suffix, "%", share(left.V, was.V), share(left.Low, was.High),
		share(left.High, was.Low), calc.OwnBasis("100·{s}/{h}", "strength goes with hardness, ISO 18265 (memory high)",
			least.As("s"), calc.In("h", "hardness of the sheet", was.V, "HV")))
	if steel.Boron {
		p.Warn("haz-soft", left.Source, "A band some %.0f mm wide beside the bead keeps about %.0f %% of the sheet's "+
			"strength. In a crash structure only the vehicle maker's repair procedure decides.", width, kept.Value)
	}
}

// soften adds how far a metal that does not harden becomes soft, if it was hard before.
func (z *zone) soften(ctx context.Context) {
	p, m := z.p, z.metal
	rows := tables.Softenings
	i := slices.IndexFunc(rows, func(s tables.Softening) bool { return s.Family == m.Family })
	if i < 0 {
		return
	}
	s := &rows[i]
	p.Because(s.From.Origin, "%s: it does not harden; %s", m.ID, s.Note)
	if m.Family == tables.Stainless {
		p.Because(tables.Origin{Source: "ASM Handbook vol. 6, austenitic stainless steels", Known: tables.MemoryHigh},
			"carbides at its grain boundaries need minutes between 500 and 850 °C: a seam in sheet gives seconds. "+
				"Thick parts and many passes: a low-carbon grade")
	}
	reach, ok := calc.ReachOf(ctx, z.card, s.From.Low, s.From.V, s.From.High)
	if !ok {
		p.Because(ownSection, "%s: how far it softens is not judged, because %s", m.ID, z.unreached())
		return
	}
	r := reach[z.member]
	p.add("softened_halfwidth"+z.suffix, "mm", r[1].V, r[2].Low, r[0].High, calc.OwnBasis(
		"width, from the joint's line, whose peak passes {T}", softSource,
		calc.In("T", "where hardened metal turns soft", s.From.V, "C")))
}
