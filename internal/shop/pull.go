package shop

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"brazebooth/calc"
	"brazebooth/calc/learned"
	"brazebooth/internal/book"
	"brazebooth/internal/quantity"
)

// breakPlaces are the places where a pulled piece may break, as typed.
var breakPlaces = []string{"sheet", "bronze", "bond"}

// SavePull saves a test piece of the shop that was pulled until it broke. r.Pull has its load and where it broke; the
// job says how it was laid and how long its seam is. The answer says what the pieces of this joint teach now.
func (s *Shop) SavePull(ctx context.Context, r book.Reading, job calc.Job) (Done, error) {
	return s.act(func(done *Done) error {
		book.Clean(&r)
		pull := &r.Pull
		pull.Broke = strings.ToLower(strings.TrimSpace(pull.Broke))
		switch {
		case strings.TrimSpace(r.Source) == "":
			return wrong("a pulled piece without a power source", `type --power-source "booth 1"`)
		case !(pull.Force > 0):
			return wrong("a pulled piece without the load at which it broke", "type --force 42kN")
		case !job.Length.Set:
			return wrong("a load says nothing without the length of the seam", "type --length 100mm as measured")
		case !slices.Contains(breakPlaces, pull.Broke):
			return wrong("where it broke is not one of "+strings.Join(breakPlaces, ", "), "type --broke bond")
		}
		used, err := calc.Complete(job)
		if err != nil {
			return err
		}
		r.Filler, r.Wire, r.Mode = used.Filler, used.Wire.V, used.Mode
		if pull.For, err = calc.PulledKeyOf(job); err != nil {
			return err
		}
		pull.Length = used.Length.V
		pull.Throat = job.Throat.V
		err = s.saveAt(ctx, done, book.ReadingKind, &r, &r.Source, func(b book.Book) error {
			list, err := Pulls(ctx, b, r.Source)
			done.Lines = append(done.Lines, PullLessons(list)...)
			return err
		})
		done.What = "pulled piece of " + r.Source
		return err
	})
}

// Pull is SavePull of a piece of the card's job; force in kN.
func (s *Shop) Pull(ctx context.Context, job calc.Job, force float64, broke, source string) (said string, err error) {
	return inWords(s.SavePull(ctx, book.Reading{Source: source, Pull: book.Pulled{Force: force, Broke: broke}}, job))
}

// Pulls are the pulled pieces of a power source that are not withdrawn, oldest first; "" for all power sources.
func Pulls(ctx context.Context, b book.Book, source string) ([]Kept[book.Reading], error) {
	return readings(ctx, b, source, true)
}

// pulledOf is what the pieces of the joint with this key teach.
func pulledOf(list []Kept[book.Reading], key string) learned.Pulled {
	var carried []float64
	for i := range list {
		if p := &list[i].Body.Pull; p.For == key && p.Length > 0 {
			carried = append(carried, 1000*p.Force/p.Length)
		}
	}
	return learned.PulledBy(key, carried)
}

// PullLessons are lines about what the pieces of each joint teach.
func PullLessons(list []Kept[book.Reading]) (lines []string) {
	var keys []string
	for i := range list {
		if key := list[i].Body.Pull.For; !slices.Contains(keys, key) {
			keys = append(keys, key)
		}
	}
	for _, key := range keys {
		p := pulledOf(list, key)
		text := fmt.Sprintf("%s: %s", key, quantity.Count(p.Count, "pulled piece"))
		if bound, k, err := p.Bound(); err == nil {
			text += fmt.Sprintf(", 95 of 100 carry %.0f N/mm (confidence 95 in 100, k %.2f)", bound, k)
		} else {
			text += ", from five on they give a bound"
		}
		lines = append(lines, text)
	}
	return lines
}

// pulled adds to a job what the pieces of its joint taught.
func pulled(ctx context.Context, b book.Book, job *calc.Job, source string) error {
	list, err := Pulls(ctx, b, source)
	if err != nil || len(list) == 0 {
		return err
	}
	key, err := calc.PulledKeyOf(*job)
	if err != nil {
		return err
	}
	p := pulledOf(list, key)
	job.TakePulled(&p)
	return nil
}
