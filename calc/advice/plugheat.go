package advice

import (
	"fmt"
	"math"

	"brazebooth/calc"
	"brazebooth/calc/formula"
	"brazebooth/calc/thinsheet"
	"brazebooth/tables"
)

// heatedPlug is a plug with everything that its heat depends on.
type heatedPlug struct {
	thinsheet.Plug
	form     float64          // scales the rise
	k, c     [2]float64       // of both sheets, W/mmK and J/mm3K
	lead     float64          // radius of the arc's circle over the hole's diameter
	metals   [2]*tables.Metal // upper, lower
	computed thinsheet.Filled
}

// fill computes the plug with its present values. It returns false if the solver has no answer, which counts as
// no heating.
func (r *heatedPlug) fill() bool {
	r.Led = r.lead * r.Hole
	r.Top = calc.BaseTable(r.metals[0], r.k[0], r.c[0])
	r.Below = calc.BaseTable(r.metals[1], r.k[1], r.c[1])
	f, err := r.Fill()
	if err != nil {
		f = thinsheet.Filled{Rim: r.Start, Middle: r.Start}
	}
	r.computed = f
	return err == nil
}

// warmed is a computed temperature corrected by the uncertain factor form, C. A value above the sheet's
// liquidus only says that it melts through: figures stop at the liquidus.
func (r *heatedPlug) warmed(t float64) float64 { return r.Start + r.form*(t-r.Start) }

func (r *heatedPlug) rim() float64    { return r.warmed(r.computed.Rim) }
func (r *heatedPlug) middle() float64 { return r.warmed(r.computed.Middle) }

// wets is the diameter on which the lower sheet reaches the temperature toe, mm, with its rise scaled by times.
func (r *heatedPlug) wets(toe, times float64) float64 {
	return r.computed.Within(r.Start+(toe-r.Start)/(r.form*times), r.Hole)
}

// soaks reports whether heat passes through sheet and bronze while the hole fills, so that one temperature can
// stand for the whole thickness.
func (r *heatedPlug) soaks() bool {
	bronze, sheet := r.Filler.Diffusivity(), r.k[1]/r.c[1]
	// Expressed as one layer of the sheet's metal that takes as long to heat through.
	deep := r.Lower + (r.Upper+r.Crown)*math.Sqrt(sheet/bronze)
	soak, err := formula.SoakThrough(deep, r.k[1], r.c[1])
	return err == nil && soak <= r.Seconds
}

// plugOf is the plug of a card with a crown of this height, by the middle values; false if it is not judged.
// time is that of a plug that ends flush, s.
func plugOf(card *calc.Card, hole, time, crown float64) (*heatedPlug, bool) {
	upper, lower := &card.Setup.Members[0], &card.Setup.Members[1]
	amps, ok1 := card.Figure("current")
	volts, ok2 := card.Figure("volts")
	if !ok1 || !ok2 {
		return nil, false
	}
	power := plugEta(card).V * amps.Value * volts.Value * truePower(card).Value / 100
	r := &heatedPlug{form: tables.PlugForm.V, lead: tables.PlugLed.V,
		metals: [2]*tables.Metal{&upper.Metal, &lower.Metal},
		Plug: thinsheet.Plug{Hole: hole, Upper: upper.Core, Lower: lower.Core, Crown: crown,
			Filler: calc.FillerTable(&card.Setup.Filler), Stir: tables.Stirring.V, Power: power,
			Spread: tables.ArcWidth.V, Seconds: time * (1 + crown/upper.Core), Contact: tables.PlugContact.V,
			Start: card.Used.Preheat.V}}
	for i, m := range r.metals {
		r.k[i], r.c[i] = m.Conductivity.V, m.HeatCapacity.V
	}
	return r, r.soaks() && r.fill()
}

