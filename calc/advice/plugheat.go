package advice

import (
	"fmt"
	"math"

	"brazebooth/calc"
	"brazebooth/calc/formula"
	"brazebooth/tables"
)

// resting is an arc that fills a hole: everything that its heat in the sheets depends on.
type resting struct {
	hole, time              float64 // mm, s
	power                   float64 // W into the work
	kt, ct                  float64 // of both sheets, W/K and J/mm2K
	led, form, width, start float64 // shares; mm; C
}

// at is the temperature at a distance from the middle when the hole is full, C.
func (r *resting) at(away float64) float64 {
	ring := r.led * r.hole
	rise, err := formula.RestingRise(r.power, r.kt, r.ct, math.Sqrt(r.width*r.width+ring*ring/2), away, r.time)
	if err != nil {
		return math.NaN()
	}
	return r.start + r.form*rise
}

// rests adds how hot the sheet below becomes at the rim, where the plug must wet it, and in the middle, where it must
// not melt through; false where that is not judged.
func (p *Page) rests(card *calc.Card, time calc.Figure) (rim, middle calc.Figure, judged bool) {
	lower := &card.Setup.Members[1]
	soak, err := formula.SoakThrough(lower.Core, lower.Metal.Conductivity.V, lower.Metal.HeatCapacity.V)
	amps, ok1 := card.Figure("current")
	volts, ok2 := card.Figure("volts")
	hole, _ := p.Figure("hole")
	if err != nil || !ok1 || !ok2 || soak > time.Value {
		p.Because(Own(restingSource), "whether the rim wets: not judged, because the heat takes longer through the "+
			"lower sheet than the hole takes to fill; try a test plug, sawn through, or thinner sheet below")
		return rim, middle, false
	}
	share := func(upper float64, of func(m *tables.Metal) float64) float64 {
		one := &card.Setup.Members[0]
		return of(&lower.Metal)*lower.Core + upper*of(&one.Metal)*one.Core
	}
	k := func(m *tables.Metal) float64 { return m.Conductivity.V }
	c := func(m *tables.Metal) float64 { return m.HeatCapacity.V }
	eta := tables.ArcEfficiency
	if card.Used.Eta.Set {
		eta.V = card.Used.Eta.V
	}
	pulses := calc.Figure{Value: 100, Low: 100, High: 100} // true power over the product of the means, %
	if f, ok := card.Figure("pulse_power"); ok {
		pulses = f
	}
	upper := tables.PlugUpperShare
	power := eta.V * amps.Value * volts.Value * pulses.Value / 100
	mid := resting{hole: hole.Value, time: time.Value, power: power, kt: share(upper.V, k), ct: share(upper.V, c),
		led: tables.PlugLed.V, form: tables.PlugForm.V, width: tables.ArcWidth.V,
		start: card.Used.Preheat.V}
	ends := []func(r *resting, high bool){
		func(r *resting, high bool) { r.power *= pick(high, eta.High, eta.Low) / eta.V },
		func(r *resting, high bool) { r.power *= pick(high, amps.High, amps.Low) / amps.Value },
		func(r *resting, high bool) { r.power *= pick(high, volts.High, volts.Low) / volts.Value },
		func(r *resting, high bool) { r.power *= pick(high, pulses.High, pulses.Low) / pulses.Value },
		func(r *resting, high bool) { r.time = pick(high, time.High, time.Low) },
		func(r *resting, high bool) { r.led = pick(high, tables.PlugLed.High, tables.PlugLed.Low) },
		func(r *resting, high bool) { r.form = pick(high, tables.PlugForm.High, tables.PlugForm.Low) },
		func(r *resting, high bool) { r.width = pick(high, tables.ArcWidth.High, tables.ArcWidth.Low) },
		func(r *resting, high bool) {
			s := pick(high, upper.High, upper.Low)
			r.kt, r.ct = share(s, k), share(s, c)
		},
		func(r *resting, high bool) { r.kt *= band(lower.Metal.Conductivity, high) },
		func(r *resting, high bool) { r.ct *= band(lower.Metal.HeatCapacity, high) },
	}
	in := []calc.Input{calc.Derived("", "power into the work", mid.power, "W"), time.As(""), hole.As(""),
		calc.In("", "arc led on a circle, radius over the hole", mid.led, "1"),
		calc.In("", "share of the upper sheet", upper.V, "1"), calc.In("", "parts before the arc", mid.start, "C")}
	rim = p.heated("plug_rim_temperature", "of the sheet below at the hole's rim, when it is full", &mid,
		hole.Value/2, ends, in)
	middle = p.heated("plug_middle_temperature", "of the sheet below in the middle of the hole, when it is full",
		&mid, 0,
		ends, in)
	return rim, middle, true
}

// plugHeat is what the arc of a card's plug heats the sheet below to; false where that is not judged.
func plugHeat(card *calc.Card) (rim, middle calc.Figure, judged bool) {
	p := Page{Card: *card}
	time, ok := p.filled(card)
	if !ok {
		return rim, middle, false
	}
	return p.rests(card, time)
}

// coldRim says why nobody can rely on a plug's rim to be wetted, "" where it wets by its middle value.
func coldRim(card *calc.Card) string {
	rim, _, judged := plugHeat(card)
	switch toe := card.Setup.Filler.Toe.V; {
	case !judged:
		return "it is not judged whether the rim of the sheet below gets hot enough to wet"
	case rim.Value < toe:
		return fmt.Sprintf("the rim of the sheet below is computed at %.0f °C, and this filler wets from %.0f °C",
			rim.Value, toe)
	}
	return ""
}

func pick(high bool, a, b float64) float64 {
	if high {
		return a
	}
	return b
}

// band is an end of a figure over its value.
func band(d tables.Datum, high bool) float64 { return pick(high, d.High, d.Low) / d.V }

// heated adds the temperature at a distance from the middle, its interval by both ends of everything that moves it.
func (p *Page) heated(name, what string, mid *resting, away float64, ends []func(*resting, bool),
	in []calc.Input) calc.Figure {
	v, moved := mid.at(away), calc.Sides{}
	for _, end := range ends {
		for _, high := range [...]bool{false, true} {
			r := *mid
			end(&r, high)
			moved.Add(r.at(away) - v)
		}
	}
	return p.add(name, "C", v, max(mid.start, v-moved.Down), v+moved.Up, calc.OwnBasis(what, restingSource, in...))
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
			"%.0f °C) and the middle melts (%.0f °C, this metal from %.0f °C): %s. Saw a test plug through before you "+
			"rely on one.", rim.Value, toe, middle.Value, melts, plugCure(card, rim))
	case middle.Value > melts:
		p.Warn("plug-burns", restingSource, "By %s the sheet below melts in the middle before the hole is full, from "+
			"%.0f °C on: %s. Else a copper bar below, or several short bouts.", by(middle.Low > melts), melts,
			plugCure(card, rim))
	case rim.Value < toe:
		p.Warn("plug-cold", restingSource, "By %s the rim stays under the %.0f °C at which this filler wets: %s; or "+
			"%s.",
			by(rim.High < toe), toe, plugCure(card, rim), calc.OrStrip(card, "warm the parts and give that as preheat"))
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
