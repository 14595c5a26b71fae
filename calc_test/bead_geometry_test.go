package calc_test

import (
	"math"
	"testing"

	"brazebooth/calc/section"
)

// Plane geometry: a bead is bounded by the chord between its toes and by a circular segment above it that has
// the bead's area. The angles were worked for this project by an independent root search, to a millionth of a
// degree.
func TestToeAnglesWorked(t *testing.T) {
	const degree, tol = 180 / math.Pi, 2e-6
	lap := func(name string, area, wu, wl, thick, lower, upper float64) {
		toes, err := section.Lap(area, wu, wl, thick, 0, 0)
		if err != nil {
			t.Fatal(err)
		}
		check(t, name+", lower toe", toes.Second*degree, lower, tol)
		check(t, name+", upper toe", toes.First*degree, upper, tol)
	}
	lap("lap 1.5", 10.4, 3.5, 3.3, 1.5, 75.169367, 50.290243)
	lap("lap 0.8", 3.2, 2.9, 2.6, 0.8, 43.369702, 26.817916)
	tee, err := section.Tee(9.05, 4.3, 3.9, 0, 0)
	if err != nil {
		t.Fatal(err)
	}
	angles := [2]float64{tee.First * degree, tee.Second * degree}
	check(t, "tee, one toe", max(angles[0], angles[1]), 54.563753, tol)
	check(t, "tee, the other", min(angles[0], angles[1]), 48.978348, tol)
	corner, err := section.Corner(7, 2, 2, 1.5, 1.5, 0)
	if err != nil {
		t.Fatal(err)
	}
	check(t, "corner of equals, first", corner.First*degree, 50.426001, tol)
	check(t, "corner of equals, second", corner.Second*degree, 50.426001, tol)
	if corner, err = section.Corner(12, 2.5, 2, 1.5, 1.2, 0); err != nil {
		t.Fatal(err)
	}
	check(t, "corner of unequals, first", corner.First*degree, 67.080155, tol)
	check(t, "corner of unequals, second", corner.Second*degree, 63.897875, tol)
	butt, err := section.Butt(6, 2.5, 2.5, 1, 1.2)
	if err != nil {
		t.Fatal(err)
	}
	check(t, "butt", butt.First*degree, 42.463534, tol)
	overlay, err := section.Overlay(5, 3)
	if err != nil {
		t.Fatal(err)
	}
	check(t, "overlay", overlay.First*degree, 43.976775, tol)
}
