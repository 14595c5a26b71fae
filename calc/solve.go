package calc

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"

	"brazebooth/calc/effort"
	"brazebooth/calc/formula"
	"brazebooth/calc/section"
	"brazebooth/internal/mistake"
	"brazebooth/tables"
)

// Solve computes the card for a job. It is pure and never panics: what is missing is assumed and marked so. For a job
// that cannot be computed the error is a *mistake.Error that says what would be accepted.
func Solve(job Job) (Card, error) { return SolveContext(context.Background(), job) }

// SolveContext is Solve for a caller who may leave before the card is there: an odd job can take some tenths of a
// second. It stops with the context's error once that is cancelled.
func SolveContext(ctx context.Context, job Job) (Card, error) { return solve(effort.New(ctx), job) }

// Answer is the card of a job: by Solve, or by SolveTimed where the arc is timed. A timed arc takes up to seconds and
// reports the share done to progress, if that is not nil. Errors as theirs, and the context's once it is cancelled.
func Answer(ctx context.Context, job Job, progress func(done float64)) (Card, error) {
	if job.Mode != "timed" {
		return SolveContext(ctx, job)
	}
	s, err := SolveTimed(ctx, job, progress)
	return s.Card, err
}

// solve is Solve, whose work counts on an answer's account.
func solve(e *effort.Account, job Job) (Card, error) {
	card, err := compute(e, job, true)
	if err != nil && (job.PartWidth.Set || job.PartMass.Set) {
		// What stops a job is said also where the whole part would get too hot to compute it.
		if cold, _ := compute(e, job, false); cold.Stopped() {
			card, err = cold, nil
		}
	}
	if err := e.Over(); err != nil {
		return Card{}, err
	}
	return card, err
}

// compute makes the card, of a part that warms up or of one that stays as it starts. Once the caller has left it
// hurries to its end, and its result is not used.
func compute(e *effort.Account, job Job, warms bool) (Card, error) {
	b, card, err := laidOut(e, job)
	if err != nil {
		return Card{}, err
	}
	b.partStays = !warms
	sug, err := b.suggest(card)
	if err != nil {
		return Card{}, settingError(err, card)
	}
	b.take(card, &sug)
	s, err := b.spread()
	if err != nil {
		return Card{}, settingError(err, card)
	}
	b.complete(card, s)
	v, err := b.verdict(card, s)
	if err != nil {
		return Card{}, settingError(err, card)
	}
	card.Zone, card.Edges, card.Section = v.zone, v.edges(), v.section(card)
	card.Unjudged = v.unjudged()
	b.settle(&sug, card, &v)
	b.figures(card, s, &sug, &v)
	if err := b.heavierThanBead(card, s.value[oWidth]); err != nil {
		return Card{}, err
	}
	up := b.warmUp(card, &v)
	card.Figures = append(append(card.Figures, up.figures(b, card)...), b.partFigures(card, s)...)
	card.Chance = v.chance
	card.Notes = notes(card, s)
	warn(card, b, s, &sug, &v, &up)
	card.boilsOff()
	return *card, nil
}

// boilsOff removes a peak temperature that no metal reaches: the arc burns through long before.
func (c *Card) boilsOff() {
	c.Figures = slices.DeleteFunc(c.Figures, func(f Figure) bool {
		return f.Name == "base_peak_temperature" && f.Value > tables.IronBoils.V
	})
}

// settingError names the setting behind an error of a formula that was asked outside its range.
func settingError(err error, card *Card) error {
	if !errors.Is(err, formula.ErrRange) && !errors.Is(err, section.ErrRange) {
		return err
	}
	part := ""
	if card.Used.PartWidth.Set || card.Used.PartMass.Set {
		part = "give a shorter seam, or the whole part's width and mass; or "
	}
	if j := &card.Job; !j.Feed.Set && !j.Amps.Set && !j.Travel.Set {
		return mistake.In("feed", fmt.Sprintf("none is found for this job (%v)", err),
			part+"change thickness, preheat, gap, wire, stick-out or mode")
	}
	return mistake.In("feed", fmt.Sprintf("no card is computed with it (%v)", err),
		part+"leave feed and travel out for a suggestion, or change the wire, the stick-out or the amps")
}

// take puts the suggestion on the board.
func (b *board) take(card *Card, sug *suggestion) {
	u := &card.Used
	if !u.Feed.Set && !b.chain.ampsGiven {
		b.exact(inFeed, sug.feed)
	}
	if !u.Travel.Set && sug.travel > 0 && !b.chain.timed && !b.chain.plug {
		b.exact(inTravel, sug.travel)
	}
}

