package calc

import "brazebooth/tables"

// metals warns of base metals that rule something out or are dangerous.
func (w *warnings) metals() {
	stainless, zinc := Applies(string(tables.Stainless), w.card), Applies("zinc", w.card)
	said := ""
	for _, m := range w.card.Setup.Joined() {
		code := metalWarning(m.Metal, w.card.Setup.Filler)
		if code != "" && code != said {
			w.say(code)
			said = code
		}
	}
	if stainless {
		w.say("copper-penetration")
		if !AluminiumWire(w.card.Setup.Filler.ID) {
			w.say("stainless-filler")
		}
	}
	if stainless && zinc {
		w.say("zinc-on-stainless")
	}
	if zinc && w.card.Setup.One {
		w.say("zinc-under-overlay")
	}
}

// metalWarning is the code of the warning that a metal brings, "" for none.
func metalWarning(m tables.Metal, f tables.Filler) string {
	switch {
	case m.Family == tables.BrassFam:
		return "brass"
	case m.ID == "boron-steel":
		return "boron-steel"
	case HighStrength(m.ID):
		return "high-strength"
	case m.Family == tables.CastIron:
		return "cast-iron"
	case m.Solidus.V <= f.Liquidus.V:
		return "melts-with-filler"
	}
	return ""
}

// sheet warns of a thickness that does not suit arc brazing.
func (w *warnings) sheet() {
	members := w.card.Setup.Joined()
	if t := MinCore(members); t > tables.SheetThickest.V && w.card.Used.Joint != "overlay" &&
		!Applies(string(tables.CastIron), w.card) {
		w.tell("thick-sheet", Caution, tables.SheetThickest.Source, "Both members are %.2f mm or more: above about 3 "+
			"mm the filler's strength limits arc brazing. Have a joint that bears load worked out. Another way: %s.",
			t, OtherJoint(w.card))
	}
	for i, m := range members {
		name := memberName(i, len(members))
		if m.Core < tables.SheetThinnest.V {
			w.tell("thin-sheet", Caution, tables.SheetThinnest.Source,
				"%s is %.2f mm: under about 0.2 mm the arc cuts before it brazes. Solder it, or seam it.", name, m.Core)
		}
	}
	if maxCore(members)/MinCore(members) >= 2 && w.aimsAtThicker() {
		w.say("unequal")
	}
}

// aimsAtThicker reports that the arc is to point at the thicker of two members: not in a plug's hole, not where the aim
// between two metals is not judged, nor on a lap whose upper sheet is the thicker, which would lose its edge.
func (w *warnings) aimsAtThicker() bool {
	if w.card.Used.Joint == "plug" || w.card.Job.Aim.Set {
		return w.card.Used.Joint != "plug"
	}
	m, toward := &w.card.Setup.Members, w.card.Used.Aim.V
	if m[0].Core > m[1].Core {
		toward = -toward
	}
	return toward >= LeastAim
}

func memberName(i, n int) string {
	if n == 1 {
		return "The part"
	}
	return [2]string{"The first member", "The second member"}[i]
}

// fume warns of what is in the plume.
func (w *warnings) fume() {
	if Applies("zinc", w.card) {
		w.say("zinc-fume")
	}
	if !w.card.Setup.Filler.Comparison() {
		w.bronzeFume()
	}
	if w.card.Setup.Filler.ID == "cumn13al8" {
		w.say("manganese-fume")
	}
	if Applies(string(tables.Stainless), w.card) {
		w.say("chromium-fume")
	}
}

// bronzeFume warns of copper fume. Its limit is the tightest only where neither the wire's manganese nor the chromium
// of stainless is in the plume.
func (w *warnings) bronzeFume() {
	if w.card.Setup.Filler.ID == "cumn13al8" || Applies(string(tables.Stainless), w.card) {
		l, _ := tables.Warnings.ByID("bronze-fume")
		w.tell(l.Code, Severity(l.Severity), l.Source, "Copper fume has a tight limit, 0.1 mg/m³, and it is not the "+
			"only one here: extraction on, head out of the plume.")
		return
	}
	w.say("bronze-fume")
}

// wire warns of filler, diameter and gas.
func (w *warnings) wire() {
	s := &w.card.Setup
	if s.Filler.Comparison() {
		w.say("steel-filler")
	}
	if !s.Filler.Fitted && !s.Filler.Comparison() {
		w.say("unfitted-filler")
	}
	if _, ok := tables.WireNear(w.card.Used.Wire.V); !ok {
		w.tell("odd-wire", Caution, "AWS A5.02, ISO 544 (memory high)", "%.2f mm is no standard wire: check the "+
			"spool's label. Usual is .030, .035 or .045 in wire, or 0.8, 1.0 or 1.2 mm wire.", w.card.Used.Wire.V)
	}
	if s.Gas.ID != defaultGas && !s.Gas.Refused {
		w.tell("gas", Caution, s.Gas.Flow.Source, "%s", s.Gas.Note)
	}
	if l := w.card.Used.StickOut.V; l < tables.DefaultStickOut.Low || l > tables.DefaultStickOut.High {
		w.tell("stickout", Caution, tables.DefaultStickOut.Source, "Stick-out %.0f mm, tip to arc, is outside the "+
			"usual %.0f to %.0f mm: check it with a rule.", l, tables.DefaultStickOut.Low, tables.DefaultStickOut.High)
	}
}
