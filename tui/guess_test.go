package tui

import (
	"strings"
	"testing"

	"brazebooth/calc"
)

// The allowable load, the seam's time and its cost are marked because nobody gave the length, and say which length is
// assumed. With the length given they have no mark.
func TestAssumedSeamIsMarked(t *testing.T) {
	for _, size := range [][2]int{{40, 40}, {60, 40}, {80, 24}, {120, 40}} {
		for _, x := range []struct{ page, figure string }{{"strength", "allowable load"}, {"cost", "arc time"},
			{"prepare", "tacks"}} {
			for _, given := range []bool{false, true} {
				job := calc.Job{Metal: "mild-steel", Gauge: 16}
				if given {
					job.Length = calc.Some(300)
				}
				s := openAt(t, size[0], size[1], Options{Opening: job})
				s.press("p")
				s.root().part.open(x.page)
				s.press("u", "u", "u")
				line := ""
				for l := range strings.Lines(s.text()) {
					if l = strings.TrimSpace(l); strings.HasPrefix(l, x.figure+" ") {
						line = l
					}
				}
				if line == "" || strings.Contains(line, "~") == given {
					t.Errorf("%v, %s, length given %v: %q\n%s", size, x.page, given, line, s.text())
				}
				if !given && !strings.Contains(flat(s.text()), "length 300mm") {
					t.Errorf("%v, %s does not say which length:\n%s", size, x.page, s.text())
				}
			}
		}
	}
}
