package shop

import (
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/book"
	"brazebooth/internal/quantity"
	"brazebooth/internal/report"
)

// Typed text keeps its units, so that a card is found by the name that is shown; computed text is converted.
func TestTypedTextKeepsItsUnits(t *testing.T) {
	card := book.Card{Name: "tank 2 mm lid", Tags: []string{"12 mm shelf"}, Note: "clamp 25 mm off"}
	card.Card.Assumed = []calc.Assumption{{Field: "stickout", Value: "12mm"}, {Field: "metal", Value: "304L"}}
	c := card
	kept := AsKept(&c)
	text := report.Text(report.Kept(keptHead(&c, "saved"), &kept), report.Options{Units: quantity.Inch})
	for _, want := range []string{"tank 2 mm lid", "12 mm shelf", "clamp 25 mm off", "stickout .47in", "metal 304L"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in:\n%s", want, text)
		}
	}
}
