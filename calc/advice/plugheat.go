package advice

import (
	"fmt"
	"math"

	"brazebooth/calc"
	"brazebooth/calc/formula"
	"brazebooth/calc/thinsheet"
	"brazebooth/tables"
)

// plugged is a plug and everything that its heat depends on and that has a band.
type plugged struct {
	thinsheet.Plug
	form     float64           // scales the rise
	k, c     [2]float64        // of both sheets, W/mmK and J/mm3K
	lead     float64           // the arc's circle over the hole
	metals   [2]*tables.Metal  // upper, lower
	computed *thinsheet.Filled // nil where the solver has no answer
}

// fill computes the plug as it stands now.
func (r *plugged) fill() *plugged {
	r.Led = r.lead * r.Hole
	r.Top = calc.BaseTable(r.metals[0], r.k[0], r.c[0])
	r.Below = calc.BaseTable(r.metals[1], r.k[1], r.c[1])
	if f, err := r.Fill(); err == nil {
		r.computed = &f
	}
	return r
}

// heated is a temperature with the doubt about the form in it, C.
func (r *plugged) heated(t float64) float64 { return r.Start + r.form*(t-r.Start) }

func (r *plugged) rim() float64    { return r.heated(r.computed.Rim) }
func (r *plugged) middle() float64 { return r.heated(r.computed.Middle) }

// wets is the diameter on which the lower sheet reaches a temperature, mm.
func (r *plugged) wets(toe float64) float64 {
	return r.computed.Within(r.Start+(toe-r.Start)/r.form, r.Hole)
}

// plugOf is the plug of a card, by the middle values; false where that is not judged.
func plugOf(card *calc.Card, hole, time float64) (*plugged, bool) {
	upper, lower := &card.Setup.Members[0], &card.Setup.Members[1]
	soak, err := formula.SoakThrough(lower.Core, lower.Metal.Conductivity.V, lower.Metal.HeatCapacity.V)
	amps, ok1 := card.Figure("current")
	volts, ok2 := card.Figure("volts")
	if err != nil || !ok1 || !ok2 || soak > time {
		return nil, false
	}
	power := plugEta(card).V * amps.Value * volts.Value * truePower(card).Value / 100
	r := &plugged{form: tables.PlugForm.V, lead: tables.PlugLed.V, metals: [2]*tables.Metal{&upper.Metal, &lower.Metal},
		Plug: thinsheet.Plug{Hole: hole, Upper: upper.Core, Lower: lower.Core, Filler: calc.FillerTable(&card.Setup.Filler),
			Stir: tables.Stirring.V, Power: power, Spread: tables.ArcWidth.V, Seconds: time,
			Contact: tables.PlugContact.V, Start: card.Used.Preheat.V}}
	for i, m := range r.metals {
		r.k[i], r.c[i] = m.Conductivity.V, m.HeatCapacity.V
	}
	r.fill()
	return r, r.computed != nil
}

func plugEta(card *calc.Card) tables.Datum {
	eta := tables.ArcEfficiency
	if card.Used.Eta.Set {
		eta.V = card.Used.Eta.V
	}
	return eta
}

// truePower is that of a pulsed arc over the product of its means, %.
func truePower(card *calc.Card) calc.Figure {
	if f, ok := card.Figure("pulse_power"); ok {
		return f
	}
	return calc.Figure{Value: 100, Low: 100, High: 100}
}

// plugEnds move one thing of a plug to an end of its band.
func plugEnds(card *calc.Card, time calc.Figure) []func(r *plugged, high bool) {
	amps, _ := card.Figure("current")
	volts, _ := card.Figure("volts")
	var ends []func(r *plugged, high bool)
	scaled := func(of func(r *plugged) *float64, v, low, high float64) {
		ends = append(ends, func(r *plugged, up bool) { *of(r) *= pick(up, high, low) / v })
	}
	down, up := 0.0, 0.0 // of the power, as shares
	eta, pulses := plugEta(card), truePower(card)
	for _, f := range [...]calc.Figure{{Value: eta.V, Low: eta.Low, High: eta.High}, amps, volts, pulses} {
		down, up = math.Hypot(down, 1-f.Low/f.Value), math.Hypot(up, f.High/f.Value-1)
	}
	scaled(func(r *plugged) *float64 { return &r.Power }, 1, max(0.1, 1-down), 1+up)
	scaled(func(r *plugged) *float64 { return &r.Seconds }, time.Value, time.Low, time.High)
	constant := func(of func(r *plugged) *float64, d tables.Datum) {
		ends = append(ends, func(r *plugged, up bool) { *of(r) = pick(up, d.High, d.Low) })
	}
	constant(func(r *plugged) *float64 { return &r.lead }, tables.PlugLed)
	constant(func(r *plugged) *float64 { return &r.form }, tables.PlugForm)
	constant(func(r *plugged) *float64 { return &r.Spread }, tables.ArcWidth)
	constant(func(r *plugged) *float64 { return &r.Stir }, tables.Stirring)
	constant(func(r *plugged) *float64 { return &r.Contact }, tables.PlugContact)
	lower := &card.Setup.Members[1].Metal
	for at, d := range [...]tables.Datum{lower.Conductivity, lower.HeatCapacity} {
		scaled(func(r *plugged) *float64 { return [...]*float64{&r.k[1], &r.c[1]}[at] }, d.V, d.Low, d.High)
	}
	return ends
}

