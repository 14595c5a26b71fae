package main

import (
	"context"
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"
	"sync"

	"brazebooth/calc"
	"brazebooth/internal/book"
	"brazebooth/internal/cli"
	"brazebooth/internal/plain"
	"brazebooth/internal/quantity"
	"brazebooth/tui"
)

// desk is the shop's book as the screens use it: opened for each question and closed again, so that a booth that is left
// running holds nothing.
type desk struct {
	where  string
	beside string // takes what a server cannot while it is away
	author book.Author
	look   bool            // nothing may be kept
	remote bool            // who asks sits at another machine
	saving *sync.WaitGroup // what is on its way to the book; nothing of it is left behind at the end
}

func (d desk) with(ctx context.Context, do func(book.Book) error) error {
	b, err := book.Read(ctx, d.where)
	if err != nil {
		return said(err)
	}
	return said(errors.Join(do(b), b.Close()))
}

// said is an error whose words are safe for a terminal.
func said(err error) error {
	if err == nil || errors.Is(err, book.ErrNone) {
		return err
	}
	return errors.New(plain.Line(err.Error(), 400))
}

// save keeps new records in the book, beside it while its server is away, or else in a file that can be taken in later.
func (d desk) save(ctx context.Context, list ...book.Revision) (beside string, err error) {
	if d.look {
		return "", cli.ErrLookOnly
	}
	d.saving.Add(1)
	defer d.saving.Done()
	beside, err = book.SaveOr(ctx, d.where, d.beside, list...)
	if err == nil {
		return beside, nil
	}
	if file, failed := book.Rescue(list...); failed == nil && !d.remote {
		err = fmt.Errorf("%w; it lies in %s, for: brazebooth book import %s", err, file, file)
	}
	return "", err
}

func (d desk) told(beside string) string {
	if d.remote {
		return cli.ToldGuest
	}
	return plain.Line(book.Told(beside), 400)
}

func (d desk) Keep(ctx context.Context, name string, card *calc.Card) (string, error) {
	kept := book.Card{Name: name, Job: card.Job, Card: book.Keep(card)}
	kept.Clean()
	if strings.TrimSpace(kept.Name) == "" {
		return "", errors.New("a card without a name")
	}
	r, err := d.author.New(book.CardKind, kept)
	if err != nil {
		return "", err
	}
	beside, err := d.save(ctx, r)
	if err == nil && beside != "" {
		return d.told(beside), nil
	}
	return "kept: " + kept.Name, said(err)
}

func (d desk) Find(ctx context.Context, text string) ([]tui.Entry, error) {
	return d.entries(ctx, book.Query{Kind: book.CardKind, Text: text})
}

func (d desk) Records(ctx context.Context, text string) ([]tui.Entry, error) {
	return d.entries(ctx, book.Query{Text: text})
}

func (d desk) Record(ctx context.Context, id string, units quantity.System) (lines []string, err error) {
	err = d.with(ctx, func(b book.Book) error {
		text, err := cli.RecordText(ctx, b, id, units)
		lines = strings.Split(strings.TrimRight(text, "\n"), "\n")
		return err
	})
	return lines, err
}

func (d desk) entries(ctx context.Context, q book.Query) ([]tui.Entry, error) {
	var list []tui.Entry
	err := d.with(ctx, func(b book.Book) error {
		heads, err := b.List(ctx, q)
		for _, h := range heads {
			list = append(list, tui.Entry{ID: h.ID, Kind: string(h.Kind), Name: plain.Line(h.Name, 60), At: h.At[:10], Line: plain.Line(h.Line, 100)})
		}
		return err
	})
	if errors.Is(err, book.ErrNone) { // no book yet: nothing is kept
		return nil, nil
	}
	return list, err
}

func (d desk) Trial(ctx context.Context, job calc.Job, seen, verdict, source string) (string, error) {
	card, err := calc.Solve(job)
	if err != nil {
		return "", err
	}
	t := book.Trial{Job: calc.Laid(&card), Seen: seen, Verdict: verdict, Source: source}
	t.Clean()
	r, err := d.author.New(book.TrialKind, t)
	if err != nil {
		return "", err
	}
	beside, err := d.save(ctx, r)
	if err == nil && beside != "" {
		return d.told(beside), nil
	}
	return "kept in the book: a test bead, " + verdict, said(err)
}

// Practice keeps how a practice job went: a kind of its own, from which nothing is learned.
func (d desk) Practice(ctx context.Context, how calc.Practised) (string, error) {
	r, err := d.author.New(book.PracticeKind, how)
	if err != nil {
		return "", err
	}
	beside, err := d.save(ctx, r)
	if err == nil && beside != "" {
		return plain.Line(book.Told(beside), 400), nil
	}
	return "kept: practice, " + plain.Line(how.Line(), 200), said(err)
}

// Enter is the command of that kind.
func (d desk) Enter(ctx context.Context, kind string, given map[string]string) (string, error) {
	d.saving.Add(1)
	defer d.saving.Done()
	args := []string{"book", kind}
	for _, name := range slices.Sorted(maps.Keys(given)) {
		if kind != "person" {
			args = append(args, "--"+name+"="+given[name])
		}
	}
	if kind == "person" {
		args = append(args, "--", given["name"])
	}
	var out, told strings.Builder
	code := cli.Run(ctx, args, cli.Deps{Out: &out, Err: &told, LookOnly: d.look, Remote: d.remote, Book: d.where, Beside: d.beside, Who: d.author.Who, Where: d.author.Where, Now: d.author.Now})
	if code != 0 {
		what, hint, _ := strings.Cut(strings.TrimPrefix(told.String(), "brazebooth: "), "\n")
		return "", &quantity.Error{What: plain.Line(what, 200), Hint: plain.Line(strings.TrimSpace(hint), 200)}
	}
	if told.Len() > 0 { // kept beside
		return plain.Line(strings.TrimSpace(told.String()), 400), nil
	}
	lines := strings.Split(strings.TrimSpace(out.String()), "\n")
	return plain.Line(lines[len(lines)-1], 200), nil
}

func (d desk) Load(ctx context.Context, id string) (job calc.Job, err error) {
	err = d.with(ctx, func(b book.Book) error {
		r, err := b.Get(ctx, id)
		if err != nil {
			return err
		}
		c, err := book.Body[book.Card](&r)
		job = c.Job
		return err
	})
	return job, err
}

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
		return job, "", said(err)
	}
	if beside != "" {
		return job, d.told(beside), nil
	}
	taught, text, err := d.learn(ctx, kept, job)
	if err != nil { // it is kept all the same
		return job, "kept for " + kept.Source + ", but not learned from: " + plain.Line(err.Error(), 200), nil
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
