package shop

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"math"
	"strings"

	"brazebooth/calc"
	"brazebooth/calc/formula"
	"brazebooth/internal/book"
	"brazebooth/internal/quantity"
	"brazebooth/internal/report"
)

// beside is a value that the shop measured, and the figure that this program computes for the same job without what the
// shop's readings and trials taught, which would test the data against themselves.
type beside struct {
	at       string // day and record
	measured float64
	figure   calc.Figure
	flagged  bool // a flagged reading is listed but not counted
}

func (b *beside) inside() bool { return b.measured >= b.figure.Low && b.measured <= b.figure.High }

// Cut are the figures that are measured on a bead that was cut across, with their flags.
var Cut = [...]struct {
	Figure, Flag, Usage string
	Of                  func(*book.Measured) *float64
}{
	{"bead_width", "measured-width", "the bead's width from toe to toe, measured: 6.1mm",
		func(m *book.Measured) *float64 { return &m.Width }},
	{"wetted_width_2", "measured-leg", "from the joint to the toe on the second member, measured",
		func(m *book.Measured) *float64 { return &m.Leg }},
	{"throat", "measured-throat", "the throat of the cut bead, measured",
		func(m *book.Measured) *float64 { return &m.Throat }},
	{"zinc_boiled_halfwidth", "measured-zinc", "from the joint to where the first member's zinc is left, measured",
		func(m *book.Measured) *float64 { return &m.Zinc }},
}

// Validation compares computed with measured values, for each quantity: every value with its band and ratio, the mean
// ratio, the scatter, and how many are in the 95 % band.
func Validation(ctx context.Context, b book.Book, units quantity.System) ([]report.Block, error) {
	found := map[string][]beside{}
	readings, err := Readings(ctx, b, "")
	if err != nil {
		return nil, err
	}
	odd, err := setAside(readings)
	if err != nil {
		return nil, err
	}
	for i := range readings {
		besideReading(ctx, &readings[i], odd[readings[i].Revision.ID], found)
	}
	trials, err := all(ctx, b, book.TrialKind, func(t *book.Trial) bool { return t.Measured != book.Measured{} })
	for i := len(trials) - 1; i >= 0; i-- {
		besideTrial(ctx, &trials[i], found)
	}
	if err = cmp.Or(err, ctx.Err()); err != nil {
		return nil, err
	}
	var blocks []report.Block
	show := func(figure string) {
		if list := found[figure]; len(list) > 0 {
			blocks = append(blocks, compared(figure, list, units))
		}
	}
	show("current")
	show("volts")
	for _, m := range Cut {
		show(m.Figure)
	}
	if blocks == nil {
		blocks = append(blocks, report.Said{{Text: "Nothing in this book can be compared yet."}})
	}
	return append(blocks, report.Said{{Text: "Measure and keep more: book reading with amps and volts; book trial " +
		"with --measured-width, --measured-leg, --measured-throat, --measured-zinc. What this book has taught the " +
		"program is left out of the computed values."}}), nil
}

// setAside are the ids of the readings that are far from what the other readings with their power source, filler, wire
// and mode predict.
func setAside(list []Kept[book.Reading]) (map[string]bool, error) {
	type group struct {
		source, filler, mode string
		wire                 float64
	}
	groups := map[group][]Kept[book.Reading]{}
	for _, k := range list {
		g := group{strings.ToLower(k.Body.Source), k.Body.Filler, k.Body.Mode, k.Body.Wire}
		groups[g] = append(groups[g], k)
	}
	odd := map[string]bool{}
	for g, same := range groups {
		_, flagged, err := Learn(same, &calc.Job{Filler: g.filler, Mode: g.mode, Wire: calc.Some(g.wire)})
		switch {
		case errors.Is(err, book.ErrNone):
			continue // a filler that the tables no longer have; it has no card either
		case err != nil:
			return nil, err
		}
		for _, i := range flagged {
			odd[same[i].Revision.ID] = true
		}
	}
	return odd, nil
}

// besideReading compares a reading with a card of its wire and settings; a reading without a card is left out.
func besideReading(ctx context.Context, k *Kept[book.Reading], flagged bool, found map[string][]beside) {
	r := &k.Body
	// sheet and travel do not affect these figures
	job := calc.Job{Metal: "mild-steel", Thickness: calc.Some(1.5), Joint: "lap", Filler: r.Filler, Mode: r.Mode,
		Wire: calc.Some(r.Wire), Feed: calc.Some(r.Feed), Travel: calc.Some(8)}
	if r.StickOut > 0 {
		job.StickOut = calc.Some(r.StickOut)
	}
	card, err := calc.SolveContext(ctx, job)
	if err != nil {
		return
	}
	for name, v := range map[string]float64{"current": r.Amps, "volts": r.Volts} {
		keepBeside(found, name, beside{measured: v, flagged: flagged}, &card, &k.Revision)
	}
}

// besideTrial compares the measured sizes of a test bead with its job's card; a bead without a card is left out.
func besideTrial(ctx context.Context, k *Kept[book.Trial], found map[string][]beside) {
	card, err := calc.SolveContext(ctx, calc.Unlearned(k.Body.Job))
	if err != nil {
		return
	}
	for _, m := range Cut {
		keepBeside(found, m.Figure, beside{measured: *m.Of(&k.Body.Measured)}, &card, &k.Revision)
	}
}

func keepBeside(found map[string][]beside, name string, b beside, card *calc.Card, r *book.Revision) {
	if f, ok := card.Figure(name); ok && b.measured > 0 && f.Value > 0 && f.Low < f.High {
		b.at, b.figure = r.At[:10]+" "+r.ID, f
		found[name] = append(found[name], b)
	}
}

// compared summarizes and lists the values of one quantity. A single value has neither a scatter nor a share.
func compared(name string, list []beside, units quantity.System) report.Said {
	in, count, sum, squares := 0, 0, 0.0, 0.0
	for i := range list {
		if list[i].flagged {
			continue
		}
		x := math.Log(list[i].figure.Value / list[i].measured)
		sum, squares, count = sum+x, squares+x*x, count+1
		if list[i].inside() {
			in++
		}
	}
	n := float64(count)
	text := calc.FigureLabel(name) + ": " + quantity.Count(count, "value")
	if count > 0 {
		text += fmt.Sprintf(", computed over measured %.2f", math.Exp(sum/n))
	}
	if count > 1 {
		low, high := formula.ShareBounds(in, count)
		mean := sum / n
		text += fmt.Sprintf(", scatter × %.2f; %d of %d in the 95 %% band (%.0f–%.0f %%)",
			math.Exp(math.Sqrt(max(0, squares-n*mean*mean)/(n-1))), in, count, 100*low, 100*high)
	}
	if flagged := len(list) - count; flagged > 0 {
		text += fmt.Sprintf("; %d flagged, not counted", flagged)
	}
	said := report.Said{{Text: text}}
	for i := range list {
		b := &list[i]
		where := "in"
		if !b.inside() {
			where = "OUT"
		}
		if b.flagged {
			where += ", flagged: not counted"
		}
		f, sys := &b.figure, units.Lead()
		value, from, to := quantity.Ends(f.Value, f.Low, f.High, f.Unit, sys)
		measured, _ := quantity.Band(b.measured, f.Low, f.High, f.Unit, sys)
		said = append(said, item(fmt.Sprintf("%s: measured %s, computed %s (%s–%s) %s, ratio %.2f, %s", b.at, measured,
			value, from, to, quantity.Label(f.Unit, sys), f.Value/b.measured, where)))
	}
	return said
}
