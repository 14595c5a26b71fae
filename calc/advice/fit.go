package advice

import (
	"fmt"
	"slices"
	"strings"

	"brazebooth/calc"
	"brazebooth/tables"
)

// The verdicts of Fit, from best to worst.
const (
	Suits      = "suits"
	WithCare   = "with-care"
	AnotherWay = "another-way"
	StopWork   = "stop"
)

var verdicts = [...]string{Suits, WithCare, AnotherWay, StopWork}

// stopWeight is the weight of a reason that stops the job.
const stopWeight = 4

// fitting is a verdict in the making.
type fitting struct {
	p       *Page
	level   int
	instead []instead
}

// instead is what a shop does instead of a job that a reason of that level rules out.
type instead struct {
	level int
	text  string
}

// say adds a reason and lowers the verdict to its level; in is what a shop does instead, "" for nothing.
func (f *fitting) say(verdict string, text, known, source, in string) {
	level := slices.Index(verdicts[:], verdict)
	f.level = max(f.level, level)
	f.p.Reasons = append(f.p.Reasons, Reason{Text: text, Known: known, Source: source, Weight: float64(level) + 1})
	if in != "" {
		f.instead = append(f.instead, instead{level, in})
	}
}

// answer is what a shop does instead: what the heaviest reasons ask for; a lighter one may advise what they forbid.
func (f *fitting) answer() {
	for _, in := range f.instead {
		if in.level == f.level && !slices.Contains(f.p.Instead, in.text) {
			f.p.Instead = append(f.p.Instead, in.text)
		}
	}
}

// Fit says whether this job should be arc-brazed at all: verdict, reasons, heaviest first, and what to do instead.
func Fit(card *calc.Card) (Page, error) {
	p := Page{Name: "fit", Card: *card}
	f := fitting{p: &p}
	f.hazards(card)
	f.metals(card)
	f.thickness(card)
	f.service(card)
	f.carries(card)
	f.heat(card)
	f.use(card)
	f.answer()
	if f.level == stopWeight-1 { // what would speak for it no longer matters
		p.Reasons = slices.DeleteFunc(p.Reasons, func(r Reason) bool { return r.Weight == 1 })
	}
	slices.SortStableFunc(p.Reasons, func(a, b Reason) int { return int(b.Weight) - int(a.Weight) })
	p.Verdict = verdicts[f.level]
	return p, nil
}

// hazards gives what stops the job whatever the numbers say, and what was not answered.
func (f *fitting) hazards(card *calc.Card) {
	given := card.Used.Hazard
	if given == "" {
		f.say(WithCare, "not answered: used or sealed container, pressure, gas line, cadmium, lead, beryllium, confined space, vehicle structure, stove's fire parts? Each of them stops the job",
			"common practice, no source", "29 CFR 1910.252 and common practice", "")
		return
	}
	ids := strings.Split(given, ",")
	for _, h := range tables.Hazards() { // the drum before its lining
		if slices.Contains(ids, h.ID) {
			f.say(StopWork, h.Name+": "+h.Why, string(h.Known), h.Source, h.Instead)
		}
	}
	if given == "none" {
		f.say(Suits, "asked and answered: none of the things that stop a job", "given", "the job", "")
	}
}

