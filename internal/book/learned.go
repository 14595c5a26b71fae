package book

import (
	"context"
	"math"
	"strings"

	"brazebooth/calc"
	"brazebooth/tables"
)

// ReadingOf is a reading with what keeps it.
type ReadingOf struct {
	Revision Revision
	Reading  Reading
	Flagged  bool // beyond what the others predict, and not confirmed
}

// Readings are those of a power source that stand, oldest first; "" for all power sources.
func Readings(ctx context.Context, b Book, source string) ([]ReadingOf, error) {
	var list []ReadingOf
	err := each(ctx, b, ReadingKind, func(r *Revision) error {
		d, err := Body[Reading](r)
		if err != nil {
			return nil // somebody else's: it teaches nothing
		}
		d.Clean()
		if source == "" || strings.EqualFold(d.Source, source) {
			list = append(list, ReadingOf{Revision: *r, Reading: d})
		}
		return nil
	})
	if err != nil {
		return nil, err
	}
	for i, j := 0, len(list)-1; i < j; i, j = i+1, j-1 {
		list[i], list[j] = list[j], list[i]
	}
	return list, nil
}

// Verdicts are the trials of a power source that tell of the heat, oldest first.
func Verdicts(ctx context.Context, b Book, source string) ([]calc.Verdict, error) {
	var list []calc.Verdict
	err := each(ctx, b, TrialKind, func(r *Revision) error {
		t, err := Body[Trial](r)
		if err != nil {
			return nil // somebody else's: it teaches nothing
		}
		if heat := calc.VerdictOf(t.Seen, t.Verdict); heat != "" && strings.EqualFold(t.Source, source) {
			list = append([]calc.Verdict{{Job: t.Job, Heat: heat}}, list...)
		}
		return nil
	})
	return list, err
}

// each visits the present records of a kind, newest first.
func each(ctx context.Context, b Book, kind Kind, visit func(*Revision) error) error {
	for offset := 0; ; offset += 500 {
		heads, err := b.List(ctx, Query{Kind: kind, Limit: 500, Offset: offset})
		if err != nil {
			return err
		}
		for _, h := range heads {
			r, err := b.Get(ctx, h.ID)
			if err != nil {
				return err
			}
			if err := visit(&r); err != nil {
				return err
			}
		}
		if len(heads) < 500 {
			return nil
		}
	}
}

// Calibrate puts a power source's plate into a job, and what its readings and trials with this wire taught.
func Calibrate(ctx context.Context, b Book, job calc.Job, name string) (calc.Job, error) {
	r, err := Resolve(ctx, b, SourceKind, name)
	if err != nil {
		return job, err
	}
	s, err := Body[Source](&r)
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
	return Taught(ctx, b, job, s.Name)
}

// Taught is a job with what a power source's readings and trials with its wire taught.
func Taught(ctx context.Context, b Book, job calc.Job, source string) (calc.Job, error) {
	job = calc.Unlearned(job) // what another power source taught is not this one's
	used, err := calc.Complete(job)
	if err != nil {
		return job, err
	}
	list, err := Readings(ctx, b, source)
	if err != nil {
		return job, err
	}
	l, err := Learn(list, used.Filler, used.Wire.V, used.Mode)
	if err != nil {
		return job, err
	}
	l.Put(&job)
	verdicts, err := Verdicts(ctx, b, source)
	if err != nil {
		return job, err
	}
	e := calc.LearnEta(verdicts)
	e.Put(&job)
	return job, nil
}

// Learn is what a power source's readings with one filler, wire and mode teach; it marks those that are flagged.
func Learn(list []ReadingOf, filler string, wire float64, mode string) (calc.Learned, error) {
	f, ok := tables.FillerByID(filler)
	if !ok {
		return calc.Learned{}, ErrNone
	}
	var taken []calc.Reading
	var at []int
	for i := range list {
		r := &list[i].Reading
		if r.Filler == filler && math.Abs(r.Wire-wire) < 0.01 && r.Mode == mode {
			taken = append(taken, calc.Reading{Feed: r.Feed, StickOut: r.StickOut, Amps: r.Amps, Volts: r.Volts, Confirmed: r.Confirmed})
			at = append(at, i)
		}
	}
	l, err := calc.Learn(&f, wire, mode, taken)
	for _, flagged := range [...][]int{l.Phi.Flagged, l.Volts.Flagged} {
		for _, i := range flagged {
			list[at[i]].Flagged = true
		}
	}
	return l, err
}

// TrialOf is a trial with what keeps it.
type TrialOf struct {
	Revision Revision
	Trial    Trial
}

// TrialsOf are the trials of a kept card, newest first.
func TrialsOf(ctx context.Context, b Book, card string) ([]TrialOf, error) {
	var list []TrialOf
	err := each(ctx, b, TrialKind, func(r *Revision) error {
		if t, err := Body[Trial](r); err == nil && t.Card == card {
			list = append(list, TrialOf{*r, t})
		}
		return nil
	})
	return list, err
}
