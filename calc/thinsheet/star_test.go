package thinsheet

import (
	"math"
	"testing"
)

// Three equal half planes under one Gaussian heat up like a plate of half their summed thickness, because by
// symmetry no heat crosses the joint.
func TestStarOfThree(t *testing.T) {
	in := dryInput(1.8, 0.25, 40)
	arm := in.Arms[0]
	in.Arms, in.Mirror = []Arm{arm, arm, arm}, false
	in.Power = 1500
	s, err := New(in)
	if err != nil {
		t.Fatal(err)
	}
	march(s, 0.5, 0.005, true)
	want := 1500 / (4 * math.Pi * k0 * 1.5) * math.Log(1+2*8*0.5/(1.8*1.8))
	near(t, "centre", s.Centre(), want, 0.005)
	near(t, "edge", s.Edge(2), want, 0.005)
}

// One arm is dark: its heat comes through the joint. Two equal arms of which one is lit are a plate with half a
// Gaussian on it: by superposition the rise in its middle is half that of a whole Gaussian.
func TestStarHalfLit(t *testing.T) {
	in := dryInput(1.8, 0.25, 40)
	dark := in.Arms[0]
	dark.Lit = false
	in.Arms, in.Mirror = []Arm{in.Arms[0], dark}, false
	in.Power = 1000 // all on one side: half of a whole Gaussian of twice the power
	s, err := New(in)
	if err != nil {
		t.Fatal(err)
	}
	march(s, 0.5, 0.005, true)
	near(t, "centre", s.Centre(), 2474.671392, 0.005)
}
