package advice

import (
	"context"
	"testing"

	"brazebooth/calc"
)

// BenchmarkPages computes every page of a card, and what to check first. Each time it is another card, or calc would
// have cached its sections.
func BenchmarkPages(b *testing.B) {
	job := calc.Job{Metal: "galvanized", Joint: "lap", Feed: calc.Some(5), Travel: calc.Some(9),
		Length: calc.Some(1000)}
	for n := 0; b.Loop(); n++ {
		b.StopTimer()
		job.Thickness = calc.Some(1.2 + 1e-6*float64(n))
		c, err := calc.Solve(job)
		b.StartTimer()
		if err != nil {
			b.Fatal(err)
		}
		if _, err := Pages(context.Background(), &c, nil); err != nil {
			b.Fatal(err)
		}
		CheckFirst(&c)
	}
}
