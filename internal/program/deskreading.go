package program

import (
	"context"
	"errors"

	"brazebooth/calc"
	"brazebooth/internal/book"
	"brazebooth/internal/cli"
	"brazebooth/internal/plain"
)

func (d desk) Sources(ctx context.Context) (names []string, err error) {
	err = d.with(ctx, func(b book.Book) error {
		heads, err := b.List(ctx, book.Query{Kind: book.SourceKind})
		for _, h := range heads {
			names = append(names, plain.Line(h.Name, 40))
		}
		return err
	})
	return names, err
}

func (d desk) Measure(ctx context.Context, source string, r calc.Reading, travel float64, job calc.Job) (calc.Job, string, error) {
	used, err := calc.Complete(job)
	if err != nil {
		return job, "", err
	}
	kept := book.Reading{Source: source, Filler: used.Filler, Wire: used.Wire.V, Mode: used.Mode, Feed: r.Feed, StickOut: r.StickOut, Amps: r.Amps, Volts: r.Volts, Travel: travel}
	kept.Clean()
	beside, err := d.record(ctx, kept)
	if err != nil {
		return job, "", d.said(err)
	}
	if beside != "" {
		return job, cli.ToldBeside(beside, d.remote), nil
	}
	taught, text, err := d.learn(ctx, kept, job)
	if err != nil { // it is kept all the same
		return job, "kept for " + kept.Source + ", but not learned from: " + d.said(err).Error(), nil
	}
	return taught, text, nil
}

func (d desk) Recall(ctx context.Context, source string, job calc.Job) (taught calc.Job, err error) {
	err = d.with(ctx, func(b book.Book) error {
		taught, err = book.Calibrate(ctx, b, job, source)
		return err
	})
	return taught, err
}

// learn puts what a power source's readings teach into a job.
func (d desk) learn(ctx context.Context, kept book.Reading, job calc.Job) (taught calc.Job, text string, err error) {
	err = d.with(ctx, func(b book.Book) error {
		list, err := book.Readings(ctx, b, kept.Source)
		if err != nil {
			return err
		}
		l, err := book.Learn(list, kept.Filler, kept.Wire, kept.Mode)
		if err != nil {
			return err
		}
		if taught, err = book.Taught(ctx, b, job, kept.Source); err != nil {
			return err
		}
		text = "kept for " + kept.Source
		if n := len(l.Phi.Flagged) + len(l.Volts.Flagged); n > 0 {
			text += "; a reading lies far from the others and is not used: brazebooth book reading shows it"
		}
		return nil
	})
	return taught, text, err
}

// record saves a reading, and its power source where nobody entered it yet.
func (d desk) record(ctx context.Context, kept book.Reading) (beside string, err error) {
	var list []book.Revision
	err = d.with(ctx, func(b book.Book) error {
		_, err := book.Named(ctx, b, book.SourceKind, kept.Source)
		return err
	})
	switch {
	case errors.Is(err, book.ErrNone):
		s, err := d.author.New(book.SourceKind, book.Source{Name: kept.Source})
		if err != nil {
			return "", err
		}
		list = append(list, s)
	case err != nil && !(book.IsServer(d.where) && book.Away(ctx, d.where)):
		return "", err
	}
	r, err := d.author.New(book.ReadingKind, kept)
	if err != nil {
		return "", err
	}
	return d.save(ctx, append(list, r)...)
}
