package formula

import (
	"math"
	"testing"
)

// Shape factors of EN 1011-2, table D.1 (memory high): butt 0.9 and 0.9, corner 0.9 and 0.67, tee and lap 0.45 and
// 0.67.
func TestShapeFactors(t *testing.T) {
	for joint, want := range map[string][2]float64{"butt": {0.9, 0.9}, "corner": {0.9, 0.67}, "tee": {0.45, 0.67}, "lap": {0.45, 0.67}, "overlay": {1, 1}} {
		if f2, f3 := JointFactors(joint); f2 != want[0] || f3 != want[1] {
			t.Errorf("%s: %g and %g, want %v", joint, f2, f3, want)
		}
	}
}

// Heat is neither made nor lost inside a bar without a skin.
func TestBarKeepsItsHeat(t *testing.T) {
	b := Bar{Half: 20, Beyond: 60, K: 0.04, RhoC: 0.0052, Area: 500, Surface: 0.1}
	if err := b.Start(20); err != nil {
		t.Fatal(err)
	}
	b.Run(50, 800, 1e9)
	heat := 0.0
	for _, c := range b.cells {
		heat += (c - 20) * b.width * b.Area * b.RhoC * 2
	}
	if math.Abs(heat/40000-1) > 1e-9 {
		t.Errorf("%g J of 40000", heat)
	}
}

// A 60° V through 10 mm holds 10²·tan 30° = 57.7 mm²: three beads of 20 mm², two of 28.9, and one of anything larger.
func TestGroovePassesByHand(t *testing.T) {
	for bead, want := range map[float64]float64{20: 3, 28.9: 2, 28.8: 3, 57.7: 2, 57.8: 1, 200: 1} {
		if n := GroovePasses(10, 60, bead); n != want {
			t.Errorf("beads of %g mm²: %g, want %g", bead, n, want)
		}
	}
}

func TestShares(t *testing.T) {
	w := []float64{0.1, 0.3}
	if Normalize(w); math.Abs(w[0]-0.25) > 1e-15 || math.Abs(w[1]-0.75) > 1e-15 {
		t.Errorf("a tenth and three make %v", w)
	}
	none := []float64{0, 0}
	if Normalize(none); none[0] != 0 || none[1] != 0 {
		t.Errorf("nothing is shared as %v", none)
	}
}

// A bar that gets its heat and loses none warms in proportion: it passes half of its rise in half of the time.
func TestBarPassesInProportion(t *testing.T) {
	b := Bar{Half: 25, K: 0.045, RhoC: 0.004, Area: 100, Surface: 0.1}
	if err := b.Start(20); err != nil {
		t.Fatal(err)
	}
	// 1000 W for 10 s into 50·100·0.004 = 20 J/K: 500 K.
	if passed := b.Run(10, 1000, 270); math.Abs(passed-5) > 1e-6 || math.Abs(b.Mean()-520) > 1e-6 {
		t.Errorf("270 °C after %g s, %g °C at the end", passed, b.Mean())
	}
	again := Bar{Half: 25, K: 0.045, RhoC: 0.004, Area: 100, Surface: 0.1}
	if err := again.Start(20); err != nil {
		t.Fatal(err)
	}
	if passed := again.Run(10, 1000, 271); math.Abs(passed-5.02) > 1e-6 { // between two steps of 0.05 s
		t.Errorf("271 °C after %g s", passed)
	}
	if passed := again.Run(1, 0, 1000); !math.IsNaN(passed) {
		t.Errorf("cold it passes 1000 °C after %g s", passed)
	}
}
