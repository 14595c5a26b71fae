package program

import (
	"context"
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"
	"sync"

	"brazebooth/calc"
	"brazebooth/calc/practice"
	"brazebooth/internal/book"
	"brazebooth/internal/cli"
	"brazebooth/internal/mistake"
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
	fault  func(error)     // takes an error whole of which they are told in other words; nil: nobody does
	saving *sync.WaitGroup // what is on its way to the book; nothing of it is left behind at the end
}

// newDesk is the book at that place as somebody uses it, nil without a book.
func newDesk(where, who, from string) *desk {
	if where == "" {
		return nil
	}
	return &desk{where: where, beside: inData("offline.db"), saving: new(sync.WaitGroup), author: book.Author{Who: who, Where: from, Program: cli.Version}}
}

func (d desk) with(ctx context.Context, do func(book.Book) error) error {
	b, err := book.Read(ctx, d.where)
	if err != nil {
		return d.said(err)
	}
	return d.said(errors.Join(do(b), b.Close()))
}

// said is an error whose words are safe for a terminal, and for who sits at another machine.
func (d desk) said(err error) error {
	if d.remote && errors.Is(err, book.ErrNone) {
		return book.ErrNone // without the place that was looked at
	}
	if d.remote {
		err = cli.ToldGuest(err, d.where, d.fault)
	}
	if err == nil || errors.Is(err, book.ErrNone) {
		return err
	}
	return errors.New(plain.Line(err.Error(), 400))
}

// save keeps new records in the book, beside it while its server is away, or else, of who sits here, in a file that can be taken
// in later.
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
	if d.remote { // a guest could not fetch the file, and the server keeps nothing for anybody outside the book
		return "", err
	}
	if file, failed := book.Rescue(list...); failed == nil {
		err = fmt.Errorf("%w; it lies in %s, for: brazebooth book import %s", err, file, file)
	}
	return "", err
}

// put makes a new record and saves it; done is said where it went into the book itself.
func (d desk) put(ctx context.Context, kind book.Kind, body any, done string) (string, error) {
	r, err := d.author.New(kind, body)
	if err != nil {
		return "", err
	}
	beside, err := d.save(ctx, r)
	if err == nil && beside != "" {
		return cli.ToldBeside(beside, d.remote), nil
	}
	return done, d.said(err)
}

func (d desk) Keep(ctx context.Context, name string, card *calc.Card) (string, error) {
	kept := book.Card{Name: name, Job: card.Job, Card: book.Keep(card)}
	kept.Clean()
	if strings.TrimSpace(kept.Name) == "" {
		return "", errors.New("a card without a name")
	}
	return d.put(ctx, book.CardKind, kept, "kept: "+kept.Name)
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
		if err != nil {
			return err
		}
		r, err := b.Get(ctx, id)
		text += cli.RecordCommands(r.Kind, r.ID)
		lines = strings.Split(strings.TrimRight(text, "\n"), "\n")
		return err
	})
	return lines, err
}

func (d desk) entries(ctx context.Context, q book.Query) ([]tui.Entry, error) {
	var list []tui.Entry
	err := d.with(ctx, func(b book.Book) error {
		heads, err := b.List(ctx, q)
		list = entriesOf(ctx, b, heads, q.Text)
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
	return d.put(ctx, book.TrialKind, t, "kept in the book: a test bead, "+verdict)
}

// Practice keeps how a practice job went: a kind of its own, from which nothing is learned.
func (d desk) Practice(ctx context.Context, how practice.Outcome) (string, error) {
	return d.put(ctx, book.PracticeKind, how, "kept: practice, "+plain.Line(how.Line(), 200))
}

// Enter is the command of that kind.
func (d desk) Enter(ctx context.Context, kind string, given map[string]string) (string, error) {
	args := []string{"book", kind}
	for _, name := range slices.Sorted(maps.Keys(given)) {
		if kind != "person" {
			args = append(args, "--"+name+"="+given[name])
		}
	}
	if kind == "person" {
		args = append(args, "--", given["name"])
	}
	return d.command(ctx, args...)
}

// Mark is the command that deletes, or the one that brings back.
func (d desk) Mark(ctx context.Context, kind, id string, deleted bool) error {
	name := map[bool]string{true: "delete", false: "restore"}[deleted]
	_, err := d.command(ctx, "book", name, "--kind", kind, "--", id)
	return err
}

// command runs one of the book's, and says what it said last.
func (d desk) command(ctx context.Context, args ...string) (string, error) {
	d.saving.Add(1)
	defer d.saving.Done()
	var out, told strings.Builder
	deps := cli.Deps{Out: &out, Err: &told, Fault: d.fault, LookOnly: d.look, Remote: d.remote, Book: d.where, Beside: d.beside, Who: d.author.Who, Where: d.author.Where, Now: d.author.Now}
	if code := cli.Run(ctx, args, deps); code != 0 {
		what, hint, _ := strings.Cut(strings.TrimPrefix(told.String(), "brazebooth: "), "\n")
		return "", mistake.New(plain.Line(what, 200), plain.Line(strings.TrimSpace(hint), 200))
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
