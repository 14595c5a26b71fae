package advice

import (
	"fmt"
	"math"

	"brazebooth/calc"
	"brazebooth/calc/formula"
	"brazebooth/tables"
)

// interpass is the hold between layers, from the cooling of the workpiece itself: how hot the overlaid length is
// after a layer, how long until it is down to the limit, and when in a layer it passes the limit.
func (p *Page) interpass(card *calc.Card, layers, length float64) {
	net, ok1 := card.Figure("net_heat")
	travel, ok2 := card.Figure("travel")
	arc, ok3 := calc.FigureNamed(p.Figures, "arc_time")
	limit := interpassLimit(card, layers)
	if !ok1 || !ok2 || !ok3 {
		return
	}
	if card.Used.Preheat.V >= limit.V {
		p.because(fmt.Sprintf("the part starts at %.0f °C, no cooler than the %.0f °C it may have between layers: no hold is computed", card.Used.Preheat.V, limit.V), string(limit.Known), limit.Source)
		return
	}
	run := func(heat, film, beyond float64) layerRun {
		return overlayRun(card, length, arc.Value/layers, heat*travel.Value, film, beyond, limit.V)
	}
	film, far := tables.FreeConvection, tables.BarBeyond
	mid := run(net.Value, film.V, far.V)
	hot, cool := run(net.High, film.Low, far.Low), run(net.Low, film.High, far.High)
	melts := min(card.Setup.Members[0].Metal.Solidus.V, card.Setup.Filler.Solidus.V)
	switch {
	case mid.after > melts || mid.hottest > melts:
		p.Warnings = append(p.Warnings, calc.Warning{Code: "part-melts", Severity: calc.Caution,
			Text: fmt.Sprintf("Laid in one go the part would reach %.0f °C all through and the layer run off: too small for this heat. Lay short bouts, or another way to build it up.", melts), Basis: barSource})
		return
	case mid.failed:
		p.because("the part does not cool to the limit in six hours by its own", calc.OwnCalc, barSource)
		return
	case hot.failed:
		hot.hold = formula.LongestHold
		p.because("at the hot end of the bands the part does not cool to the limit in six hours", calc.OwnCalc, barSource)
	}
	if hot.after > melts {
		p.because(fmt.Sprintf("at the hot end of the bands the layer runs: watch it, and stop before the part glows (%.0f °C)", melts), calc.OwnCalc, barSource)
	}
	in := []calc.Input{{Name: "net power", Value: net.Value * travel.Value, Unit: "W", Derived: true}, {Name: "one layer's arc time", Value: arc.Value / layers, Unit: "s", Derived: true},
		{Name: "free convection", Value: film.V, Unit: "W/m2K"}, {Name: "part beyond the overlay on each side", Value: mid.beyond, Unit: "mm", Assumed: true}, {Name: "limit", Value: limit.V, Unit: "C"}}
	p.add("interpass", "C", limit.V, limit.Low, limit.High, calc.Basis{Formula: "hottest before the next bead", Source: limit.Source, Known: string(limit.Known)})
	p.add("layer_temperature", "C", mid.after, min(cool.after, mid.after), max(hot.after, mid.after), calc.Basis{Formula: "overlaid length when a layer is done, even through the section", Source: barSource, Known: calc.OwnCalc, Inputs: in})
	p.add("interpass_hold", "s", mid.hold, min(cool.hold, mid.hold), max(hot.hold, mid.hold), calc.Basis{Formula: "until the overlaid length is down to the limit, after the last layer that is followed", Source: barSource, Known: calc.OwnCalc, Inputs: in})
	if layers > 1 && math.IsNaN(mid.passed) {
		p.because(fmt.Sprintf("%.0f layers with the holds between them: about %.0f minutes in all", layers, (arc.Value+(layers-1)*mid.hold)/60), calc.OwnCalc, barSource)
	}
	if !math.IsNaN(mid.passed) {
		bouts := math.Ceil(arc.Value / math.Max(mid.passed, 1))
		p.because(fmt.Sprintf("the part passes %.0f °C after about %.0f s of arc: lay it in some %.0f bouts and let it cool between, or cool it from the bore; the card's own settings are for a part that starts cold", limit.V, mid.passed, bouts), calc.OwnCalc, barSource)
	}
}

const barSource = "fin equation along the part with convection and radiation from its skin, heat even through the section (Incropera and DeWitt, ch. 3 and 5); the part's length beyond the overlay is assumed"

// interpassLimit is how hot the workpiece may be before the next bead: less on silicon bronze, whether base or the
// layer below, than on the rest.
func interpassLimit(card *calc.Card, layers float64) tables.Datum {
	if card.Setup.Members[0].Metal.ID == "silicon-bronze" || card.Setup.Filler.ID == "cusi3" && layers > 1 {
		return tables.InterpassSilicon
	}
	return tables.InterpassAluminium
}

// layerRun is what up to three layers did to the workpiece.
type layerRun struct {
	after, hottest float64 // C: after the last layer that was followed, after the hottest of them
	hold, passed   float64 // s; s of arc into the first layer, NaN where it never passed
	beyond         float64 // mm
	failed         bool
}

// overlayRun follows up to three layers, each started when the workpiece was down to the limit.
func overlayRun(card *calc.Card, length, seconds, power, film, beyond, limit float64) layerRun {
	m := &card.Setup.Members[0]
	b := formula.Bar{Half: length / 2, K: m.Metal.Conductivity.V, RhoC: m.Metal.HeatCapacity.V, Film: film, Emissivity: m.Metal.Emissivity.V, Air: tables.RoomTemperature.V}
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
		if n == 0 { // the others start at the limit
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