// metals gives what the base metals rule out, and what speaks for bronze on them.
func (f *fitting) metals(card *calc.Card) {
	said := map[string]bool{}
	zinc, stainless := false, false
	for _, m := range card.Setup.Joined() {
		zinc, stainless = zinc || m.Coating.Zinc, stainless || m.Metal.Family == tables.Stainless
		code := calc.MetalWarning(m.Metal, card.Setup.Filler)
		if code == "" || said[code] {
			continue
		}
		said[code] = true
		l, ok := tables.WarningByCode(code)
		if !ok {
			continue
		}
		verdict, instead := WithCare, ""
		switch code {
		case "brass":
			verdict, instead = StopWork, "silver brazing or soft solder"
		case "boron-steel":
			verdict, instead = StopWork, "the vehicle or equipment maker's repair procedure"
		case "melts-with-filler":
			verdict, instead = AnotherWay, "a filler of the base's own alloy, welded; or silver brazing"
		}
		f.say(verdict, l.Text, string(l.Known), l.Source, instead)
	}
	line := func(verdict, code string) {
		if l, ok := tables.WarningByCode(code); ok {
			f.say(verdict, l.Text, string(l.Known), l.Source, "")
		}
	}
	if stainless {
		line(WithCare, "copper-penetration")
	}
	if stainless && zinc {
		f.say(StopWork, "zinc beside stainless: hot zinc embrittles it", "common practice, no source", "common practice, no source", "strip the zinc at least 25 mm back on both faces; then it may be brazed as bare sheet")
	}
	if zinc {
		f.say(Suits, "zinc-coated sheet: far less heat than fusion welding, so that most of the zinc stays; zinc guards a bare strip only 1 to 2 mm wide", "read", "TWI Job Knowledge 134", "")
	}
	if ms := card.Setup.Joined(); len(ms) == 2 && ms[0].Metal.Family != ms[1].Metal.Family {
		f.say(Suits, "unlike metals: bronze joins what fusion would crack", "read", "TWI Job Knowledge 134", "")
	}
}

// thickness compares thickness with what suits arc brazing; castings and overlays are judged on what they carry.
func (f *fitting) thickness(card *calc.Card) {
	members := card.Setup.Joined()
	t, cast := calc.MinCore(members), false
	for _, m := range members {
		cast = cast || m.Metal.Family == tables.CastIron
	}
	s, metal := tables.SheetThickest, bareText(members, t)
	switch {
	case cast:
		f.say(WithCare, "a casting is not sheet: what stays under 200 °C and lets nothing fall or burn when it breaks may be repaired, such as a decorative leg or a cold lug; a firebox, door, flue or grate may not", "common practice, no source", "common practice, no source", "")
	case card.Used.Joint == "overlay":
		f.say(Suits, "an overlay for wear or size suits thick parts", string(s.Known), s.Source, "")
	case t > s.V:
		f.say(AnotherWay, metal+": above about 3 mm the filler's strength limits a brazed joint", string(s.Known), s.Source, "fusion weld it, or have the joint worked out")
	case t < tables.SheetThinnest.V:
		f.say(AnotherWay, metal+": under about 0.2 mm the arc cuts before it brazes", string(tables.SheetThinnest.Known), tables.SheetThinnest.Source, "solder it, or fold a seam")
	default:
		f.say(Suits, metal+" lies in the range that arc brazing suits, 0.2 to about 3 mm", string(s.Known), s.Source, "")
	}
}

// bareText is the thinnest sheet's metal, and the sheet with its coat, as the card has it.
func bareText(members []calc.Member, core float64) string {
	text := fmt.Sprintf("%.2f mm", core)
	for _, m := range members {
		if m.Core == core && m.Thickness > core {
			return text + fmt.Sprintf(" of metal (%.4g mm less its coat)", m.Thickness)
		}
	}
	return text
}

// service compares the service temperature with what a copper-alloy braze bears.
func (f *fitting) service(card *calc.Card) {
	t, limit := card.Used.ServiceTemp, tables.ServiceLimit
	switch {
	case !t.Set:
		f.say(Suits, fmt.Sprintf("service temperature not given: a brazed joint's strength falls above about %.0f °C; below it handbooks allow continuous service", limit.V), string(limit.Known), limit.Source, "")
	case t.V > limit.V:
		f.say(AnotherWay, fmt.Sprintf("%.0f °C in service: above about %.0f °C a copper-alloy braze creeps and lets go", t.V, limit.V), string(limit.Known), limit.Source, hotInstead(card))
	default:
		f.say(Suits, fmt.Sprintf("%.0f °C in service: handbooks allow continuous service up to about %.0f °C; above it strength falls", t.V, limit.V), string(limit.Known), limit.Source, "")
	}
}

