package advice

import (
	"math"
	"testing"

	"brazebooth/calc"
)

// The metal laid on a shaft is that of the ring it makes, at every diameter and height; a build-up higher than
// usual has a caution.
func TestOverlayFillsItsRing(t *testing.T) {
	for _, d := range []float64{10, 20, 40, 100, 400} {
		for _, high := range []float64{0.5, 2, 5, 10, 11, 30} {
			c := byHand("overlay")
			c.Job.ShaftDia, c.Job.Layer = calc.Some(d), calc.Some(high)
			p, layers, err := overlayBead(c)
			if err != nil {
				t.Fatal(err)
			}
			grown := d + 2*layers*value(t, &p, "layer_height").Value
			ring := math.Pi / 4 * (grown*grown - d*d) * 100
			laid := value(t, &p, "arc_time").Value * 5 * 24 // travel mm/s, bead mm2
			if math.Abs(laid/ring-1) > 1e-9 {
				t.Errorf("%g mm on a shaft of %g mm: %g mm³ laid, the ring takes %g", high, d, laid, ring)
			}
			if hasWarning(&p, "overlay-high") != (high > 10) {
				t.Errorf("%g mm: cautioned %v", high, high <= 10)
			}
		}
	}
}
