package shop

import (
	"context"
	"math"
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/book"
	"brazebooth/internal/choice"
)

// Difference is one figure in two cards.
type Difference struct {
	Name string  `json:"name"`
	Unit string  `json:"unit"`
	A    float64 `json:"a"`
	B    float64 `json:"b"`
	By   float64 `json:"by"` // % of a; 0 if a is zero
	Why  string  `json:"why,omitempty"`
}

// Differences are the figures that differ between two cards; for a figure that only one has, the other value is 0.
func Differences(a, b *book.Kept) []Difference {
	var list []Difference
	in := map[string]book.Figure{}
	for _, f := range b.Figures {
		in[f.Name] = f
	}
	for _, f := range a.Figures {
		g, ok := in[f.Name]
		delete(in, f.Name)
		if ok && math.Abs(f.Value-g.Value) <= 1e-9*math.Abs(f.Value) {
			continue
		}
		by, why := 0.0, ""
		if f.Value != 0 {
			by = 100 * (g.Value/f.Value - 1)
		}
		switch {
		case !ok:
			why = "only the first has it"
		case f.Formula != g.Formula:
			why = f.Formula + " → " + g.Formula
		case f.Source != g.Source:
			why = f.Source + " → " + g.Source
		}
		list = append(list, Difference{f.Name, f.Unit, f.Value, g.Value, by, why})
	}
	for _, g := range b.Figures {
		if _, left := in[g.Name]; left {
			list = append(list, Difference{g.Name, g.Unit, 0, g.Value, 0, "only the second has it"})
		}
	}
	return list
}

// Compare finds two kept cards and their differences.
func Compare(ctx context.Context, from book.Book, one, other string) (a, b book.Card, list []Difference, err error) {
	if _, a, err = CardOf(ctx, from, one); err == nil {
		_, b, err = CardOf(ctx, from, other)
	}
	return a, b, Differences(&a.Card, &b.Card), err
}

// Today are the differences between a kept card and the same job computed by this program. Differences in words alone
// are left out: a setting that was suggested then is given when it is computed again.
func Today(ctx context.Context, c *book.Card, progress func(done float64)) (list []Difference, err error) {
	card, err := calc.Answer(ctx, asWhenKept(&c.Card), progress)
	if err != nil {
		return nil, err
	}
	now := book.Keep(&card)
	for _, x := range Differences(&c.Card, &now) {
		if math.Abs(x.By) > 0.05 || x.A == 0 || x.B == 0 {
			list = append(list, x)
		}
	}
	return list, nil
}

// asWhenKept is the job of a kept card with its assumed choices cleared again, so that their uncertainty counts as it
// did then. A choice for which this program would assume another value keeps its value.
func asWhenKept(k *book.Kept) calc.Job {
	job := k.Used
	kept, err := calc.Complete(job)
	if err != nil {
		return job
	}
	for _, a := range k.Assumed {
		c := choice.ByName(strings.ReplaceAll(a.Field, "_", "-"))
		if c == nil {
			continue // a name of another version
		}
		open := job
		c.Clear(&open)
		if again, err := calc.Complete(open); err == nil && again == kept {
			job = open
		}
	}
	return job
}
