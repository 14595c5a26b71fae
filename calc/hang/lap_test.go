package hang

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"brazebooth/calc/formula"
)

func TestTouchHeight(t *testing.T) { // check 9; the bead is solid metal, 1.118 times as large when liquid
	for _, c := range []struct{ bead, through, in, want float64 }{{6, 3, 2, 1.7812}, {3.85, 2.7, 1.9, 1.2900}} {
		got, err := TouchHeight(1.118*c.bead, c.through, c.in)
		if err != nil {
			t.Fatal(err)
		}
		check(t, fmt.Sprintf("%+v", c), got, c.want, 1e-4) // 1.29006: printed rounded to a zero
	}
	// Half a circle of radius 2, its middle over the joint's line.
	got, err := TouchHeight(2*math.Pi, 2, 2)
	if err != nil {
		t.Fatal(err)
	}
	check(t, "half a circle", got, 2, 1e-9)
	for _, bad := range [][3]float64{{0, 1, 1}, {math.NaN(), 1, 1}, {1, -1, 1}, {1, 1, math.Inf(1)}} {
		if _, err := TouchHeight(bad[0], bad[1], bad[2]); !errors.Is(err, formula.ErrRange) {
			t.Errorf("%v: %v", bad, err)
		}
	}
}

// TestTouchHeightOfAnyRidge puts a circle through both toes and the height, and computes its area; a ridge that
// would be more than half a circle is half a circle.
func TestTouchHeightOfAnyRidge(t *testing.T) {
	for _, bead := range []float64{0.5, 3, 8, 20} {
		for _, through := range []float64{0.5, 2, 4, 6} {
			for _, in := range []float64{0.2, 1.5, 3, 5} {
				h, err := TouchHeight(bead, through, in)
				if err != nil {
					t.Fatal(err)
				}
				// The circle through (0,0), (c,0), (through,h): its centre lies on c/2.
				c := through + in
				x := through - c/2
				if bead > math.Pi*c*c/8 {
					check(t, fmt.Sprintf("half a circle of %g on %g and %g", bead, through, in), math.Pi*(x*x+h*h)/2,
						bead, 1e-9)
					continue
				}
				z := (x*x + h*h - c*c/4) / (2 * h)
				r := math.Hypot(c/2, z)
				phi := math.Atan2(c/2, -z)
				area := r * r * (phi - math.Sin(phi)*math.Cos(phi))
				check(t, fmt.Sprintf("area of %g on %g and %g", bead, through, in), area, bead, 1e-6)
			}
		}
	}
}

// TestNarrowerWettingIsNoHigher wets a sheet less and less, down to nothing: the ridge gets no higher than half a
// circle, without a jump, so that a sheet too cold to be wetted does not make a gap easier to touch.
func TestNarrowerWettingIsNoHigher(t *testing.T) {
	for _, bead := range []float64{0.5, 3.74, 8, 20} {
		half, last := math.Sqrt(2*bead/math.Pi), 0.0
		for wet := 2.5 * half; wet >= 0; wet -= 0.01 * half {
			h, err := TouchHeight(bead, wet, 0.7*wet)
			if err != nil {
				t.Fatal(err)
			}
			if h > half*(1+1e-9) || last > 0 && math.Abs(h-last) > 0.02*half {
				t.Errorf("%g mm2 on %g mm stands %g, after %g", bead, wet, h, last)
			}
			last = h
		}
		check(t, "not wetted", last, half, 1e-3*half)
	}
}

func TestNeedAndThroat(t *testing.T) {
	check(t, "need", NeedFillet(0.5, 1.5, 2), 3.0000, 1e-12) // check 10
	check(t, "need without a gap", NeedFillet(0, 1.5, 2), 1.5*1.5/2, 1e-12)
	for gap, want := range map[float64]float64{0: 1.3416, 0.5: 1.2481, 1: 1.1523} { // check 11
		got, err := Throat(1.5, 3, gap)
		if err != nil {
			t.Fatal(err)
		}
		check(t, fmt.Sprintf("throat over %g", gap), got, want, 0.5e-4)
	}
	if _, err := Throat(0, 1, 1); !errors.Is(err, formula.ErrRange) {
		t.Error(err)
	}
	// A corner: the triangle of two edges, and for the gap a box of the triangle's height on its long side.
	check(t, "corner", NeedCorner(0, 1.5, 1.2), 0.9, 1e-12)
	check(t, "corner with a gap", NeedCorner(0.4, 3, 4), 6+0.4*12.0/5, 1e-12)
}
