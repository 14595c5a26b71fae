package advice

import (
	"context"
	"testing"

	"brazebooth/calc"
)

// BenchmarkPages computes every page of a card, and what to check first.
func BenchmarkPages(b *testing.B) {
	c, err := calc.Solve(calc.Job{Metal: "galvanized", Gauge: 18, Joint: "lap", Feed: calc.Some(5),
		Travel: calc.Some(9), Length: calc.Some(1000)})
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := Pages(context.Background(), &c, nil); err != nil {
			b.Fatal(err)
		}
		CheckFirst(&c)
	}
}
