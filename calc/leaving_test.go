package calc_test

import (
	"context"
	"errors"
	"testing"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/calc/correct"
	"brazebooth/calc/practice"
)

// Every slow answer looks often whether its caller has left, and only a few times after that.
func TestLeavingEndsEveryAnswer(t *testing.T) {
	timed := calc.Job{Metal: "galvanized", Gauge: 18, Joint: "butt", Gap: calc.Some(1), Mode: "timed"}
	steady := calc.Job{Metal: "mild-steel", Gauge: 18, Joint: "lap", Feed: calc.Some(5.5), Travel: calc.Some(10)}
	laid, err := calc.Solve(steady)
	if err != nil {
		t.Fatal(err)
	}
	for name, answer := range map[string]func(ctx context.Context) error{
		"filler": func(ctx context.Context) error { _, err := advice.Fillers(ctx, &laid); return err },
		"window": func(ctx context.Context) error { _, err := calc.WindowAnew(ctx, steady); return err },
		"gap":    func(ctx context.Context) error { _, err := calc.TimedAnew(ctx, timed); return err },
		"correct": func(ctx context.Context) error {
			_, err := correct.Next(ctx, []correct.Try{{Job: steady, Seen: "rolled-edge"}})
			return err
		},
		"practice": func(ctx context.Context) error { _, err := practice.New(ctx, 2, 7); return err },
	} {
		for _, at := range []int64{3, 20, 60, 100} {
			l := &calc.Leaving{Context: context.Background(), At: at}
			if err := answer(l); !errors.Is(err, context.Canceled) {
				t.Errorf("%s, left at look %d: %v", name, at, err)
			}
			if after := l.Looks.Load() - at; after > 400 {
				t.Errorf("%s, left at look %d: looked %d times more", name, at, after)
			}
		}
	}
}
