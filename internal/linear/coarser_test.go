package linear

import (
	"bytes"
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
	"brazebooth/internal/report"
)

// The talk says if a map was computed on a coarser grid, and if a remedy was not tried. No job is known whose map of
// usual size takes too long, so both are set on the map of a usual one.
func TestCoarserMapIsReadOut(t *testing.T) {
	deep.Turn(t)
	m, err := calc.WindowOf(t.Context(), calc.Job{Metal: "dp800", Thickness: calc.Some(1.13), Metal2: "galvanized",
		Thickness2: calc.Some(0.1), Joint: "lap", Wire: calc.Some(2.1)}, calc.CoarseWindow, nil)
	if err != nil || len(m.Remedies) == 0 {
		t.Fatalf("%d remedies, %v", len(m.Remedies), err)
	}
	for _, late := range []bool{false, true} {
		m.Coarser, m.Remedies[0].Late = late, late
		var out bytes.Buffer
		talk := newTalk(t.Context(), Options{}, &out)
		talk.tell(report.Window(&m, nil)...)
		if err := talk.voice.out.Flush(); err != nil {
			t.Fatal(err)
		}
		said := strings.Join(strings.Fields(out.String()), " ")
		for _, want := range []string{"The map is drawn coarser: ", " since this job takes long to compute.",
			"untried: this job takes long to compute."} {
			if strings.Contains(said, want) != late {
				t.Errorf("late %v: %q said %v:\n%s", late, want, !late, out.String())
			}
		}
	}
}
