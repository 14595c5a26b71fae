package calc_test

import (
	"testing"

	"brazebooth/calc/formula"
)

// Bead pitch over bead width: 0.738 by the tangent model (Ding 2015, memory high), 2/3 by the flat-top model
// (Suryakumar 2011, memory high), three digits as printed.
func TestBeadPitch(t *testing.T) {
	tangent, flat := formula.BeadPitch(6)
	check(t, "tangent", tangent, 6*0.738, 0.003)
	check(t, "flat-top", flat, 6*2.0/3, 0.003)
}

// Rotation of a shaft: v 6 mm/s on 40 mm is 2.864789 turns a minute (worked; definition).
func TestShaftSpeed(t *testing.T) {
	check(t, "turns a minute", must(t)(formula.ShaftSpeed(6, 40)), 2.864789, 5e-7)
}
