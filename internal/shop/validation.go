package shop

import (
	"context"
	"fmt"
	"math"

	"brazebooth/calc"
	"brazebooth/calc/formula"
	"brazebooth/internal/book"
	"brazebooth/internal/quantity"
	"brazebooth/internal/report"
)

// beside is a value that the shop measured beside what this program computes for the same job, without what the shop's
// readings and trials taught it: that would be a test by its own data.
type beside struct {
	at       string // day and record
	measured float64
	figure   calc.Figure
}

func (b *beside) inside() bool { return b.measured >= b.figure.Low && b.measured <= b.figure.High }

// measurable are the figures that a shop can measure, in the order in which they are shown.
var measurable = [...]struct {
	figure string
	of     func(*book.Measured) float64 // of a trial's bead; nil for readings
}{
	{"current", nil}, {"volts", nil},
	{"bead_width", func(m *book.Measured) float64 { return m.Width }},
	{"wetted_width_2", func(m *book.Measured) float64 { return m.Leg }},
	{"throat", func(m *book.Measured) float64 { return m.Throat }},
	{"zinc_boiled_halfwidth", func(m *book.Measured) float64 { return m.Zinc }},
}

// Validation is what was computed beside what this shop measured, quantity by quantity: every value with its band and
// ratio, the mean ratio, the scatter, and how many lie in the 95 % band.
func (s *Shop) Validation(ctx context.Context, units quantity.System) ([]report.Block, error) {
	found := map[string][]beside{}
	err := s.With(ctx, false, func(b book.Book) error {
		readings, err := Readings(ctx, b, "")
		if err != nil {
			return err
		}
		for i := range readings {
			besideReading(ctx, &readings[i], found)
		}
		trials, err := all(ctx, b, book.TrialKind, func(t *book.Trial) bool { return t.Measured != book.Measured{} })
		if err != nil {
			return err
		}
		for i := len(trials) - 1; i >= 0; i-- {
			besideTrial(ctx, &trials[i], found)
		}
		return ctx.Err()
	})
	if err != nil {
		return nil, err
	}
	var blocks []report.Block
	for _, m := range measurable {
		if list := found[m.figure]; len(list) > 0 {
			blocks = append(blocks, compared(m.figure, list, units))
		}
	}
	if blocks == nil {
		blocks = append(blocks, report.Said{{Text: "Nothing in this book can be compared yet."}})
	}
	return append(blocks, report.Said{{Text: "Measure and keep more: book reading with amps and volts; book trial with " +
		"--measured-width, --measured-leg, --measured-throat, --measured-zinc. What this book has taught the program is " +
		"left out of the computed values."}}), nil
}

// besideReading sets a reading beside a card with its wire and settings; one without a card is left out.
func besideReading(ctx context.Context, k *Kept[book.Reading], found map[string][]beside) {
	r := &k.Body
	job := calc.Job{Metal: "mild-steel", Thickness: calc.Some(1.5), Joint: "lap", Filler: r.Filler, Mode: r.Mode,
		Wire: calc.Some(r.Wire), Feed: calc.Some(r.Feed), Travel: calc.Some(8)} // sheet and travel move neither figure
	if r.StickOut > 0 {
		job.StickOut = calc.Some(r.StickOut)
	}
	card, err := calc.SolveContext(ctx, job)
	if err != nil {
		return
	}
	for name, v := range map[string]float64{"current": r.Amps, "volts": r.Volts} {
		keepBeside(found, name, v, &card, &k.Revision)
	}
}

// besideTrial sets what was measured on a test bead beside its job's card; one without a card is left out.
func besideTrial(ctx context.Context, k *Kept[book.Trial], found map[string][]beside) {
	card, err := calc.SolveContext(ctx, calc.Unlearned(k.Body.Job))
	if err != nil {
		return
	}
	for _, m := range measurable {
		if m.of != nil {
			keepBeside(found, m.figure, m.of(&k.Body.Measured), &card, &k.Revision)
		}
	}
}

func keepBeside(found map[string][]beside, name string, measured float64, card *calc.Card, r *book.Revision) {
	if f, ok := card.Figure(name); ok && measured > 0 && f.Value > 0 && f.Low < f.High {
		found[name] = append(found[name], beside{r.At[:10] + " " + r.ID, measured, f})
	}
}

// compared says of one quantity how its values compare.
func compared(name string, list []beside, units quantity.System) report.Said {
	in, sum, squares := 0, 0.0, 0.0
	for i := range list {
		x := math.Log(list[i].figure.Value / list[i].measured)
		sum, squares = sum+x, squares+x*x
		if list[i].inside() {
			in++
		}
	}
	n := float64(len(list))
	mean, scatter := sum/n, ""
	if n > 1 {
		scatter = fmt.Sprintf(", scatter × %.2f", math.Exp(math.Sqrt(max(0, squares-n*mean*mean)/(n-1))))
	}
	low, high := formula.ShareBounds(in, len(list))
	said := report.Said{{Text: fmt.Sprintf(
		"%s: %s, computed over measured %.2f%s; %d of %d in the 95 %% band (%.0f–%.0f %%)", calc.FigureLabel(name),
		quantity.Count(len(list), "value"), math.Exp(mean), scatter, in, len(list), 100*low, 100*high)}}
	for i := range list {
		b := &list[i]
		where := "in"
		if !b.inside() {
			where = "OUT"
		}
		f, sys := &b.figure, units.Lead()
		value, from, to := quantity.Ends(f.Value, f.Low, f.High, f.Unit, sys)
		measured, _ := quantity.Band(b.measured, f.Low, f.High, f.Unit, sys)
		said = append(said, item(fmt.Sprintf("%s: measured %s, computed %s (%s–%s) %s, ratio %.2f, %s", b.at, measured,
			value, from, to, quantity.Label(f.Unit, sys), f.Value/b.measured, where)))
	}
	return said
}
