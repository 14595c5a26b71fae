package calc

import (
	"math"
	"strings"
	"testing"

	"brazebooth/internal/deep"
	"brazebooth/tables"
)

// A setting whose chance is within the model's own doubt of even is called about even, on the card and in the chance's
// basis, on either side of the line between good and marginal; no other setting is.
func TestAboutEven(t *testing.T) {
	deep.Turn(t)
	even, other := 0, 0
	for i := range deep.Many(8, 60) {
		c := card(t, Job{Metal: "galvanized", Joint: "lap",
			Thickness: Some(1.1 + 0.7*float64(i%8)/7 + 0.002*float64(i/8))})
		f, ok := c.Figure("chance")
		if !ok || !c.Met() {
			continue
		}
		want := math.Abs(f.Value-tables.MarginalUnder.V) <= chanceError
		if said := strings.Contains(f.Basis.Formula, "about even"); c.AboutEven() != want || said != want {
			t.Errorf("%.1f in 100: about even %v, in its basis %v", f.Value, c.AboutEven(), said)
		}
		if want {
			even++
		} else {
			other++
		}
	}
	if even == 0 || other == 0 {
		t.Errorf("%d about even, %d not", even, other)
	}
}
