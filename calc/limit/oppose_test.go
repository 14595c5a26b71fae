package limit

import "testing"

// The opposing edge is named even where another edge of the same pull is further from being met.
func TestWorstNamesAnOpposingEdge(t *testing.T) {
	var logs, changes All
	var courses [Count]Courses
	for i := range changes {
		changes[i] = 50
	}
	changes[Solid], changes[Burn], changes[Wets] = -40, -30, 5
	if a, b := logs.Opposed(&changes, &courses); a != "base stays solid" || b != "wets" {
		t.Errorf("%s and %s", a, b)
	}
	for _, i := range [...]Limit{Solid, Burn, Zinc, Stays, Slow, Spray} { // no limit that wants more is near
		changes[i] = -10
	}
	if a, b := logs.Opposed(&changes, &courses); a == "" || b != "wets" {
		t.Errorf("%s and %s", a, b)
	}
}

// The edge furthest from being met comes first; an edge that opposes it second; no edge is named twice.
func TestWorstTwoEdges(t *testing.T) {
	var logs, changes All
	var courses [Count]Courses
	for i := range changes {
		changes[i] = 50
	}
	changes[Floor], changes[Spray], changes[Wets] = -20, -30, -10
	if a, b := logs.Opposed(&changes, &courses); a != "arc steady" || b != "wets" {
		t.Errorf("%s and %s", a, b)
	}
	changes[Wets], changes[Solid] = -40, -35
	if a, b := logs.Opposed(&changes, &courses); a != "wets" || b != "base stays solid" {
		t.Errorf("%s and %s", a, b)
	}
}
