package tables

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"brazebooth/internal/mistake"
)

// A class that does not exist gets the nearest one of its kind as an answer, for every mass.
func TestOtherClassNamesTheNearest(t *testing.T) {
	classes := map[string][]float64{"Z": {90, 100, 120, 140, 180, 200, 225, 275, 350}, "G": {30, 40, 60, 90, 115},
		"A": {25, 40, 60}, "ZF": {75, 100, 120, 180}}
	for letters, masses := range classes {
		for m := 1.0; m < 1000; m += 7 {
			text := fmt.Sprintf("%s%g", letters, m)
			_, err := FindCoating(text)
			if err == nil || refused(text, (*notBrazedRow).named) != nil { // such as A792, the number of a standard
				continue
			}
			got := mistake.Of(err)
			least := math.Inf(1)
			for _, have := range masses {
				least = min(least, math.Abs(have-m))
			}
			near := false
			for _, have := range masses {
				named := strings.HasPrefix(got.Hint, fmt.Sprintf("type %s%g,", letters, have))
				near = near || named && math.Abs(have-m) == least
			}
			if !near {
				t.Errorf("%s: %s", text, got.Hint)
			}
			if heavy := m > masses[len(masses)-1]; heavy != strings.Contains(got.Hint, "ground off") {
				t.Errorf("%s: %s", text, got.Hint)
			}
		}
	}
}
