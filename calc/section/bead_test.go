package section

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

const degree = math.Pi / 180

// Toe angles that were computed with an independent library.
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
	a := ok(Lap(10.4, 3.5, 3.3, 1.5, 0, 0))
	angle("lap phi", a.Phi, 62.729805)
	angle("lap lower", a.Second, 75.169367)
	angle("lap upper", a.First, 50.290243)
	b := ok(Lap(3.2, 2.9, 2.6, 0.8, 0, 0))
	angle("thin lap lower", b.Second, 43.369702)
	angle("thin lap upper", b.First, 26.817916)
	c := ok(Tee(9.05, 4.3, 3.9, 0, 0))
	angle("tee plate", c.Second, 54.563753)
	angle("tee sheet", c.First, 48.978348)
	d := ok(Corner(7, 2, 2, 1.5, 1.5, 0))
	angle("corner", d.First, 50.426001)
	angle("corner", d.Second, 50.426001)
	e := ok(Corner(12, 2.5, 2, 1.5, 1.2, 0))
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
	if s := Segment(70 * math.Pi / 180); math.Abs(s-1.0196) > 5e-5 { // the steepest toe allowed for a butt
		t.Errorf("%g", s)
	}
	if s := Segment(math.Pi / 2); math.Abs(s-math.Pi/2) > 1e-12 {
		t.Errorf("half circle %g", s)
	}
}

// An open lap, tee or corner holds the given area of metal, and passes into the closed one as the gap closes.
func TestOpenJoints(t *testing.T) {
	area := func(toes Toes) float64 { return toes.Chord * toes.Chord / 4 * Segment(toes.Phi) }
	for _, gap := range []float64{0, 1e-9, 0.4, 1} {
		const w1, w2, thick, in = 2.9, 2.6, 1.5, 1.2
		lap, err1 := Lap(9, w1, w2, thick, gap, in)
		tee, err2 := Tee(9, w1, w2, gap, in)
		corner, err3 := Corner(9, w1, w2, thick, thick, gap)
		if err1 != nil || err2 != nil || err3 != nil {
			t.Fatal(err1, err2, err3)
		}
		// Checked by counting squares in the region under each chord.
		under := func(inside func(x, y float64) bool) float64 {
			const d = 0.01
			sum := 0.0
			for x := -6.0; x < 6; x += d {
				for y := -1.0; y < 6; y += d {
					if inside(x+d/2, y+d/2) {
						sum += d * d
					}
				}
			}
			return sum
		}
		lapUnder := under(func(x, y float64) bool {
			below := y < (thick+gap)*(w2-x)/(w1+w2)
			open := x > 0 && y > 0 || x > -in && x <= 0 && y > 0 && y < gap
			return open && (below || x <= 0)
		}) - under(func(x, y float64) bool { // the chord passes through the upper sheet: that part is not filler
			return x < 0 && y < thick+gap && y > (thick+gap)*(w2-x)/(w1+w2)
		})
		teeUnder := under(func(x, y float64) bool {
			return x > 0 && y > 0 && y/(w1+gap)+x/w2 < 1 || x > -in && x <= 0 && y > 0 && y < gap
		})
		if d := area(lap) + lapUnder - 9; math.Abs(d) > 0.05 {
			t.Errorf("gap %g: lap off by %.3f mm2", gap, d)
		}
		if d := area(tee) + teeUnder - 9; math.Abs(d) > 0.05 {
			t.Errorf("gap %g: tee off by %.3f mm2", gap, d)
		}
		if closed, err := Corner(9, w1, w2, thick, thick, 0); err != nil || gap > 0 && corner.Phi > closed.Phi+1e-9 {
			t.Errorf("gap %g: corner %.3f rad, closed %.3f, %v", gap, corner.Phi, closed.Phi, err)
		}
	}
}
