package formula

import (
	"math"
	"testing"
)

func TestSoak(t *testing.T) {
	for _, c := range []struct{ t, k, rhoC, want, within float64 }{
		{12, 0.040, 0.0043, 6.2, 0.01}, {25, 0.040, 0.0043, 27, 0.01}, {25, 0.35, 0.0038, 2.7, 0.01},
		{75, 0.040, 0.0043, 242, 0.01}, {75, 0.35, 0.0038, 24.4, 0.01},
	} {
		got, err := SoakThrough(c.t, c.k, c.rhoC)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "soak", got, c.want, c.within)
	}
}

// Heat laid on one face at once has reached the far face except for 4 % of its mean: images of the face,
// Carslaw and Jaeger 14.10.
func TestSoakLeavesFourPercent(t *testing.T) {
	d, err := SoakThrough(1, 1, 1)
	if err != nil {
		t.Fatal(err)
	}
	sum := 0.0
	for n := 1.0; n < 40; n += 2 {
		sum += 2 * math.Exp(-n*n/(4*d)) / math.Sqrt(math.Pi*d)
	}
	if left := 1 - sum; left < 0.035 || left > 0.045 {
		t.Errorf("%.4f is left", left)
	}
}

func TestStrip(t *testing.T) {
	got, err := StripRise(3500, 6, 0.35, 0.0038, 8, 60, 1)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "images", got, 53.513, 2e-5)
	wide, _ := StripRise(3500, 6, 0.35, 0.0038, 8, 600, 1)
	narrow, _ := StripRise(3500, 6, 0.35, 0.0038, 8, 30, 1)
	if !(wide < got && got < narrow) {
		t.Errorf("%g, %g, %g", wide, got, narrow)
	}
	if _, err := StripRise(3500, 6, 0.35, 0.0038, 8, 1e-4, 1); err == nil {
		t.Error("a strip of no width")
	}
}

// A heated part tends to P/hS above the air; without loss it takes up all the heat; cooling halves its rise at
// τ·ln 2.
func TestPart(t *testing.T) {
	part := func(power, loss, start, seconds float64) float64 {
		v, err := PartTemperature(20, start, power, loss, 1e4, 1e5, 0.005, seconds)
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	near(t, "long", part(100, 50, 20, 1e7), 20+100/(50e-6*1e4), 1e-9)
	near(t, "no loss", part(100, 0, 20, 60), 20+100*60/500.0, 1e-12)
	near(t, "short", part(100, 50, 20, 1e-3)-20, 100*1e-3/500, 1e-5)
	near(t, "cooling", part(0, 50, 420, 500/0.5*math.Ln2)-20, 200, 1e-9)
	last := part(100, 50, 300, 0)
	for s := 10.0; s < 1e4; s *= 2 { // it falls from above its final temperature
		if next := part(10, 50, 300, s); next >= last {
			t.Errorf("%g C after %g", next, last)
		} else {
			last = next
		}
	}
	start, err := SeamStart(8, 0.35, 0.0038)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "seam's start", start, 46.05, 1e-3)
}