// hotInstead is what a shop does with a member that is too hot in service for a braze: welding is no way out for cast
// iron, which it cracks, nor for most copper alloys and unlike metals.
func hotInstead(card *calc.Card) string {
	has := func(f tables.Family) bool { return calc.Applies(string(f), card) }
	ms := card.Setup.Joined()
	switch {
	case has(tables.CastIron):
		return "a new casting or the maker's part; or stitched or bolted cold by somebody who does that (metal stitching): neither brazed nor, as iron cracks, welded"
	case has(tables.CopperFam), has(tables.Bronze), has(tables.BrassFam):
		return "bolt or rivet it, or have it made anew; a specialist may weld it in its own alloy"
	case len(ms) == 2 && has(tables.Stainless) && has(tables.Steel):
		return "weld it with a stainless filler that suits both, or bolt it"
	case has(tables.Stainless):
		return "weld it with a stainless filler, or bolt it"
	}
	return "weld it, or bolt it"
}

// carries compares a load with what the joint carries.
func (f *fitting) carries(card *calc.Card) {
	if !card.Job.Load.Set {
		if card.Used.Use == "load" {
			f.say(WithCare, "it carries a load that was not given: nothing is held against the joint", calc.OwnCalc, "the job", "")
		}
		return
	}
	if calc.Applies(string(tables.CastIron), card) {
		f.say(AnotherWay, "a casting that carries a load: no load is allowed on brazed cast iron here", "common practice, no source", "common practice, no source", "a new part, or a repair that a qualified person plans")
		return
	}
	s, err := Strength(card)
	if err != nil {
		f.say(WithCare, "the load cannot be held against this joint: "+err.Error(), calc.OwnCalc, filletSource, "")
		return
	}
	allow, ok := s.Figure("allowable_load")
	if !ok {
		return // service too warm, or an overlay: reported elsewhere
	}
	if card.Job.Load.V > allow.Value {
		f.say(AnotherWay, fmt.Sprintf("%.3g kN is more than the %.3g kN to allow on this seam", card.Job.Load.V, allow.Value), calc.OwnCalc, filletSource, "a longer seam or fuller throat, a stronger filler, rivets or bolts, or a weld")
		return
	}
	f.say(WithCare, fmt.Sprintf("%.3g kN of the %.3g kN to allow: structural, lifting, pressure or vehicle loads are a qualified person's to decide", card.Job.Load.V, allow.Value), calc.OwnCalc, filletSource, "")
}

// heat says whether any setting is good, or this one is.
func (f *fitting) heat(card *calc.Card) {
	switch card.Zone {
	case "good":
		f.say(Suits, "at this setting the bead wets and the base stays solid", calc.OwnCalc, calc.SectionSource, "")
	case "cold", "hot", "burn-through":
		f.say(WithCare, "at this setting the heat is "+card.Zone+": look on the map for another", calc.OwnCalc, calc.SectionSource, "")
	case "not-modelled":
		f.say(WithCare, "no verdict on wetting and melting: judge it on a test bead", calc.OwnCalc, calc.SectionSource, "")
	}
}

// use judges what the joint is for.
func (f *fitting) use(card *calc.Card) {
	const practice = "common practice, no source"
	switch card.Used.Use {
	case "":
		f.say(Suits, "what it is for was not said: decorative, seal, load, wear or bearing", calc.OwnCalc, "the job", "")
	case "seal":
		f.say(WithCare, "wet service: beside bronze, bare steel or zinc corrodes; paint or seal over the joint on both faces", practice, practice, "")
	case "wear", "bearing":
		if card.Used.Joint != "overlay" {
			f.say(AnotherWay, "a surface that rubs or bears is laid as an overlay, not as a "+card.Used.Joint, practice, practice, "an overlay on the part (joint overlay)")
			return
		}
		if id := card.Setup.Filler.ID; !calc.AluminiumWire(id) && id != "cusn6" {
			f.say(WithCare, "this wire, "+card.Setup.Filler.Name+", is softer than the bearing bronzes: aluminium bronze or tin bronze", practice, practice, "")
			return
		}
		f.say(Suits, "aluminium bronze makes a wear or bearing surface; a shaft's fatigue strength falls under an overlay", practice, practice, "")
	case "decorative":
		f.say(Suits, "a golden bead that needs little grinding", "read", "TWI Job Knowledge 134; the rest common practice", "")
	}
}
