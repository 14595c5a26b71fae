package formula

import (
	"errors"
	"math"
	"testing"
)

// Shape factors of EN 1011-2, table D.1 (memory high): butt 0.9 and 0.9, corner 0.9 and 0.67, tee and lap 0.45 and
// 0.67.
func TestShapeFactors(t *testing.T) {
	for joint, want := range map[string][2]float64{"butt": {0.9, 0.9}, "corner": {0.9, 0.67}, "tee": {0.45, 0.67},
		"lap": {0.45, 0.67}, "overlay": {1, 1}} {
		if f2, f3 := JointFactors(joint); f2 != want[0] || f3 != want[1] {
			t.Errorf("%s: %g and %g, want %v", joint, f2, f3, want)
		}
	}
}

// A bar without losses keeps its heat.
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

// A 60° V through 10 mm to a feather edge has 10²·tan 30° = 57.735 mm². With an opening of 2 mm and root faces
// of 1 mm it has 20 + 81·tan 30° = 66.765 mm² and is 2 + 18·tan 30° = 12.392 mm wide; half a V from each side
// has 43.383 mm².
func TestGrooveByHand(t *testing.T) {
	feather, root := Groove{Depth: 10, Angle: 60}, Groove{Depth: 10, Opening: 2, Face: 1, Angle: 60}
	for name, x := range map[string][2]float64{"feather": {feather.Area(), 57.735}, "root": {root.Area(), 66.765},
		"width": {root.Width(), 12.392}, "both": {root.BothSides(), 43.383},
		"half filled": {feather.FilledTo(57.735 / 4), 5}, "root filled": {root.FilledTo(1), 0.5},
		"full": {root.FilledTo(100), 10}} {
		if math.Abs(x[0]-x[1]) > 5e-4 {
			t.Errorf("%s: %g, by hand %g", name, x[0], x[1])
		}
	}
	for bead, want := range map[float64]float64{20: 3, 28.9: 2, 28.8: 3, 57.7: 2, 57.8: 1, 200: 1} {
		if n := Beads(feather.Area(), bead); n != want {
			t.Errorf("beads of %g mm²: %g, want %g", bead, n, want)
		}
	}
}

// The metal that fills a groove to a height is the groove's section up to there, for every shape.
func TestGrooveFills(t *testing.T) {
	for _, g := range []Groove{{Depth: 8, Angle: 75}, {Depth: 8, Opening: 2, Face: 1, Angle: 75},
		{Depth: 2.5, Opening: 1.2, Face: 2.5}, {Depth: 12, Opening: 3, Face: 2, Angle: 90}} {
		for h := 0.0; h <= g.Depth; h += g.Depth / 64 {
			to := g
			to.Depth = h
			if got := g.FilledTo(to.Area()); math.Abs(got-h) > 1e-9 {
				t.Errorf("%+v: filled to %g, want %g", g, got, h)
			}
		}
		if g.BothSides() > g.Area() {
			t.Errorf("%+v: both sides take more", g)
		}
	}
}

// With one pass before and no loss to the air, H/(t·√(4πkρcτ)) = ΔT gives τ = (206/(6·45))²/(4π·0.045·0.0045) =
// 228.8 s. More passes, more heat and a thinner plate need longer; loss to the air shortens it.
func TestPassPeriodByHand(t *testing.T) {
	period := func(net, thick, film, rise, n float64) float64 {
		t.Helper()
		s, err := PassPeriod(net, thick, 0.045, 0.0045, film, rise, n)
		if err != nil {
			t.Fatal(err)
		}
		return s
	}
	one := period(206, 6, 1e-9, 45, 2)
	if math.Abs(one/228.8-1) > 2e-3 {
		t.Errorf("%g s", one)
	}
	for name, longer := range map[string]float64{"passes": period(206, 6, 1e-9, 45, 3),
		"heat": period(230, 6, 1e-9, 45, 2),
		"thin": period(206, 5, 1e-9, 45, 2), "limit": period(206, 6, 1e-9, 40, 2)} {
		if !(longer > one) {
			t.Errorf("%s: %g s after %g", name, longer, one)
		}
	}
	if lost := period(206, 6, 10, 45, 2); !(lost < one) {
		t.Errorf("with loss %g s", lost)
	}
	if _, err := PassPeriod(206, 0.5, 0.045, 0.0045, 0.001, 1, 9); !errors.Is(err, ErrRange) {
		t.Error("a plate that never cools")
	}
	if _, err := PassPeriod(0, 6, 0.045, 0.0045, 10, 45, 2); !errors.Is(err, ErrRange) {
		t.Error("no heat")
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

// A bar without losses heats up in proportion: it passes half of its rise in half of the time.
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