// plugEnds are functions that each move one input of a plug to an end of its band.
func plugEnds(card *calc.Card, time calc.Figure) []func(r *heatedPlug, high bool) {
	amps, _ := card.Figure("current")
	volts, _ := card.Figure("volts")
	var ends []func(r *heatedPlug, high bool)
	scaled := func(of func(r *heatedPlug) *float64, v, low, high float64) {
		ends = append(ends, func(r *heatedPlug, up bool) { *of(r) *= pick(up, high, low) / v })
	}
	var power calc.Sides // as shares
	eta, pulses := plugEta(card), truePower(card)
	for _, f := range [...]calc.Figure{{Value: eta.V, Low: eta.Low, High: eta.High}, amps, volts, pulses} {
		power.Add(f.Low/f.Value - 1)
		power.Add(f.High/f.Value - 1)
	}
	scaled(func(r *heatedPlug) *float64 { return &r.Power }, 1, max(0.1, 1-power.Down), 1+power.Up)
	scaled(func(r *heatedPlug) *float64 { return &r.Seconds }, time.Value, time.Low, time.High)
	constant := func(of func(r *heatedPlug) *float64, d tables.Datum) {
		ends = append(ends, func(r *heatedPlug, up bool) { *of(r) = pick(up, d.High, d.Low) })
	}
	constant(func(r *heatedPlug) *float64 { return &r.lead }, tables.PlugLed)
	constant(func(r *heatedPlug) *float64 { return &r.form }, tables.PlugForm)
	constant(func(r *heatedPlug) *float64 { return &r.Spread }, tables.ArcWidth)
	constant(func(r *heatedPlug) *float64 { return &r.Stir }, tables.Stirring)
	constant(func(r *heatedPlug) *float64 { return &r.Contact }, tables.PlugContact)
	for i := range 2 {
		m := &card.Setup.Members[i].Metal
		scaled(func(r *heatedPlug) *float64 { return &r.k[i] }, m.Conductivity.V, m.Conductivity.Low,
			m.Conductivity.High)
		scaled(func(r *heatedPlug) *float64 { return &r.c[i] }, m.HeatCapacity.V, m.HeatCapacity.Low,
			m.HeatCapacity.High)
	}
	return ends
}

// plugHeat is the temperature of the sheet below at the rim, where the plug must wet it, and in the middle,
// where it must not melt through, and the diameter on which the plug wets it.
type plugHeat struct{ rim, middle, wets calc.Figure }

// plugHeat adds the heat of a plug; judged is false where it cannot be computed.
func (p *Page) plugHeat(card *calc.Card, time calc.Figure) (h plugHeat, judged bool) {
	hole, _ := p.Figure("hole")
	mid, ok := plugOf(card, hole.Value, time.Value, 0)
	if !ok {
		p.Because(Own(restingSource), "whether the rim wets: not judged, because the heat takes longer through the "+
			"lower sheet and the bronze than the hole takes to fill; try a test plug, sawn through, or thinner sheet "+
			"below")
		return h, false
	}
	var rim, middle calc.Sides
	for _, end := range plugEnds(card, time) {
		for _, high := range [...]bool{false, true} {
			r := *mid
			end(&r, high)
			r.fill()
			rim.Add(r.rim() - mid.rim())
			middle.Add(r.middle() - mid.middle())
		}
	}
	in := []calc.Input{calc.Derived("", "power into the work", mid.Power, "W"), time.As(""), hole.As(""),
		calc.In("", "arc led on a circle, radius over the hole", mid.lead, "1"),
		calc.In("", "from sheet to sheet around the hole", mid.Contact, "W/mm2K"),
		calc.In("", "parts before the arc", mid.Start, "C")}
	heat := func(name, where string, v float64, s calc.Sides) calc.Figure {
		most := max(mid.Start, mid.metals[1].Liquidus.V) // a liquid sheet falls through
		return p.add(name, "C", min(v, most), min(max(mid.Start, v-s.Down), most), min(v+s.Up, most),
			calc.OwnBasis("of the sheet below "+where+", when it is full, at most its liquidus", restingSource, in...))
	}
	h.rim = heat("plug_rim_temperature", "at the hole's rim", mid.rim(), rim)
	h.middle = heat("plug_middle_temperature", "in the middle of the hole", mid.middle(), middle)
	// The wetted width moves with the rim: if the rim wets at an end of its band, the plug wets the whole hole
	// there.
	toe := card.Setup.Filler.Toe.V
	at := func(off float64) float64 { return mid.wets(toe, max(1e-3, 1+off/(mid.rim()-mid.Start))) }
	h.wets = p.add("plug_wetted", "mm", at(0), at(-rim.Down), at(rim.Up),
		calc.OwnBasis("on which the sheet below becomes hot enough to wet, diameter", restingSource, in...))
	return h, true
}

