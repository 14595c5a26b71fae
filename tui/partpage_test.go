package tui

import (
	"testing"

	"brazebooth/calc"
)

// One key leads through the pages beside the card, and one back to it, at every size.
func TestPartPages(t *testing.T) {
	job := calc.Job{Metal: "galvanized", Gauge: 18, RatedAmps: calc.Some(200), RatedDuty: calc.Some(60), Load: calc.Some(1)}
	for _, size := range [][2]int{{80, 24}, {60, 20}, {120, 40}, {40, 14}} {
		s := openAt(t, size[0], size[1], Options{Job: job})
		for _, want := range []string{"verdict:", "duty cycle", "allowable load", "zinc rate", "for an overlay", "wire used", "verdict:"} {
			s.press("p")
			s.fits(size[0], size[1])
			s.hasNot("…") // no figure and no caution is cut
			if size[1] >= 20 {
				s.has(want)
			}
			s.press("u")
			s.fits(size[0], size[1])
			s.press("u", "u")
		}
		s.press("esc")
		s.has("wire feed")
	}
}

// What is refused stays refused on every page.
func TestPartPagesStop(t *testing.T) {
	s := openAt(t, 80, 24, Options{Job: calc.Job{Metal: "brass", Thickness: calc.Some(1)}})
	s.press("p", "p")
	s.has("stop: Do not arc braze brass")
}
