package advice

import (
	"fmt"

	"brazebooth/calc"
	"brazebooth/tables"
)

// ruledOut is what a warning of the card means for the joint, and what to do instead.
var ruledOut = map[string]struct{ verdict, instead string }{
	"brass":              {StopWork, "silver brazing or soft solder"},
	"boron-steel":        {StopWork, "the vehicle or equipment maker's repair procedure"},
	"zinc-under-overlay": {StopWork, "strip the zinc at least 25 mm back, then give the sheet as bare"},
	"gas-refused":        {StopWork, "argon"},
	"filler-refused":     {StopWork, "another filler; the page filler ranks them"},
	"melts-with-filler":  {AnotherWay, "a filler of the base's own alloy, welded; or silver brazing"},
	"high-strength":      {WithCare, ""},
	"cast-iron":          {WithCare, ""},
	"copper-penetration": {WithCare, ""},
	"heavy-coat":         {WithCare, ""},
}

// warned repeats the card's warnings that rule something out or ask for care.
func (f *fitting) warned(card *calc.Card) {
	for _, w := range card.Warnings {
		if r, ok := ruledOut[w.Code]; ok {
			o := tables.Origin{Source: w.Basis, Known: tables.Read}
			if l, ok := tables.Warnings.ByID(w.Code); ok {
				o = l.Origin
			}
			f.say(r.verdict, o, r.instead, "%s", w.Text)
		}
	}
}

// metals gives what the zinc and the preheat rule out on the base metals, and what favours bronze on them.
func (f *fitting) metals(card *calc.Card) {
	zinc := calc.Applies("zinc", card)
	if zinc && f.p.has(tables.Stainless) {
		f.say(StopWork, practice, "strip the zinc at least 25 mm back on both faces; then it may be "+
			"brazed as bare sheet", "zinc beside stainless: hot zinc embrittles it")
	}
	if calc.WarmedZinc(card) {
		f.say(AnotherWay, practice, calc.StripZinc(card), "%s", calc.WarmOverZinc(card))
	}
	if calc.Softened(card) {
		f.say(AnotherWay, tables.HardenedWarmest.Origin, calc.LessPreheat(card), "%.0f °C of preheat softens hardened "+
			"sheet", card.Used.Preheat.V)
	}
	if zinc && !card.Setup.One && !calc.WarmedZinc(card) {
		f.say(Suits, twi, "", "zinc-coated sheet: far less heat than fusion welding, so that most of the zinc stays; "+
			"zinc guards a bare strip only 1 to 2 mm wide")
	}
	if ms := card.Setup.Joined(); len(ms) == 2 && ms[0].Metal.Family != ms[1].Metal.Family {
		if f.p.has(tables.Stainless) && f.p.has(tables.Steel) { // these may also be welded
			f.say(Suits, twi, "", "unlike metals: bronze joins steel and stainless without mixing them")
			return
		}
		f.say(Suits, twi, "", "unlike metals: bronze joins what fusion would crack")
	}
}

// thickness compares the sheet with the range that suits arc brazing; castings and overlays are judged
// otherwise.
func (f *fitting) thickness(card *calc.Card) {
	members := card.Setup.Joined()
	t := calc.MinCore(members)
	s, metal := tables.SheetThickest, thicknessText(members, t)
	switch {
	case f.p.has(tables.CastIron):
		f.say(WithCare, practice, "",
			"a casting is not sheet: what stays under 200 °C and lets nothing fall or burn when it breaks may be "+
				"repaired, such as a decorative leg or a cold lug; a firebox, door, flue or grate may not")
	case card.Used.Joint == "overlay":
		f.say(Suits, s.Origin, "", "an overlay for wear or size suits thick parts")
	case t > s.V && (card.Used.Use == "decorative" || card.Used.Use == "seal"):
		f.say(WithCare, s.Origin, "", "%s: above about 3 mm the filler's strength limits a brazed joint; this one "+
			"carries nothing", metal)
	case t > s.V:
		f.say(AnotherWay, s.Origin, "have the joint worked out; or "+calc.OtherJoint(card),
			"%s: above about 3 mm the filler's strength limits a brazed joint", metal)
	case t < tables.SheetThinnest.V:
		f.say(AnotherWay, tables.SheetThinnest.Origin, "solder it, or fold a seam",
			"%s: under about 0.2 mm the arc cuts before it brazes", metal)
	default:
		f.say(Suits, s.Origin, "", "%s lies in the range that arc brazing suits, about 0.2 to 3 mm", metal)
	}
}

// thicknessText describes the thinnest sheet: its metal alone and, if it is coated, its thickness with the coat.
func thicknessText(members []calc.Member, core float64) string {
	text := fmt.Sprintf("%.2f mm", core)
	for _, m := range members {
		if m.Core == core && m.Thickness > core {
			return text + fmt.Sprintf(" of metal (%.4g mm less its coat)", m.Thickness)
		}
	}
	return text
}