// plugDoubt says why a plug cannot be relied on before one is sawn through. It is "" if the rim wets and the
// middle stays solid over their whole bands.
func plugDoubt(card *calc.Card) string {
	const unjudged = "it is not judged whether the rim of the sheet below gets hot enough to wet"
	p := Page{Card: *card}
	time, ok := p.filled(card)
	if !ok {
		return unjudged
	}
	h, judged := p.plugHeat(card, time)
	toe, melts := card.Setup.Filler.Toe.V, card.Setup.Members[1].Metal.Solidus.V
	switch {
	case !judged:
		return unjudged
	case h.middle.Value > melts:
		return fmt.Sprintf("the sheet below is computed to melt in the middle, from %.0f °C on", melts)
	case h.rim.Value < toe:
		return fmt.Sprintf("the rim of the sheet below is computed at %.0f °C, and this filler wets from %.0f °C",
			h.rim.Value, toe)
	case h.middle.High > melts:
		return fmt.Sprintf("at the hot end of its band the sheet below melts in the middle, from %.0f °C on", melts)
	case h.rim.Low < toe:
		return fmt.Sprintf("at the cold end of its band the rim of the sheet below has %.0f °C, and this filler "+
			"wets from %.0f °C", h.rim.Low, toe)
	}
	return ""
}

func pick(high bool, a, b float64) float64 {
	if high {
		return a
	}
	return b
}

// plugNever is the code of the warning for a plug that no change comes near to curing.
const plugNever = "plug-never"

// judgePlug says what both temperatures mean, as far as their bands allow.
func (p *Page) judgePlug(card *calc.Card, h plugHeat) {
	toe, melts := card.Setup.Filler.Toe.V, card.Setup.Members[1].Metal.Solidus.V
	by := func(whole bool) string {
		if whole {
			return "the whole band"
		}
		return "the middle value"
	}
	cure, near := "", true
	if h.middle.Value > melts || h.rim.Value < toe {
		cure, near = plugCure(card)
	}
	warn := func(code, format string, args ...any) {
		if !near {
			code = plugNever
		}
		p.Warn(code, restingSource, format, args...)
	}
	switch {
	case h.middle.Value > melts && h.rim.Value < toe:
		warn("plug-both", "By the middle values the rim stays cold (%.0f °C, this filler wets from "+
			"%.0f °C) and the middle melts (this metal from %.0f °C). %s Saw a test plug through before you rely on "+
			"one.", h.rim.Value, toe, melts, cure)
	case h.middle.Value > melts:
		warn("plug-burns", "By %s the sheet below melts in the middle before the hole is full, from %.0f °C on. %s "+
			"Otherwise put a copper bar below, or fill the hole in several short bouts.", by(h.middle.Low > melts),
			melts,
			cure)
	case h.rim.Value < toe:
		warn("plug-cold", "By %s the rim stays under the %.0f °C at which this filler wets. %s",
			by(h.rim.High < toe), toe, cure)
	case h.middle.High > melts && h.rim.Low < toe:
		p.Because(Own(restingSource), "the bands reach from a cold rim (under %.0f °C) to a melted middle (over "+
			"%.0f °C): only a test plug, sawn through, tells", toe, melts)
	case h.middle.High > melts:
		p.Because(Own(restingSource), "the rim wets, but the hot end of the band melts the middle (over %.0f °C): "+
			"watch the other face, it must not sag", melts)
	case h.rim.Low < toe:
		p.Because(Own(restingSource), "the cold end of the band leaves the rim under the %.0f °C at which this "+
			"filler wets: saw a test plug through", toe)
	default:
		p.Because(Own(restingSource), "the rim wets and the middle stays solid over the whole of both bands")
	}
}
