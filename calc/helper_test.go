package calc

import "testing"

func card(t *testing.T, j Job) *Card {
	t.Helper()
	c, err := Solve(j)
	if err != nil {
		t.Fatalf("%+v: %v", j, err)
	}
	return &c
}
