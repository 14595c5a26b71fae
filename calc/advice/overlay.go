package advice

import (
	"fmt"
	"math"

	"brazebooth/calc"
	"brazebooth/calc/formula"
	"brazebooth/internal/mistake"
	"brazebooth/tables"
)

// Overlay computes a build-up on plate or shaft: pitch, layers, turning speed, feed, time and wire.
func Overlay(card *calc.Card) (Page, error) {
	p, layers, err := overlayBead(card)
	if err != nil {
		return p, err
	}
	p.interpass(card, layers, card.Used.Length.Or(overlayLength))
	p.dilution(card)
	p.overlayWords()
	return p, nil
}

// overlayBead computes the overlay's bead: pitch, layers, turning speed, time and wire.
func overlayBead(card *calc.Card) (p Page, layers float64, err error) {
	p = Page{Name: "overlay", Card: *card}
	for _, name := range [...]string{"wire_feed", "current", "volts"} {
		if f, ok := card.Figure(name); ok {
			p.take(f)
		}
	}
	if card.Used.Joint != "overlay" {
		return p, 0, mistake.In("joint", card.Used.Joint+" is not an overlay", "choose the joint overlay")
	}
	width, ok1 := card.Figure("bead_width")
	area, ok2 := card.Figure("bead_area")
	travel, ok3 := card.Figure("travel")
	if !ok1 || !ok2 || !ok3 || !(width.Value > 0) {
		return p, 0, mistake.In("feed", "no bead is computed for this job",
			"give feed and travel of a bead that was laid, as 250ipm and 6mm/s")
	}
	if !(width.Low > 0) { // no pitch exists there: the interval is then as wide below as above
		p.Because(ownSection, "at the cold end of its band this bead wets nothing: the pitch is that of "+
			"beads that wet")
		width.Low = width.Value * width.Value / width.High
	}
	pitch, height := p.beads(width, area)
	layers = p.layers(card, height)
	p.turning(card, pitch, travel, height, layers)
	return p, layers, nil
}

// Assumed for an overlay if not given, mm: its length along the axis, and a plate's width.
const (
	overlayLength = 50.0
	plateAcross   = 100.0
)

// beads gives the pitch and height of a layer. The two pitch models are the ends of the interval.
func (p *Page) beads(width, area calc.Figure) (pitch, height calc.Figure) {
	tangent, flat := formula.BeadPitch(width.Value)
	pitch = p.add("overlay_pitch", "mm", tangent, flat*width.Low/width.Value, tangent*width.High/width.Value,
		calc.Basis{Formula: "0.738·{w}", Source: tables.PitchTangent.Source + "; the low end by " +
			tables.PitchFlat.Source, Known: string(tables.PitchTangent.Known),
			Inputs: []calc.Input{{Symbol: "w", Name: "bead width", Value: width.Value, Unit: "mm", Derived: true}}})
	h := area.Value / tangent
	return pitch, p.add("layer_height", "mm", h, area.Low/pitch.High, area.High/pitch.Low,
		calc.OwnBasis("{A}/{p}", "mass balance", area.As("A"), calc.Derived("p", "pitch", tangent, "mm")))
}

// layers is how many layers make the wanted height plus a millimetre to machine off.
func (p *Page) layers(card *calc.Card, height calc.Figure) float64 {
	if !card.Job.Layer.Set {
		p.Because(ownJob, "no height of build-up was wanted: one layer is counted")
		return 1
	}
	want := card.Job.Layer.V + tables.MachiningAllowance.V
	count := func(h float64) float64 { return math.Ceil(want/h - 1e-9) }
	n := count(height.Value)
	if usual := tables.OverlayUsual; card.Job.Layer.V > usual.V {
		p.Warn("overlay-high", usual.Source, "A build-up of %.3g mm is more than the %.0f mm that is usual: heat, "+
			"shrinkage and pores grow with every layer. Weld on a sleeve or have the part made anew.",
			card.Job.Layer.V, usual.V)
	}
	p.Because(tables.MachiningAllowance.Origin, "%.3g mm more than wanted is laid, to be turned or ground off",
		tables.MachiningAllowance.V)
	p.add("layers", "1", n, count(height.High), count(height.Low), calc.RowBasis("({h} + {m})/{l}, rounded up",
		tables.MachiningAllowance.Origin, calc.In("h", "wanted height", card.Job.Layer.V, "mm"),
		calc.Assumed("m", "to machine off", tables.MachiningAllowance.V, "mm"), height.As("l")))
	return n
}

