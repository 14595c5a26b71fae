package advice

import (
	"testing"

	"brazebooth/calc"
)

// What one page of a card assumes does not reach another page of the same card.
func TestPagesAssumeForThemselves(t *testing.T) {
	c := card(t, calc.Job{Metal: "mild-steel", Gauge: 18})
	one, two := Page{Card: *c}, Page{Card: *c}
	one.assume("length", "100mm", "one")
	two.assume("count", "7", "two")
	if got := one.Card.Assumed[len(c.Assumed)]; got.Why != "one" {
		t.Errorf("the first page assumes %+v", got)
	}
}
