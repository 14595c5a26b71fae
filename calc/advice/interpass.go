package advice

import (
	"math"

	"brazebooth/calc"
	"brazebooth/calc/formula"
	"brazebooth/tables"
)

// interpass is the wait between layers, from the cooling of the workpiece itself: how hot the overlaid length
// is after a layer, how long it takes to cool to the limit, and when within a layer it passes the limit.
func (p *Page) interpass(card *calc.Card, layers, length float64) {
	net, ok1 := card.Figure("net_heat")
	travel, ok2 := card.Figure("travel")
	arc, ok3 := calc.FigureNamed(p.Figures, "arc_time")
	limit := interpassLimit(card, layers)
	if !ok1 || !ok2 || !ok3 {
		return
	}
	if card.Used.Preheat.V >= limit.V {
		p.Because(limit.Origin, "the part starts at %.0f °C, no cooler than the %.0f °C it may have between layers: "+
			"no hold is computed", card.Used.Preheat.V, limit.V)
		return
	}
	run := func(heat, film, beyond float64) layerRun {
		return overlayRun(card, length, arc.Value/layers, heat*travel.Value, film, beyond, limit.V)
	}
	bar := Own(barSource)
	film, far := tables.FreeConvection, tables.BarBeyond
	mid := run(net.Value, film.V, far.V)
	hot, cool := run(net.High, film.Low, far.Low), run(net.Low, film.High, far.High)
	melts := min(card.Setup.Members[0].Metal.Solidus.V, card.Setup.Filler.Solidus.V)
	switch {
	case mid.after > melts || mid.hottest > melts:
		p.Warn("part-melts", barSource, "In one go the part would reach %.0f °C all through and the layer would run "+
			"off: the part is too small for this heat. Lay it in short bouts, or build it up another way.", melts)
		return
	case mid.failed:
		p.Because(bar, "left alone the part does not cool to the limit within six hours")
		return
	case hot.failed:
		hot.hold = formula.LongestHold
		p.Because(bar, "at the hot end of the bands the part does not cool to the limit in six hours")
	}
	if hot.after > melts {
		p.Because(bar,
			"at the hot end of the bands the layer runs: watch it, and stop before the part glows (%.0f °C)", melts)
	}
	in := []calc.Input{calc.Derived("", "net power", net.Value*travel.Value, "W"),
		calc.Derived("", "one layer's arc time", arc.Value/layers, "s"),
		calc.In("", "free convection", film.V, "W/m2K"),
		calc.Assumed("", "part beyond the overlay on each side", mid.beyond, "mm"), calc.In("", "limit", limit.V, "C")}
	p.row("interpass", limit, "hottest before the next bead")
	p.add("layer_temperature", "C", mid.after, min(cool.after, mid.after), max(hot.after, mid.after),
		calc.OwnBasis("overlaid length when a layer is done, even through the section", barSource, in...))
	p.add("interpass_hold", "s", mid.hold, min(cool.hold, mid.hold), max(hot.hold, mid.hold),
		calc.OwnBasis("until the overlaid length is down to the limit, after the last layer that is followed",
			barSource, in...))
	p.bouts(&mid, arc.Value, layers, limit.V)
}

// bouts says how long the whole overlay takes with its waits. If the part passes the limit within a layer, it
// says in how many bouts the layer is laid.
func (p *Page) bouts(r *layerRun, arc, layers, limit float64) {
	switch bar := Own(barSource); {
	case !math.IsNaN(r.passed):
		p.Because(bar, "the part passes %.0f °C after about %.0f s of arc: lay it in some %.0f bouts and let it cool "+
			"between, or cool it from the bore; the card's own settings are for a part that starts cold", limit,
			r.passed, math.Ceil(arc/math.Max(r.passed, 1)))
	case layers > 1:
		p.Because(bar, "%.0f layers with the holds between them: about %.0f minutes in all", layers,
			(arc+(layers-1)*r.hold)/60)
	}
}

const barSource = "fin equation along the part with convection and radiation from its skin, heat even through the " +
	"section (Incropera and DeWitt, ch. 3 and 5); the part's length beyond the overlay is assumed"

// interpassLimit is how hot the workpiece may be before the next bead: lower on silicon bronze, as a base or as
// the layer below, than on the other metals.
func interpassLimit(card *calc.Card, layers float64) tables.Datum {
	if calc.Applies("silicon-bronze", card) || card.Setup.Filler.ID == "cusi3" && layers > 1 {
		return tables.InterpassSilicon
	}
	return tables.InterpassAluminium
}

// layerRun is the effect of up to three layers on the workpiece.
type layerRun struct {
	after, hottest float64 // C: after the last layer computed, after the hottest
	hold, passed   float64 // s; passed: arc time into the first layer, NaN if never
	beyond         float64 // mm
	failed         bool
}

// overlayRun computes up to three layers, each started when the workpiece has cooled to the limit.
func overlayRun(card *calc.Card, length, seconds, power, film, beyond, limit float64) layerRun {
	m := &card.Setup.Members[0]
	b := formula.Bar{Half: length / 2, K: m.Metal.Conductivity.V, RhoC: m.Metal.HeatCapacity.V, Film: film,
		Emissivity: m.Metal.Emissivity.V, Air: tables.RoomTemperature.V}
	if card.Job.ShaftDia.Set {
		d := card.Job.ShaftDia.V
		b.Area, b.Surface, b.Beyond = math.Pi/4*d*d, 4/d, beyond*d
	} else { // a plate of the overlay's own size
		b.Area, b.Surface = m.Core*plateAcross, 2/m.Core
	}
	r := layerRun{beyond: b.Beyond}
	if err := b.Start(card.Used.Preheat.V); err != nil {
		return layerRun{failed: true}
	}
	for n := range 3 {
		passed := b.Run(seconds, power, limit)
		if n == 0 { // the later layers start at the limit
			r.passed = passed
		}
		r.after = b.Mean()
		r.hottest = max(r.hottest, r.after)
		hold, err := b.Hold(limit)
		if err != nil {
			r.failed = true
			return r
		}
		r.hold = hold
	}
	return r
}
