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
		f.say(AnotherWay, limit.Origin, calc.OtherJoint(card), "%s", calc.TooWarm(card))
	default:
		f.say(Suits, limit.Origin, "", "%.0f °C in service: handbooks allow continuous service up to about %s; "+
			"above it strength falls", t.V, calc.WarmestService())
	}
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
		stronger := "a longer seam or fuller throat, a stronger filler, or another way: " + calc.OtherJoint(card)
		f.say(AnotherWay, fillets, stronger, "%s kN is more than the %s kN to allow on this seam",
			calc.Number(card.Job.Load.V), calc.Number(allow.Value))
		return
	}
	for _, w := range s.Warnings {
		if w.Code == "short-seam" {
			f.say(WithCare, tables.ShortestSeam.Origin, "", "%s", w.Text)
			return
		}
	}
	f.say(WithCare, fillets, "", "%s kN of the %s kN to allow: structural, lifting, pressure or vehicle loads "+
		"are a qualified person's to decide", calc.Number(card.Job.Load.V), calc.Number(allow.Value))
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
		f.say(AnotherWay, fillets, "thicker sheet or a longer seam", "%s kN is more than the %s kN to allow on the "+
			"sheet alone, whatever the bead carries", calc.Number(card.Job.Load.V), calc.Number(sheetBears(card)))
	case unsound != "":
		f.say(WithCare, ownSection, "", "the load is not judged, because the bead is not sound: %s",
			strings.ToLower(unsound[:1])+unsound[1:])
	case dryEnd(card):
		f.say(WithCare, ownSection, "", "the load is not judged, because at an end of its bands this bead leaves a "+
			"member dry: see the page strength")
	case len(s.Reasons) > 0:
		f.say(WithCare, fillets, "", "the load is not judged: %s", s.Reasons[0].Text)
	}
}
