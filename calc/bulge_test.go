package calc

import (
	"testing"

	"brazebooth/internal/deep"
)

// A bead far too large for its wetted width bulges over the members: no toe angle is said to be more than upright.
func TestABulgingBeadIsUpright(t *testing.T) {
	upright := 0
	for _, travel := range deep.Of(t, []float64{0.55, 0.585, 0.62, 0.7}, 3) {
		c := card(t, Job{Metal: "mild-steel", Gauge: 18, Metal2: "mild-steel", Thickness2: Some(13.54), Joint: "tee",
			Filler: "cusn1",
			Wire:   Some(0.634), Mode: "pulsed", Travel: Some(travel), Phi: Some(6.23), PhiSigma: Some(1.71),
			VoltFactor: Some(0.9715)})
		for _, name := range []string{"wetting_angle", "toe_angle_1", "toe_angle_2"} {
			f, ok := c.Figure(name)
			if !ok || f.Value > 180 || f.Low > f.Value || f.High < f.Value {
				t.Errorf("%g mm/s: %s is %g, %g to %g", travel, name, f.Value, f.Low, f.High)
			}
			if f.Value == 180 {
				upright++
			}
		}
	}
	if upright == 0 {
		t.Error("no bead bulges: the test shows nothing")
	}
}