// turning adds a shaft's speed and feed, and the time and wire of the whole overlay.
func (p *Page) turning(card *calc.Card, pitch, travel, height calc.Figure, layers float64) {
	length := p.seam(card, overlayLength)
	round := plateAcross
	if card.Job.ShaftDia.Set {
		d := card.Job.ShaftDia.V
		speed, err := formula.ShaftSpeed(travel.Value, d)
		slow, err1 := formula.ShaftSpeed(travel.Low, d)
		fast, err2 := formula.ShaftSpeed(travel.High, d)
		if err != nil || err1 != nil || err2 != nil {
			return
		}
		p.add("shaft_speed", "r/min", speed, slow, fast,
			calc.OwnBasis("60·{v}/(pi·{D})", "definition; the diameter is that of the layer being laid", travel.As("v"),
				calc.In("D", "diameter", d, "mm")))
		p.add("feed_per_turn", "mm", pitch.Value, pitch.Low, pitch.High,
			calc.OwnBasis("the pitch", "one bead beside the other on a helix"))
		round = math.Pi * (d + layers*height.Value) // mean over the layers, each at its own middle
	} else {
		p.Because(ownJob, "no shaft: time and wire are for 100 mm of plate across")
	}
	bead := layers * round * length
	p.Because(ownJob, "the bead of the whole overlay is about %s m long",
		calc.Digits(bead/pitch.Value/1000, 3))
	time := p.add("arc_time", "s", bead/(pitch.Value*travel.Value), bead/(pitch.High*travel.High),
		bead/(pitch.Low*travel.Low), calc.OwnBasis("{n}·{c}·{L}/({p}·{v})", "definition",
			calc.Derived("n", "layers", layers, "1"),
			calc.Derived("c", "length of one bead, mean over the layers", round, "mm"),
			calc.In("L", "length along the axis", length, "mm"), calc.Derived("p", "pitch", pitch.Value, "mm"),
			travel.As("v")))
	if rate, ok := card.Figure("deposition_rate"); ok {
		p.wire(card, time, rate)
	}
}

// dilution says whether the base melts into the overlay.
func (p *Page) dilution(card *calc.Card) {
	switch card.Zone {
	case "good", "cold":
		if card.Said("weld-braze") != "" && card.Zone == "good" {
			p.Because(tables.FusedDilution.Origin, "the skin of this base melts wherever the bead wets: expect up to "+
				"%.0f to %.0f %% of it in the overlay, least at the coldest setting that wets",
				tables.FusedDilution.Low, tables.FusedDilution.High)
			return
		}
		text := "the base stays solid at this setting: brazed, next to no dilution"
		near := card.DecidingEdge()
		switch m, ok := card.Figure("margin"); {
		case near != nil && !near.Met:
			text += "; but another edge is not met, see the card"
		case ok && m.Low < 0:
			text += fmt.Sprintf("; the nearest edge is only %.0f %% away (%.0f to %.0f): cut a test piece", m.Value,
				m.Low, m.High)
		}
		p.Because(ownSection, "%s", text)
	case "hot", "burn-through":
		p.Because(tables.FusedDilution.Origin, "the base melts at this setting: fused, expect %.0f to %.0f %% of it "+
			"in the overlay", tables.FusedDilution.Low, tables.FusedDilution.High)
	default:
		p.Because(tables.FusedDilution.Origin, "it is not computed here whether the base melts: cut a test "+
			"piece; fused overlays hold 20 to 25 %% of base, brazed ones next to none")
	}
}

func (p *Page) overlayWords() {
	p.Because(practice, "work lead on the part itself, never through a bearing")
	p.Warn("shaft-fatigue", practice.Source, "An overlay lowers a shaft's fatigue strength and can leave it in "+
		"tension: where its failure can hurt somebody, lay none without an engineer.")
	p.Warn("shaft-catch", practice.Source,
		"A turning shaft catches sleeves, gloves and cables: slow drive, foot stop, nothing loose.")
}
