package section

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

const degree = math.Pi / 180

// Toe angles, computed with an independent library.
func TestToeAngles(t *testing.T) {
	ok := func(toes Toes, err error) Toes {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return toes
	}
	angle := func(what string, got, want float64) {
		t.Helper()
		if math.Abs(got/degree-want) > 5e-7 {
			t.Errorf("%s: %.7f, want %.7f", what, got/degree, want)
		}
	}
	a := ok(Lap(10.4, 3.5, 3.3, 1.5))
	angle("lap phi", a.Phi, 62.729805)
	angle("lap lower", a.Second, 75.169367)
	angle("lap upper", a.First, 50.290243)
	b := ok(Lap(3.2, 2.9, 2.6, 0.8))
	angle("thin lap lower", b.Second, 43.369702)
	angle("thin lap upper", b.First, 26.817916)
	c := ok(Tee(9.05, 4.3, 3.9))
	angle("tee plate", c.Second, 54.563753)
	angle("tee sheet", c.First, 48.978348)
	d := ok(Corner(7, 2, 2, 1.5, 1.5))
	angle("corner", d.First, 50.426001)
	angle("corner", d.Second, 50.426001)
	e := ok(Corner(12, 2.5, 2, 1.5, 1.2))
	angle("unequal corner", e.First, 67.080155)
	angle("unequal corner", e.Second, 63.897875)
	angle("butt", ok(Butt(6, 2.5, 2.5, 1, 1.2)).Phi, 42.463534)
	angle("overlay", ok(Overlay(5, 3)).Phi, 43.976775)
}

func TestSegmentInverse(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		phi := rapid.Float64Range(-3.1, 3.1).Draw(r, "phi")
		back, err := SegmentAngle(Segment(phi))
		if err != nil || math.Abs(back-phi) > 1e-9 {
			r.Fatalf("%g came back as %g (%v)", phi, back, err)
		}
	})
	// A half circle over a chord of 2: area π/2.
	if s := Segment(70 * math.Pi / 180); math.Abs(s-1.0196) > 5e-5 { // where a butt's bead stands as steep as it may
		t.Errorf("%g", s)
	}
	if s := Segment(math.Pi / 2); math.Abs(s-math.Pi/2) > 1e-12 {
		t.Errorf("half circle %g", s)
	}
}
