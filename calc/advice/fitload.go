package advice

import (
	"strings"

	"brazebooth/calc"
	"brazebooth/tables"
)

// service compares the service temperature with the limit of a copper-alloy braze.
func (f *fitting) service(card *calc.Card) {
	t, limit := card.Used.ServiceTemp, tables.ServiceLimit
	switch {
	case !t.Set:
		f.say(Suits, limit.Origin, "", "service temperature not given: a brazed joint's strength falls above about "+
			"%s; below it handbooks allow continuous service", calc.WarmestService())
	case calc.TooWarm(card) != "":
		f.say(AnotherWay, limit.Origin, hotInstead(card), "%s", calc.TooWarm(card))
	default:
		f.say(Suits, limit.Origin, "", "%.0f °C in service: handbooks allow continuous service up to about %s; "+
			"above it strength falls", t.V, calc.WarmestService())
	}
}

// hotInstead is what a shop does with a member that gets too hot in service for a braze. Welding is no
// alternative for cast iron, which it cracks, nor for most copper alloys and unlike metals.
func hotInstead(card *calc.Card) string {
	has := (&Page{Card: *card}).has
	switch {
	case has(tables.CastIron):
		return "a new casting or the maker's part; or stitched or bolted cold by somebody who does that (metal " +
			"stitching): neither brazed nor, as iron cracks, welded"
	case has(tables.CopperFam), has(tables.Bronze), has(tables.BrassFam):
		return "bolt or rivet it, or have it made anew; a specialist may weld it in its own alloy"
	case has(tables.Stainless) && has(tables.Steel):
		return "weld it with a stainless filler that suits both, or bolt it"
	case has(tables.Stainless):
		return "weld it with a stainless filler, or bolt it"
	}
	return "weld it, or bolt it"
}

// carries compares the load with what the joint carries.
func (f *fitting) carries(card *calc.Card) {
	if !card.Job.Load.Set {
		if card.Used.Use == "load" {
			f.say(WithCare, ownJob, "",
				"it carries a load that was not given, so it is not compared with what the joint carries")
		}
		return
	}
	if f.p.has(tables.CastIron) {
		f.say(AnotherWay, practice, "a new part, or a repair that a qualified person plans",
			"a casting that carries a load: no load is allowed on brazed cast iron here")
		return
	}
	s, err := Strength(card)
	if err != nil {
		f.say(WithCare, fillets, "", "the load cannot be compared with this joint: %v", err)
		return
	}
	allow, ok := s.Figure("allowable_load")
	if !ok {
		f.unjudged(card, &s)
		return
	}
	if card.Job.Load.V > allow.Value*(1+lastBit) {
		const stronger = "a longer seam or fuller throat, a stronger filler, rivets or bolts, or a weld"
		f.say(AnotherWay, fillets, stronger, "%.3g kN is more than the %.3g kN to allow on this seam", card.Job.Load.V,
			allow.Value)
		return
	}
	for _, w := range s.Warnings {
		if w.Code == "short-seam" {
			f.say(WithCare, tables.ShortestSeam.Origin, "", "%s", w.Text)
			return
		}
	}
	f.say(WithCare, fillets, "", "%.3g kN of the %.3g kN to allow: structural, lifting, pressure or vehicle loads "+
		"are a qualified person's to decide", card.Job.Load.V, allow.Value)
}

// sheetBears is the load to allow on the weaker sheet beside the seam, kN.
func sheetBears(card *calc.Card) float64 {
	p := Page{Card: *card}
	sheet := p.sheetCapacity(p.seam(card, usualSeam))
	return downTo2(sheet.Low / factor(card).Value)
}

// unjudged says why a load is not compared. A job whose joint might not hold its load must not count as
// suitable.
func (f *fitting) unjudged(card *calc.Card, s *Page) {
	unsound := failing(card)
	switch {
	case card.Used.Joint == "plug" && !card.Job.Hole.Set && plugDoubt(card) != "":
		f.say(WithCare, Own(restingSource), sawPlug, "the load is not judged, because %s", plugDoubt(card))
	case card.Used.ServiceTemp.V > tables.ServiceLimit.V: // service says this, with an alternative
	case card.Used.Joint == "edge":
		f.say(AnotherWay, fillets, "a lap or a tee where it carries, or rivets or bolts", "the load is not judged, "+
			"because a pull opens an edge joint like a book, and no test of that is at hand")
	case card.Used.Joint == "overlay":
		f.say(WithCare, practice, "", "the load is not judged, because an overlay joins no parts: what the part under "+
			"it carries afterwards is an engineer's to decide")
	case card.Job.Load.V > sheetBears(card)*(1+lastBit):
		f.say(AnotherWay, fillets, "thicker sheet or a longer seam", "%.3g kN is more than the %.3g kN to allow on the "+
			"sheet alone, whatever the bead carries", card.Job.Load.V, sheetBears(card))
	case dryEnd(card):
		f.say(WithCare, ownSection, "", "the load is not judged, because at an end of its bands this bead leaves a "+
			"member dry: see the page strength")
	case unsound != "":
		f.say(WithCare, ownSection, "", "the load is not judged, because the bead is not sound: %s",
			strings.ToLower(unsound[:1])+unsound[1:])
	case len(s.Reasons) > 0:
		f.say(WithCare, fillets, "", "the load is not judged: %s", s.Reasons[0].Text)
	}
}
