package linear

import (
	"context"
	"testing"

	"brazebooth/calc"
)

// Whether a mode has a good setting takes a second to compute for a timed arc: it is asked where the list is read out,
// and not by the question itself or by a name that answers it.
func TestVerdictsComeWithTheList(t *testing.T) {
	compute, timed := answer, 0
	defer func() { answer = compute }()
	answer = func(ctx context.Context, job calc.Job, progress func(float64)) (calc.Card, error) {
		if job.Mode == "timed" {
			timed++
			job.Mode = "dip"
		}
		return compute(ctx, job, progress)
	}
	for _, x := range []struct {
		typed string
		asked bool
	}{{"dip", false}, {"", false}, {"bananas", false}, {"?", true}, {"1", true}} {
		timed = 0
		talkOf(t, Options{}, "galv", "18", "", x.typed)
		if (timed > 0) != x.asked {
			t.Errorf("%q at the question of the mode: a timed arc is computed %d times", x.typed, timed)
		}
	}
}
