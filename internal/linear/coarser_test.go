package linear

import (
	"strings"
	"testing"

	"brazebooth/internal/deep"
)

// The talk says if a map was computed on a coarser grid, and if a remedy was not tried.
func TestCoarserMapIsReadOut(t *testing.T) {
	if !deep.Run() {
		t.Skip("a map that takes long: BRAZEBOOTH_DEEP=1 draws it")
	}
	got, _ := talkOf(t, Options{}, "dp800", "1.13mm", "", "dip", "metal2 galvanized", "gauge2 0.1mm", "wire 2.1mm",
		"filler cual10fe", "preheat 280", "map")
	said := strings.Join(strings.Fields(got), " ")
	for _, want := range []string{"The map is drawn coarser: ", " since this job takes long to compute.",
		"untried: this job takes long to compute."} {
		if !strings.Contains(said, want) {
			t.Errorf("%q is not said:\n%s", want, got)
		}
	}
}
