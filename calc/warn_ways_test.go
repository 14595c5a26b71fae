package calc

import (
	"regexp"
	"testing"

	"brazebooth/internal/deep"
)

var (
	feedAdvice = regexp.MustCompile(`(?i)\b(more|less) wire feed`)
	wayAdvice  = regexp.MustCompile(`(?i)(?:\. |Try |, |: |or )(faster|slower)\b`)
)

// No card says to feed more and to feed less, or to go faster and to go slower: where two missed edges ask for the
// opposite, neither is a cure.
func TestNoCardAdvisesBothWays(t *testing.T) {
	deep.Turn(t)
	if testing.Short() {
		t.Skip("hundreds of sections")
	}
	var jobs []Job
	for _, joint := range []string{"lap", "butt", "tee", "corner", "edge", "overlay"} {
		for _, thick := range []float64{0.5, 0.8, 1.2, 2, 3, 5} {
			for _, position := range []string{"flat", "overhead", "vertical-down", "vertical-up"} {
				for _, feed := range []float64{1.5, 3, 5, 8, 12} {
					for _, travel := range []float64{1.5, 4, 8, 16, 24} {
						jobs = append(jobs, Job{Metal: "mild-steel", Joint: joint, Thickness: Some(thick),
							Position: position, Feed: Some(feed), Travel: Some(travel)},
							Job{Metal: "galvanized", Joint: joint, Thickness: Some(thick), Position: position,
								Feed: Some(feed), Travel: Some(travel), Gap: Some(thick), Mode: "pulsed", Leg: Some(5)})
					}
				}
			}
		}
	}
	opposed := 0
	for _, j := range deep.Of(t, jobs, 150) {
		c, err := Solve(j)
		if err != nil {
			continue
		}
		for _, advice := range []*regexp.Regexp{feedAdvice, wayAdvice} {
			first, said := "", ""
			for _, w := range c.Warnings {
				if w.Code == j.Position { // general, of the position
					continue
				}
				for _, m := range advice.FindAllStringSubmatch(w.Text, -1) {
					way := lowerFirst(m[1])
					if first != "" && way != first {
						t.Errorf("%s: %q after %q", j.short(), w.Text, said)
					}
					first, said = way, w.Text
				}
			}
		}
		if c.Warned("underfilled") && (c.Zone == "hot" || c.Zone == "burn-through") {
			opposed++
		}
	}
	if opposed == 0 {
		t.Error("no card of the sample is both hot and underfilled")
	}
}
