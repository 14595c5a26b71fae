package advice

import (
	"brazebooth/calc"
	"brazebooth/tables"
)

// warming says whether to warm the parts before the arc, and how far.
func (p *Page) warming(card *calc.Card) {
	heavy := calc.MinCore(card.Setup.Joined()) >= tables.ChillFrom.V
	found := p.preheatOf(card)
	if calc.Applies("zinc", card) {
		found = p.zincStaysCold(card, heavy) || found
	} else {
		p.givenWarmth(card)
	}
	switch {
	case p.has(tables.CastIron):
		p.iron(card)
	case calc.Applies("silicon-bronze", card):
		p.lineUnder(tables.TopicWarm, "preheat-silicon")
		p.row("interpass", tables.InterpassSilicon, "hottest before the next bead on silicon bronze")
	case calc.Applies("aluminium-bronze", card):
		p.lineUnder(tables.TopicWarm, "preheat-aluminium")
		p.row("interpass", tables.InterpassAluminium, "hottest before the next bead on aluminium bronze")
	case found:
	case heavy && (p.has(tables.Stainless) || card.Setup.One):
		p.lineUnder(tables.TopicWarm, "preheat-heavy")
		p.row("interpass", tables.InterpassAluminium, "hottest before the next bead")
	case card.Job.Preheat.Set && card.Used.Preheat.V > tables.ChillOff.V: // givenWarmth says it
	case heavy:
		p.line("chill-off")
	case card.Zone == "cold":
		p.Because(ownSection, "the card is cold at this setting: warming the parts helps%s; give the "+
			"temperature as preheat", calc.NoHotter(card)).Topic = tables.TopicWarm
	case p.has(tables.CopperFam):
		p.Because(ownSection, "copper draws heat off: without a good setting, warm it%s; give its temperature as "+
			"preheat", calc.NoHotter(card)).Topic = tables.TopicWarm
	default:
		p.line("no-preheat")
	}
}

// givenWarmth adds the job's own preheat if it is more than just taking off the chill, or the least for cast
// iron.
func (p *Page) givenWarmth(card *calc.Card) {
	switch at := card.Used.Preheat.V; {
	case card.Job.Preheat.Set && at > tables.ChillOff.V:
		p.take(calc.GivenFigure("preheat", at, "C"))
		p.Because(ownJob, "the card is computed for parts at %.0f °C: warm them through to that, and measure on the "+
			"far face", at).Topic = tables.TopicWarm
	case !card.Job.Preheat.Set && p.has(tables.CastIron):
		p.row("preheat", tables.IronPreheat, "least, through and through")
	}
}

// preheatOf repeats what the card says about preheat, so that both agree; false if the card says nothing.
func (p *Page) preheatOf(card *calc.Card) (found bool) {
	for _, code := range [...]string{"preheat-needed", "preheat-no-cure", "another-process"} {
		if text := card.Said(code); text != "" {
			p.Because(ownSection, "%s", text).Topic = tables.TopicWarm
			found = true
		}
	}
	if f, ok := card.Figure("least_preheat"); ok && found {
		p.take(f)
	}
	return found
}

// iron is the warming of a casting, with the warning if the skin under the arc may melt.
func (p *Page) iron(card *calc.Card) {
	if !calc.Applies("zinc", card) {
		p.line("warm-iron")
	}
	p.line("iron-local")
	peak, ok := ironPeak(card)
	limit := tables.IronPeak
	switch {
	case ok && peak.Value >= limit.V:
		p.Warn("iron-peak", limit.Source, "At this setting the iron's skin reaches about %.0f °C (%.0f to %.0f): "+
			"from %.0f °C grey iron begins to melt and turns hard and brittle. Faster, or less wire feed.", peak.Value,
			peak.Low, peak.High, limit.V)
	case ok && peak.High >= limit.V:
		p.Warn("iron-peak-near", limit.Source, "The iron's skin is computed at %.0f °C, but the band reaches %.0f °C: "+
			"from %.0f °C grey iron begins to melt. Watch the edge of the bead.", peak.Value, peak.High, limit.V)
	}
	if t := card.Used.Preheat.V; t < tables.IronPreheat.Low && !calc.Applies("zinc", card) {
		p.Warn("iron-cold", tables.IronPreheat.Source, "The card is computed for iron at %.0f °C: warm it to %.0f °C "+
			"or more and give that as preheat.", t, tables.IronPreheat.Low)
	}
}

// ironPeak is the peak temperature of the casting's skin, with the relative interval of the card's hotter
// member.
func ironPeak(card *calc.Card) (calc.Figure, bool) {
	f, ok := card.Figure("base_peak_temperature")
	heat, modelled := calc.HeatOf(card)
	if !ok || !modelled {
		return f, false
	}
	peak := 0.0
	for i, m := range card.Setup.Joined() {
		if m.Metal.Family == tables.CastIron {
			peak = max(peak, heat[i].Skin)
		}
	}
	start := card.Used.Preheat.V
	r := (peak - start) / (f.Value - start)
	f.Value, f.Low, f.High = peak, start+(f.Low-start)*r, start+(f.High-start)*r
	return f, true
}