// rests adds how hot the sheet below becomes at the rim, where the plug must wet it, and in the middle, where it must
// not melt through, and how much of it the plug wets; false where that is not judged.
func (p *Page) rests(card *calc.Card, time calc.Figure) (rim, middle calc.Figure, judged bool) {
	hole, _ := p.Figure("hole")
	mid, ok := plugOf(card, hole.Value, time.Value)
	if !ok {
		p.Because(Own(restingSource), "whether the rim wets: not judged, because the heat takes longer through the "+
			"lower sheet than the hole takes to fill; try a test plug, sawn through, or thinner sheet below")
		return rim, middle, false
	}
	var ends []*plugged
	for _, end := range plugEnds(card, time) {
		for _, high := range [...]bool{false, true} {
			r := *mid
			end(&r, high)
			if r.fill().computed != nil {
				ends = append(ends, &r)
			}
		}
	}
	toe := card.Setup.Filler.Toe.V
	in := []calc.Input{calc.Derived("", "power into the work", mid.Power, "W"), time.As(""), hole.As(""),
		calc.In("", "arc led on a circle, radius over the hole", mid.lead, "1"),
		calc.In("", "from sheet to sheet around the hole", mid.Contact, "W/mm2K"),
		calc.In("", "parts before the arc", mid.Start, "C")}
	rim = p.heated("plug_rim_temperature", "C", "of the sheet below at the hole's rim, when it is full", mid, ends,
		(*plugged).rim, in)
	middle = p.heated("plug_middle_temperature", "C", "of the sheet below in the middle of the hole, when it is full",
		mid, ends, (*plugged).middle, in)
	p.heated("plug_wetted", "mm", "on which the sheet below becomes hot enough to wet, diameter", mid, ends,
		func(r *plugged) float64 { return r.wets(toe) }, in)
	return rim, middle, true
}

// coldRim says why nobody can rely on a plug's rim to be wetted, "" where it wets by its middle value.
func coldRim(card *calc.Card) string {
	r, judged := plugTried(card, 0)
	switch toe := card.Setup.Filler.Toe.V; {
	case !judged:
		return "it is not judged whether the rim of the sheet below gets hot enough to wet"
	case r.rim() < toe:
		return fmt.Sprintf("the rim of the sheet below is computed at %.0f °C, and this filler wets from %.0f °C",
			r.rim(), toe)
	}
	return ""
}

func pick(high bool, a, b float64) float64 {
	if high {
		return a
	}
	return b
}

// heated adds a figure of the full plug, its interval by both ends of everything that moves it.
func (p *Page) heated(name, unit, what string, mid *plugged, ends []*plugged, of func(*plugged) float64,
	in []calc.Input) calc.Figure {
	v, down, up := of(mid), 0.0, 0.0
	for _, r := range ends {
		if d := of(r) - v; d > 0 {
			up = math.Hypot(up, d)
		} else {
			down = math.Hypot(down, d)
		}
	}
	low, high := max(0, v-down), v+up
	if unit == "C" {
		low = max(mid.Start, v-down)
	} else {
		high = min(high, mid.Hole)
	}
	return p.add(name, unit, v, low, high, calc.OwnBasis(what, restingSource, in...))
}

// judged says what both temperatures mean, as far as their bands allow.
func (p *Page) judged(card *calc.Card, rim, middle calc.Figure) {
	toe, melts := card.Setup.Filler.Toe.V, card.Setup.Members[1].Metal.Solidus.V
	by := func(whole bool) string {
		if whole {
			return "the whole band"
		}
		return "the middle value"
	}
	switch {
	case middle.Value > melts && rim.Value < toe:
		p.Warn("plug-both", restingSource, "By the middle values the rim stays cold (%.0f °C, this filler wets from "+
			"%.0f °C) and the middle melts (%.0f °C, this metal from %.0f °C): %s. Saw a test plug through "+
			"before you rely on one.", rim.Value, toe, middle.Value, melts, plugCure(card))
	case middle.Value > melts:
		p.Warn("plug-burns", restingSource, "By %s the sheet below melts in the middle before the hole is full, "+
			"from %.0f °C on: %s. Else a copper bar below, or several short bouts.", by(middle.Low > melts), melts,
			plugCure(card))
	case rim.Value < toe:
		p.Warn("plug-cold", restingSource, "By %s the rim stays under the %.0f °C at which this filler wets: %s; or "+
			"%s.", by(rim.High < toe), toe, plugCure(card),
			calc.OrStrip(card, "warm the parts and give that as preheat"))
	case middle.High > melts && rim.Low < toe:
		p.Because(Own(restingSource), "the bands reach from a cold rim (under %.0f °C) to a melted middle (over "+
			"%.0f °C): only a test plug, sawn through, tells", toe, melts)
	case middle.High > melts:
		p.Because(Own(restingSource), "the rim wets, but the hot end of the band melts the middle (over %.0f °C): "+
			"watch the other face, it must not sag", melts)
	case rim.Low < toe:
		p.Because(Own(restingSource), "the cold end of the band leaves the rim under the %.0f °C at which this "+
			"filler wets: saw a test plug through", toe)
	default:
		p.Because(Own(restingSource), "the rim wets and the middle stays solid over the whole of both bands")
	}
}
