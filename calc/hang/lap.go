package hang

import (
	"fmt"
	"math"

	"brazebooth/calc/formula"
	"brazebooth/tables"
)

// creep is how far metal runs into the gap of a lap or tee, mm; a tee's gap is only as deep as its sheet is
// thick.
func (j *Joint) creep() float64 {
	w := tables.CreepsIn.V * min(j.Wet[0], j.Wet[1])
	if j.Kind == "tee" {
		w = min(w, j.Thick[0])
	}
	return w
}

// TouchHeight returns the height of a ridge of liquid over the joint's line, mm; it does not touch the other
// sheet across a wider gap. The ridge is circular, on the wetted width of the through member and on the width
// that creeps into the gap. It is at most half a circle: on a narrower wetted width it is a half circle about
// the middle of that width, because a steeper ridge would get higher the less it wets. bead liquid, mm2;
// through and in mm.
func TouchHeight(bead, through, in float64) (float64, error) {
	if !(bead > 0 && bead < 1e4 && through >= 0 && through < 1e3 && in >= 0 && in < 1e3) {
		return 0, fmt.Errorf("%w: ridge of %g mm2 on %g and %g mm", formula.ErrRange, bead, through, in)
	}
	chord, off := through+in, (through-in)/2
	half := math.Sqrt(2 * bead / math.Pi) // radius of half a circle
	if chord <= 2*half {
		return math.Sqrt(half*half - off*off), nil
	}
	want := 4 * bead / (chord * chord)
	phi := zero(func(phi float64) float64 { return segment(phi) - want }, 0, math.Pi/2)
	// From the chord: z(x) = c/2·(√(1/sin²φ − u²) − cot φ), u = x over half the chord, written so that a flat
	// ridge loses no digits in the difference of two long radii.
	sin, cos := math.Sincos(phi)
	u := 2 * off / chord
	return chord / 2 * (1 - u*u) * sin / (math.Sqrt(1-u*u*sin*sin) + cos), nil
}

// NeedFillet is the metal, mm2, that a lap or tee needs over a gap: a fillet as high as gap and leg together,
// and the metal that creeps in.
func NeedFillet(gap, leg, in float64) float64 { return (gap+leg)*(gap+leg)/2 + gap*in }

// NeedCorner is the metal, mm2, that the notch of an outside corner needs: the triangle between the two edges,
// and the same height over the width by which the gap separates them along the bead's chord.
func NeedCorner(gap, t1, t2 float64) float64 { return t1 * t2 * (0.5 + gap/math.Hypot(t1, t2)) }

// Throat returns the throat of a fillet over a gap, mm: from the upper sheet's lower edge at right angles to
// the face. z is the wetted height of the upper sheet's edge, w the wetted width of the through member, gap the
// gap under the upper sheet, all mm.
func Throat(z, w, gap float64) (float64, error) {
	if !(z > 0 && w > 0 && gap >= 0) || math.IsInf(z+w+gap, 1) {
		return 0, fmt.Errorf("%w: throat of %g by %g mm over a gap of %g mm", formula.ErrRange, z, w, gap)
	}
	return z * w / math.Hypot(w, gap+z), nil
}

// touches is the height of the metal compared with the gap.
func (j *Joint) touches() float64 {
	high, err := TouchHeight(j.liquidBead(), j.Wet[1], j.creep())
	if err != nil {
		return -Most
	}
	return margin(high, j.Gap)
}