// complete writes what was found into Used, so that Solve(Used) gives the same values.
func (b *board) complete(card *Card, s *spread) {
	u := &card.Used
	fill := func(o *Opt, v float64) {
		if !o.Set && v > 0 {
			*o = Some(v)
		}
	}
	fill(&u.Feed, s.value[oFeedMin])
	u.Amps = Opt{} // the feed, or the learned calibration, now holds them
	if b.chain.timed {
		fill(&u.ArcOn, s.value[oOn])
		fill(&u.ArcOff, s.value[oOff])
		fill(&u.SpotStep, s.value[oStep])
	} else if !b.chain.plug {
		fill(&u.Travel, s.value[oTravel])
	}
}

// figures builds the card's figures in the order in which a welder needs them.
func (b *board) figures(card *Card, s *spread, sug *suggestion, v *verdict) {
	list := make([]Figure, 0, len(settingSpecs)+len(resultSpecs)+4)
	for i := range settingSpecs {
		f, ok := b.figure(&settingSpecs[i], s)
		if !ok {
			continue
		}
		b.settingBasis(&f, card, sug, v)
		list = append(list, f)
	}
	list = dialFigures(card, append(list, tableFigures(card)...))
	for i := range resultSpecs {
		if !v.modelled && sheetAlone(card, resultSpecs[i].name) {
			continue
		}
		if f, ok := b.figure(&resultSpecs[i], s); ok {
			list = append(list, f)
		}
	}
	if f, ok := b.passes(card, s); ok {
		list = append(list, f)
	}
	if v.modelled {
		list = b.sectionFigures(list, card, s, v)
	}
	card.Figures = list
}

// sheetAlone reports that a figure's closed form is for sheet, and its member is plate: the form spreads the heat over
// the whole thickness at once, and so finds a zinc band half as wide in plate as the section does.
func sheetAlone(card *Card, name string) bool {
	m := card.Setup.Members
	switch {
	case name == "bead_width":
		return MinCore(card.Setup.Joined()) > tables.SheetThickest.V
	case !strings.HasPrefix(name, "zinc_"):
		return false
	case strings.HasSuffix(name, "_2"):
		return m[1].Core > tables.SheetThickest.V
	}
	return m[0].Core > tables.SheetThickest.V
}

// settingBasis says whether a setting was given, was suggested, or follows from another.
func (b *board) settingBasis(f *Figure, card *Card, sug *suggestion, v *verdict) {
	job := &card.Job
	suggested := OwnBasis(suggestFormula, "a search over cross-sections; the window shows every feed and travel")
	switch {
	case !v.modelled:
		suggested = OwnBasis(usualFormula, "a current at which the arc burns steadily")
	case !v.met():
		suggested.Formula = missFormula
	}
	given := map[string]bool{"wire_feed": job.Feed.Set, "travel": job.Travel.Set, "volts": job.Volts.Set,
		"arc_on": job.ArcOn.Set, "arc_off": job.ArcOff.Set, "spot_step": job.SpotStep.Set}
	switch {
	case given[f.Name]:
		f.Basis = givenBasis
	case f.Name == "wire_feed" && !b.chain.ampsGiven:
		f.Low, f.High, f.Basis = sug.feedLow*0.06, sug.feedHigh*0.06, suggested
	case f.Name == "travel" && !b.chain.timed:
		f.Low, f.High, f.Basis = sug.travelLow, sug.travelHi, suggested
	}
}

// tableFigures are the settings that come unchanged from a table row or from the user.
func tableFigures(card *Card) []Figure {
	list := make([]Figure, 0, 4)
	u := &card.Used
	if card.Job.Flow.Set {
		list = append(list, GivenFigure("gas_flow", u.Flow.V, "L/min"))
	} else {
		list = append(list, usualGas(&card.Job, &card.Setup.Gas))
	}
	if card.Job.StickOut.Set {
		list = append(list, GivenFigure("stickout", u.StickOut.V, "mm"))
	} else {
		list = append(list, RowFigure("stickout", tables.DefaultStickOut, "assumed: tip to arc, not measured"))
	}
	hold, _ := tables.Holds.ByID(u.Position)
	return append(list, RowFigure("gun_angle", hold.Lean, hold.Way+", from square to the seam"))
}
