package advice

import (
	"context"
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

// fitting is a verdict while it is being formed.
type fitting struct {
	p     *Page
	level int
}

var twi = tables.Origin{Source: "TWI Job Knowledge 134", Known: tables.Read}

// say adds a reason and lowers the verdict to its level. in is what a shop does instead, or "": only that of the
// heaviest reasons is kept, since a lighter reason may advise what a heavier one forbids.
func (f *fitting) say(verdict string, o tables.Origin, in, format string, args ...any) {
	level := slices.Index(verdicts[:], verdict)
	if level > f.level {
		f.level, f.p.Instead = level, nil
	}
	f.p.Because(o, format, args...).Weight = float64(level) + 1
	if in != "" && level == f.level && !slices.Contains(f.p.Instead, in) {
		f.p.Instead = append(f.p.Instead, in)
	}
}

// Fit says whether this job should be arc-brazed at all: a verdict, its reasons (heaviest first) and
// alternatives.
func Fit(card *calc.Card) (Page, error) { return fit(card, nil) }

// FitContext is Fit with a comparison of ways to bridge an open root that the card's setting does not bridge.
// They are computed in parallel, since a timed arc takes up to a second. It stops with the context's error.
func FitContext(ctx context.Context, card *calc.Card) (Page, error) {
	if !unbridged(card) {
		return Fit(card)
	}
	ways, err := calc.RootWays(ctx, card.Job)
	if err != nil {
		return Page{}, err
	}
	return fit(card, ways)
}

// unbridged reports whether the card's setting does not bridge its open root, or that this is not judged.
func unbridged(card *calc.Card) bool {
	return card.Warned("gap-not-bridged") || card.Warned("gap-not-judged")
}

func fit(card *calc.Card, ways []calc.Remedy) (Page, error) {
	p := Page{Name: "fit", Card: *card}
	f := fitting{p: &p}
	f.hazards(card)
	f.warned(card)
	f.metals(card)
	f.thickness(card)
	f.service(card)
	f.carries(card)
	f.heat(card)
	f.missed(card)
	f.ways(ways)
	f.use(card)
	if f.level == stopWeight-1 { // reasons in favour no longer matter
		p.Reasons = slices.DeleteFunc(p.Reasons, func(r Reason) bool { return r.Weight == 1 })
	}
	slices.SortStableFunc(p.Reasons, func(a, b Reason) int { return int(b.Weight) - int(a.Weight) })
	p.Verdict = verdicts[f.level]
	return p, nil
}

// hazards gives the hazards that stop the job whatever the numbers say, or says that they were not asked about.
func (f *fitting) hazards(card *calc.Card) {
	given := card.Used.Hazard
	if given == "" {
		f.say(WithCare,
			tables.Origin{Source: "29 CFR 1910.252 and common practice", Known: "common practice, no source"}, "",
			"not answered: used or sealed container, pressure, gas line, cadmium, lead, beryllium, confined space, "+
				"vehicle structure, stove's fire parts? Each of them stops the job")
		return
	}
	ids := strings.Split(given, ",")
	for _, h := range tables.Hazards { // in the table's order: the drum before its lining
		if slices.Contains(ids, h.ID) {
			f.say(StopWork, h.Origin, h.Instead, "%s: %s", h.Name, h.Why)
		}
	}
	if given == "none" {
		f.say(Suits, tables.Origin{Source: "the job", Known: "given"}, "",
			"asked and answered: none of the things that stop a job")
	}
}

// missed says what the setting misses besides heat: the metal may not bridge the gap or may run away from where it is
// laid, the arc may be unsteady, the travel not a hand's.
func (f *fitting) missed(card *calc.Card) {
	for _, e := range card.Edges {
		switch {
		case e.Met:
		case e.Name == "gap bridged":
			f.say(WithCare, ownSection, calc.OverOpening(card),
				"a gap of %.2g mm is more than this setting bridges", card.Used.Gap.V)
		case e.Name == "metal stays up":
			f.say(WithCare, ownSection, "a smaller bead in more passes, or the part turned so that the seam lies flat",
				"in this position the bead runs before it freezes")
		case card.Zone == "good":
			f.say(WithCare, ownSection, "", "at this setting the heat is good, but “%s” is not met: the window shows "+
				"where it is", e.Name)
		}
	}
}

// ways lists the ways to bridge an open root in the given order, each with the heat that it takes.
func (f *fitting) ways(list []calc.Remedy) {
	if card := &f.p.Card; len(list) == 0 && unbridged(card) {
		f.say(WithCare, ownSection, "", "ways over this opening: not judged, because the model does not "+
			"reach so far; try %s", calc.OverOpening(card))
	}
	for i := range list {
		w := &list[i]
		switch {
		case w.Opens && w.Heat > 0:
			f.say(WithCare, ownSection, "", "%s: works by computation, %.0f %% to its nearest edge, %.0f J/mm",
				w.Change, w.Margin, w.Heat)
		case !w.Opens:
			f.say(WithCare, ownSection, "", "%s: no setting is good by computation", w.Change)
		}
	}
}

// use judges the joint by its purpose.
func (f *fitting) use(card *calc.Card) {
	switch card.Used.Use {
	case "":
		f.say(Suits, tables.Origin{Source: "the job", Known: "from the job"}, "",
			"its use was not given: decorative, seal, load, wear or bearing")
	case "seal":
		f.say(WithCare, practice, "",
			"wet service: beside bronze, bare steel or zinc corrodes; paint or seal over the joint on both faces")
	case "wear", "bearing":
		if card.Used.Joint != "overlay" {
			f.say(AnotherWay, practice, "an overlay on the part (joint overlay)",
				"a surface that rubs or bears is laid as an overlay, not by the joint %s", card.Used.Joint)
			return
		}
		if wire := &card.Setup.Filler; !calc.AluminiumWire(wire.ID) && wire.ID != "cusn6" && !wire.Comparison() {
			f.say(WithCare, practice, "", "this wire, %s, is softer than the bearing bronzes: aluminium "+
				"bronze or tin bronze", wire.Name)
			return
		}
		f.say(Suits, practice, "",
			"aluminium bronze makes a wear or bearing surface; a shaft's fatigue strength falls under an overlay")
	case "decorative":
		f.say(Suits, tables.Origin{Source: "TWI Job Knowledge 134; the rest common practice", Known: "read"}, "",
			"a golden bead that needs little grinding")
	}
}
