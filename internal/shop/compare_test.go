package shop

import (
	"context"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/book"
)

// A card that the same program computes again gets the same figures, whatever was assumed; also the chance, which an
// assumed stick-out lowers.
func TestTodayAgreesWithItself(t *testing.T) {
	for _, job := range []calc.Job{
		{Metal: "galvanized", Gauge: 20, Feed: calc.Some(4.1), Travel: calc.Some(8)},
		{Metal: "mild-steel", Gauge: 16, Joint: "tee"},
		{Metal: "stainless-304", Gauge: 18, Metal2: "mild-steel", Gauge2: 14, Joint: "lap", StickOut: calc.Some(10)},
		{Metal: "mild-steel", Thickness: calc.Some(10), Joint: "overlay", ShaftDia: calc.Some(40)},
		{Metal: "grey-iron", Thickness: calc.Some(8), Joint: "butt", Feed: calc.Some(7), Travel: calc.Some(5)},
		{Metal: "mild-steel", Gauge: 16, Joint: "butt", Gap: calc.Some(1), Preheat: calc.Some(80)},
	} {
		card, err := calc.Solve(job)
		if err != nil {
			t.Fatal(err)
		}
		list, err := Today(context.Background(), &book.Card{Card: book.Keep(&card)}, nil)
		if err != nil || len(list) > 0 {
			t.Errorf("%s %s: %v, %+v", job.Metal, job.Joint, err, list)
		}
	}
}

// A choice for which this program would assume another value keeps its saved value.
func TestAsWhenKeptKeepsOtherAssumptions(t *testing.T) {
	card, err := calc.Solve(calc.Job{Metal: "mild-steel", Gauge: 16, Feed: calc.Some(5), Travel: calc.Some(8)})
	if err != nil {
		t.Fatal(err)
	}
	k := book.Keep(&card)
	k.Used.Wire = calc.Some(1.2)
	k.Assumed = append(k.Assumed, calc.Assumption{Field: "of another version"})
	job := asWhenKept(&k)
	if job.Wire != calc.Some(1.2) || job.StickOut.Set || job.Feed != calc.Some(5) || job.Gauge != 16 {
		t.Errorf("%+v", job)
	}
}
