package calc

import (
	"fmt"
	"strings"

	"brazebooth/tables"
)

// refused stops a job that a table refuses, whatever the cross-section finds.
func (w *warnings) refused() {
	s := &w.card.Setup
	if s.Gas.Refused {
		w.tell("gas-refused", Stop, s.Gas.Origin.Source, "%s: %s.", sentenceCase(s.Gas.Name), lowerFirst(s.Gas.Note))
	}
	for _, rule := range tables.FillerRules {
		if rule.Filler == s.Filler.ID && rule.Out && Applies(rule.On, w.card) {
			w.tell("filler-refused", Stop, rule.Source, "%s: %s. Take another filler.", s.Filler.ID, rule.Text)
		}
	}
}

// coats names, once each, coatings thicker than those in tests of arc brazing.
func (w *warnings) coats() {
	said := ""
	for _, m := range w.card.Setup.Joined() {
		if HeavyCoat(&m.Coating) && m.Coating.ID != said {
			w.tell("heavy-coat", Caution, m.Coating.Side.Source, "%s: %s. Thick zinc makes pores and spatter: on "+
				"scrap of the same sheet, with a vent gap, before the piece.", sentenceCase(m.Coating.Name),
				m.Coating.Note)
			said = m.Coating.ID
		}
	}
}

// HeavyCoat reports whether a coating's row asks to try it first.
func HeavyCoat(c *tables.Coating) bool { return strings.Contains(c.Note, "try it first") }

// given cautions values that are outside what their own page allows.
func (w *warnings) given() {
	j, g := &w.card.Job, &w.card.Setup.Gas
	if most := SmoothFlow(j, g); j.Flow.Set && j.Flow.V > most {
		w.tell("gas-turbulent", Caution, tables.LaminarReynolds.Source, "%.0f L/min is more than a nozzle of %.1f mm "+
			"carries smoothly (about %.0f L/min): it draws air in and makes pores. Less gas or a wider nozzle.",
			j.Flow.V,
			j.NozzleBore.Or(tables.UsualBore.V), most)
	}
	if least := min(g.Flow.Low, usualGas(j, g).Low); j.Flow.Set && j.Flow.V < least {
		w.tell("gas-low", Caution, g.Flow.Source, "%.0f L/min is under the usual %.0f to %.0f L/min: air reaches the "+
			"bead and makes pores. More gas, and no draught.", j.Flow.V, least, g.Flow.High)
	}
	if j.Hole.Set && w.card.Used.Joint != "plug" {
		w.tell("hole-unused", Caution, "the job", "A hole belongs to a plug, and this joint is of the kind %s: it is "+
			"left out. Choose the joint plug, or leave the hole out.", w.card.Used.Joint)
	}
	w.givenPreheat()
	w.softens()
}

// WarmestService is the warmest service of a brazed joint as the trade says it, in round numbers of either unit system.
func WarmestService() string {
	limit := tables.ServiceLimit
	return fmt.Sprintf("%.0f °C (%.0f °F)", limit.Low, limit.V*9/5+32)
}

// TooWarm says why a copper alloy cannot serve at the given temperature; "" where it can.
func TooWarm(card *Card) string {
	t, limit := card.Used.ServiceTemp, tables.ServiceLimit
	if !t.Set || t.V <= limit.V {
		return ""
	}
	return fmt.Sprintf("%.0f °C in service: above about %s a copper-alloy braze creeps and lets go", t.V,
		WarmestService())
}

// unlikeMetals reports members of two families of metal.
func unlikeMetals(card *Card) bool {
	m := card.Setup.Joined()
	return len(m) == 2 && m[0].Metal.Family != m[1].Metal.Family
}

// OtherJoint is how a shop joins members that a braze does not serve: too hot, too thick or too heavily loaded. Welding
// is no alternative for cast iron, which it cracks, nor for most copper alloys and unlike metals.
func OtherJoint(card *Card) string {
	has := func(f tables.Family) bool { return Applies(string(f), card) }
	switch {
	case has(tables.CastIron):
		return "a new casting or the maker's part; or stitched or bolted cold by somebody who does that (metal " +
			"stitching): neither brazed nor, as iron cracks, welded"
	case (has(tables.CopperFam) || has(tables.Bronze) || has(tables.BrassFam)) && unlikeMetals(card):
		return "bolt or rivet it, or have it made anew"
	case has(tables.CopperFam), has(tables.Bronze), has(tables.BrassFam):
		return "bolt or rivet it, or have it made anew; a specialist may weld it in its own alloy"
	case has(tables.Stainless) && has(tables.Steel):
		return "weld it with a stainless filler that suits both, or bolt it"
	case has(tables.Stainless):
		return "weld it with a stainless filler, or bolt it"
	}
	return "weld it, or bolt it"
}

// service cautions a joint that gets too warm in service.
func (w *warnings) service() {
	if why := TooWarm(w.card); why != "" {
		w.tell("service-hot", Caution, tables.ServiceLimit.Source, "%s. Another way to join it: see the page fit.", why)
	}
}

// givenPreheat compares a given preheat with the least for iron and the most between beads.
func (w *warnings) givenPreheat() {
	j := &w.card.Job
	if !j.Preheat.Set {
		return
	}
	least, most := tables.IronPreheat, tables.InterpassAluminium
	switch {
	case Applies(string(tables.CastIron), w.card):
		if j.Preheat.V < least.Low {
			w.tell("preheat-low", Caution, least.Source, "Cast iron is warmed through to %.0f °C at least; %.0f °C "+
				"lets it crack.", least.Low, j.Preheat.V)
		}
		return
	case Applies("silicon-bronze", w.card):
		most = tables.InterpassSilicon
	case !Applies("aluminium-bronze", w.card):
		return
	}
	if j.Preheat.V > most.High {
		w.tell("preheat-high", Caution, most.Source, "%.0f °C is more than the %.0f °C that this bronze may have "+
			"before a bead: it cracks hot.", j.Preheat.V, most.V)
	}
}
