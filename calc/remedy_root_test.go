package calc_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
)

// way is the remedy whose change begins with a text.
func way(list []calc.Remedy, change string) (calc.Remedy, bool) {
	i := slices.IndexFunc(list, func(r calc.Remedy) bool { return strings.HasPrefix(r.Change, change) })
	if i < 0 {
		return calc.Remedy{}, false
	}
	return list[i], true
}

// Over roots of any gap, sheet and wire, the card, the window's remedies and the timed arc's say the same of one root:
// the arc without pauses works in both or in neither, and so do the timed arc and each backing, with the same heat.
// Ways that work come first, the least heat before more.
func TestWindowAndGapAgreeOverARoot(t *testing.T) {
	rng := deep.Rand(t)
	wires := []float64{0.762, 0.889, 1.143}
	for range deep.Many(1, 25) {
		thick, gap, wire := 0.5+2.5*rng.Float64(), 6*rng.Float64(), wires[rng.IntN(3)]
		job := rootJob("mild-steel", thick, gap, "")
		job.Wire = calc.Some(wire)
		at := fmt.Sprintf("%.2f mm, gap %.2f, wire %.3f", thick, gap, wire)
		card := solved(t, job)
		steady := card.Verdict() == "good"
		timed, err := calc.SolveTimed(t.Context(), job, nil)
		if err != nil {
			t.Errorf("%s: %v", at, err)
			continue
		}
		ways, err := calc.RootWays(t.Context(), job)
		if err != nil {
			t.Fatal(err)
		}
		if r, _ := way(ways, "arc without"); r.Opens != steady {
			t.Errorf("%s: the card is %s, the way says %v", at, card.Verdict(), r.Opens)
		}
		if r, _ := way(ways, "timed"); r.Opens != timed.Good {
			t.Errorf("%s: a rhythm %v, the way says %v", at, timed.Good, r.Opens)
		}
		sameWays(t, at+", timed", timed.Remedies, ways, !timed.Good)
		if steady {
			continue
		}
		remedies, err := calc.AllRemedies(t.Context(), job, card)
		if err != nil {
			t.Fatal(err)
		}
		sameWays(t, at+", window", remedies, ways, true)
	}
}

// sameWays compares the ways of an answer with those computed separately.
func sameWays(t *testing.T, at string, list, ways []calc.Remedy, wanted bool) {
	t.Helper()
	found := 0
	for _, r := range list {
		w, ok := way(ways, r.Change)
		if !ok {
			continue
		}
		if found++; w.Opens != r.Opens || w.Heat != r.Heat || w.Tried != r.Tried {
			t.Errorf("%s: %+v, for itself %+v", at, r, w)
		}
	}
	if wanted && found < len(ways)-1 { // each but the job's own
		t.Errorf("%s: %d ways: %+v", at, found, list)
	}
	for i := range len(ways) - 1 {
		a, b := &ways[i], &ways[i+1]
		if b.Opens && (!a.Opens || a.Heat > b.Heat) {
			t.Errorf("%s: %+v before %+v", at, *a, *b)
		}
	}
}

// A job that is no open butt has no such ways.
func TestOnlyAnOpenButtHasWays(t *testing.T) {
	for _, job := range []calc.Job{{}, {Joint: "lap", Gap: calc.Some(1)}, {Joint: "butt"},
		{Joint: "butt", Gap: calc.Some(1), Backing: "copper-bar"}} {
		if list, err := calc.RootWays(t.Context(), job); len(list) > 0 || err != nil {
			t.Errorf("%+v: %v, %v", job, list, err)
		}
	}
}
