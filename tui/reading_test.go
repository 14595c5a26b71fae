package tui

import (
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
)

// A number without a unit that may mean something else is shown beside its field as it was read: in a list, at a
// setting, at what a page asks for, and at a measurement.
func TestReadingBesideTheField(t *testing.T) {
	s := openAt(t, 80, 24, Options{})
	s.press("enter")
	s.typed("0.2")
	s.has("0.2 read as inches: 5.08 mm; for", "type 0.2mm")
	s.typed("mm")
	s.hasNot("read as")

	s = openAt(t, 60, 20, Options{Units: quantity.Inch, Opening: calc.Job{Metal: "mild-steel", Gauge: 18}})
	s.press("right", "right", "enter")
	s.has("a bare number is mm/s")
	s.typed("12")
	s.has("12 read as mm/s; for in/min type 12in/min")

	s = openAt(t, 60, 20, Options{Units: quantity.Inch, Opening: calc.Job{Metal: "mild-steel", Gauge: 18}})
	s.press("p")
	for s.root().part.name() != "strength" {
		s.press("s")
	}
	s.press("enter")
	s.typed("12")
	s.has("12 read as millimetres; for inches type 12in")

	s = openAt(t, 60, 20, Options{Book: &drawer{}, Opening: calc.Job{Metal: "mild-steel", Gauge: 18}})
	s.press("p")
	for s.root().part.name() != pageMeasure {
		s.press("f4")
	}
	s.typed("booth 1")
	s.press("enter", "enter")
	s.typed("25")
	s.has("25 read as millimetres; for inches type 25in")
}
