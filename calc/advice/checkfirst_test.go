package advice

import (
	"testing"

	"brazebooth/calc"
)

// What is assumed is ordered by what it moves; a wrong wire moves more than a cool morning.
func TestCheckFirst(t *testing.T) {
	list := CheckFirst(card(t, calc.Job{Feed: calc.Some(5), Travel: calc.Some(8)}))
	at := map[string]int{}
	for i, c := range list {
		at[c.Field] = i
		if c.Text() == "" || c.Value == "" || c.Moves < 0 {
			t.Errorf("%+v", c)
		}
		if i > 1 && c.Moves > list[i-1].Moves {
			t.Errorf("%s moves %g, after %g", c.Field, c.Moves, list[i-1].Moves)
		}
	}
	if at["metal"] != 0 || !(at["wire"] < at["preheat"]) || !(at["preheat"] < at["position"]) {
		t.Errorf("%+v", list)
	}
	if len(CheckFirst(card(t, allGiven(t)))) != 0 {
		t.Error("a job with everything given has something to check")
	}
}

// allGiven is a job in which everything is given.
func allGiven(t *testing.T) calc.Job {
	t.Helper()
	return card(t, calc.Job{Feed: calc.Some(5), Travel: calc.Some(8)}).Used
}
