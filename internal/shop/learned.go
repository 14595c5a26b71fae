package shop

import (
	"context"
	"math"
	"slices"
	"strings"

	"brazebooth/calc"
	"brazebooth/calc/learned"
	"brazebooth/internal/book"
	"brazebooth/tables"
)

// Kept is a record's body with its present revision.
type Kept[T any] struct {
	Revision book.Revision
	Body     T
}

// all are the present records of a kind for which wanted is true, newest first. A record of a newer program that cannot
// be read is left out.
func all[T any](ctx context.Context, b book.Book, kind book.Kind, wanted func(*T) bool) (list []Kept[T], err error) {
	err = book.Present(ctx, b, kind, func(r *book.Revision) error {
		if body, err := book.Body[T](r); err == nil && wanted(&body) {
			list = append(list, Kept[T]{*r, body})
		}
		return nil
	})
	return list, err
}

// Readings are the readings of a power source that are not withdrawn, oldest first; "" for all power sources.
func Readings(ctx context.Context, b book.Book, source string) ([]Kept[book.Reading], error) {
	return readings(ctx, b, source, false)
}

// readings are either those of pulled pieces or those measured while the arc ran.
func readings(ctx context.Context, b book.Book, source string, pulled bool) ([]Kept[book.Reading], error) {
	list, err := all(ctx, b, book.ReadingKind, func(r *book.Reading) bool {
		return (r.Pull.Force > 0) == pulled && (source == "" || strings.EqualFold(r.Source, source))
	})
	slices.Reverse(list)
	return list, err
}

// TrialsOf are the trials of a kept card, newest first.
func TrialsOf(ctx context.Context, b book.Book, card string) ([]Kept[book.Trial], error) {
	return all(ctx, b, book.TrialKind, func(t *book.Trial) bool { return t.Card == card })
}

// verdictsAt are the trials of a power source from which its heat can be learned, oldest first.
func verdictsAt(ctx context.Context, b book.Book, source string) (list []calc.Verdict, err error) {
	trials, err := all(ctx, b, book.TrialKind, func(t *book.Trial) bool { return strings.EqualFold(t.Source, source) })
	for _, t := range slices.Backward(trials) {
		if heat := learned.HeatOf(t.Body.Seen, t.Body.Verdict); heat != "" {
			list = append(list, calc.Verdict{Job: t.Body.Job, Heat: heat})
		}
	}
	return list, err
}

// Recall adds to a job a power source's plate, and what its readings and trials with this wire taught.
func (s *Shop) Recall(ctx context.Context, source string, job calc.Job) (taught calc.Job, err error) {
	taught = job
	err = s.With(ctx, false, func(b book.Book) error {
		taught, err = Calibrate(ctx, b, job, source)
		return err
	})
	return taught, err
}

// Calibrate is Recall from an open book.
func Calibrate(ctx context.Context, b book.Book, job calc.Job, source string) (calc.Job, error) {
	_, s, err := bodyOf[book.Source](ctx, b, book.SourceKind, source)
	if err != nil {
		return job, err
	}
	for _, f := range [...]struct {
		to   *calc.Opt
		from float64
	}{{&job.RatedAmps, s.RatedAmps}, {&job.RatedDuty, s.RatedDuty}, {&job.NozzleBore, s.Nozzle}} {
		if !f.to.Set && f.from > 0 {
			*f.to = calc.Some(f.from)
		}
	}
	return taught(ctx, b, job, s.Name)
}

// taught is a job with what the readings and trials of this power source with the job's wire taught, instead of another
// one's.
func taught(ctx context.Context, b book.Book, job calc.Job, source string) (calc.Job, error) {
	job = calc.Unlearned(job)
	used, err := calc.Complete(job)
	if err != nil {
		return job, err
	}
	list, err := Readings(ctx, b, source)
	if err != nil {
		return job, err
	}
	l, _, err := Learn(list, &used)
	if err != nil {
		return job, err
	}
	job.TakeMeter(&l)
	verdicts, err := verdictsAt(ctx, b, source)
	if err != nil {
		return job, err
	}
	e := calc.LearnEta(verdicts)
	job.TakeEfficiency(&e)
	dials := dialsOf(list, &used)
	job.FeedDial, job.VoltsDial = dials[0].line, dials[1].line
	if err := pulled(ctx, b, &job, source); err != nil || used.Mode != "timed" {
		return job, err
	}
	job.Rhythm, err = rhythmAt(ctx, b, source, &used, &job)
	return job, err
}

// rhythmAt is what a power source's trials of timed arcs with a completed job's filler and wire teach. Their current,
// volts and efficiency are computed with what taught has learned.
func rhythmAt(ctx context.Context, b book.Book, source string, used, taught *calc.Job) (learned.Rhythm, error) {
	trials, err := all(ctx, b, book.TrialKind, func(t *book.Trial) bool {
		j := &t.Job
		return strings.EqualFold(t.Source, source) && j.Mode == "timed" && j.ArcOn.Set && t.Seen != "" &&
			j.Filler == used.Filler && math.Abs(j.Wire.V-used.Wire.V) < 0.01
	})
	if err != nil {
		return learned.Rhythm{}, err
	}
	var list []calc.TimedTrial
	for _, t := range slices.Backward(trials) {
		j := t.Body.Job
		j.Learn(taught)
		list = append(list, calc.TimedTrial{Job: j, Seen: t.Body.Seen})
	}
	return calc.LearnRhythm(ctx, list, used.Filler, used.Wire.V)
}

// Learn is what a power source's readings with a completed job's filler, wire and mode teach. flagged are the indexes
// of readings that are far from what the others predict and are not confirmed; they teach nothing.
func Learn(list []Kept[book.Reading], used *calc.Job) (l learned.Meter, flagged []int, err error) {
	f, ok := tables.Fillers.ByID(used.Filler)
	if !ok {
		return l, nil, book.ErrNone
	}
	var taken []calc.Reading
	var at []int
	for i := range list {
		r := &list[i].Body
		if r.Filler == used.Filler && math.Abs(r.Wire-used.Wire.V) < 0.01 && r.Mode == used.Mode {
			taken = append(taken, calc.Reading{
				Feed: r.Feed, StickOut: r.StickOut, Amps: r.Amps, Volts: r.Volts, Confirmed: r.Confirmed})
			at = append(at, i)
		}
	}
	l, err = calc.Learn(&f, used.Wire.V, used.Mode, taken)
	for _, i := range slices.Concat(l.Phi.Flagged, l.Volts.Flagged) {
		flagged = append(flagged, at[i])
	}
	slices.Sort(flagged)
	return l, slices.Compact(flagged), err
}
