package tui

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"brazebooth/calc"
	"brazebooth/calc/practice"
	"brazebooth/internal/mistake"
	"brazebooth/internal/report"
	"brazebooth/tables"
)

// drawer is a book in memory.
type drawer struct {
	cards     []Entry
	gone      []Entry // deleted
	jobs      map[string]calc.Job
	readings  []calc.Reading
	travel    float64 // of the last reading
	entered   []string
	practised []practice.Outcome
	cuts      []string // test beads
	cutJob    calc.Job // of the last bead
	fail      error
	failCut   error
}

func (d *drawer) Keep(_ context.Context, name string, card *calc.Card) (string, error) {
	if d.fail != nil {
		return "", d.fail
	}
	id := fmt.Sprintf("%016d", len(d.cards))
	d.cards = append([]Entry{{id, "card", name, "2026-03-01", card.Used.Metal}}, d.cards...)
	if d.jobs == nil {
		d.jobs = map[string]calc.Job{}
	}
	d.jobs[id] = card.Job
	return "kept " + name, nil
}

func (d *drawer) List(_ context.Context, kind, text string) ([]Entry, error) {
	if kind == "source" {
		return []Entry{{Name: "booth 1"}}, nil
	}
	var list []Entry
	for _, e := range d.cards {
		if strings.HasPrefix(e.Name, text) {
			list = append(list, e)
		}
	}
	return list, d.fail
}

func (d *drawer) Mark(_ context.Context, _, id string, deleted bool) error {
	if d.fail != nil {
		return d.fail
	}
	if deleted {
		i := slices.IndexFunc(d.cards, func(e Entry) bool { return e.ID == id })
		d.gone = append(d.gone, d.cards[i])
		d.cards = slices.Delete(d.cards, i, i+1)
		return nil
	}
	last := len(d.gone) - 1
	d.cards, d.gone = append(d.cards, d.gone[last]), d.gone[:last]
	return nil
}

func (d *drawer) Load(_ context.Context, id string) (calc.Job, error) { return d.jobs[id], d.fail }

func (d *drawer) Measure(_ context.Context, source string, r calc.Reading, travel float64, job calc.Job) (calc.Job,
	string, error) {
	if d.fail != nil {
		return job, "", d.fail
	}
	d.readings, d.travel = append(d.readings, r), travel
	f, _ := tables.Fillers.ByID("cusi3")
	l, err := calc.Learn(&f, 0.889, "dip", d.readings)
	job.TakeMeter(&l)
	return job, "kept for " + source, err
}

func (d *drawer) Record(_ context.Context, id string) ([]report.Block, error) {
	return []report.Block{report.Said{{Text: "all of " + id}}, report.Said{{Text: "history"}}}, d.fail
}

func (d *drawer) Cut(_ context.Context, job calc.Job, seen, verdict, source string, m Measured) (string, error) {
	if err := cmp.Or(d.failCut, d.fail); err != nil {
		return "", err
	}
	d.cuts, d.cutJob = append(d.cuts, fmt.Sprint(seen, " ", verdict, " ", source, " ", m)), job
	return "kept: a bead that is " + cmp.Or(verdict, "bad"), nil
}

func (d *drawer) Recall(_ context.Context, _ string, job calc.Job) (calc.Job, error) {
	if len(d.readings) == 0 {
		return job, d.fail
	}
	f, _ := tables.Fillers.ByID("cusi3")
	l, err := calc.Learn(&f, 0.889, "dip", d.readings)
	job.TakeMeter(&l)
	return job, err
}

func (d *drawer) Practice(_ context.Context, how practice.Outcome) (string, error) {
	if d.fail != nil {
		return "", d.fail
	}
	d.practised = append(d.practised, how)
	return "kept: practice, " + how.Line(), nil
}

func (d *drawer) Enter(_ context.Context, kind string, given map[string]string) (string, error) {
	if given["rated-amps"] == "much" {
		return "", mistake.New("--rated-amps: much", "type 200A")
	}
	d.entered = append(d.entered, fmt.Sprint(kind, given))
	return "saved " + kind, d.fail
}

func openBook(t *testing.T, d *drawer, page string, size [2]int) *terminal {
	t.Helper()
	now := time.Date(2026, 3, 1, 8, 0, 0, 0, time.UTC)
	// each key comes six seconds after the last
	clock := func() time.Time { now = now.Add(6 * time.Second); return now }
	s := openAt(t, size[0], size[1], Options{Book: d, Now: clock, Gap: unfollowed, Opening: calc.Job{
		Metal: "mild-steel", Gauge: 18, Joint: "lap", Feed: calc.Some(6.35), Travel: calc.Some(10),
		StickOut: calc.Some(12)}})
	s.press("p")
	for !strings.Contains(s.text(), "["+page+"]") {
		s.press("right")
	}
	return s
}

// otherBooth deletes a card before it can be opened here.
type otherBooth struct{ *drawer }

func (o otherBooth) Load(ctx context.Context, id string) (calc.Job, error) {
	return calc.Job{}, errors.Join(o.Mark(ctx, "card", id, true), errors.New("it was deleted"))
}

func (o otherBooth) Record(ctx context.Context, id string) ([]report.Block, error) {
	_, err := o.Load(ctx, id)
	return nil, err
}
