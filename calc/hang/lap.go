package hang

import (
	"fmt"
	"math"

	"brazebooth/calc/formula"
)

// creep is how far metal runs into the gap of a lap or tee, mm; a tee's gap is no deeper than its sheet is thick.
func (j *Joint) creep() float64 {
	w := j.Assumed.CreepsIn * min(j.Wet[0], j.Wet[1])
	if j.Kind == "tee" {
		w = min(w, j.Thick[0])
	}
	return w
}

// TouchHeight returns how high a ridge of liquid stands over the joint's line, mm: a circular ridge on what the through
// member wets and what creeps into the gap. A wider gap it does not touch. A ridge is at most half a circle: what the
// sheet wets less of than that is wide lies on it as one, about the middle of what it wets. A steeper one would stand
// the higher the less it wets. bead liquid, mm2; through and in mm.
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
	// From the chord: z(x) = c/2·(√(1/sin²φ − u²) − cot φ), u = x over half the chord, without the loss of digits
	// that the difference of two long radii brings to a flat ridge.
	sin, cos := math.Sincos(phi)
	u := 2 * off / chord
	return chord / 2 * (1 - u*u) * sin / (math.Sqrt(1-u*u*sin*sin) + cos), nil
}

// NeedFillet is the metal, mm2, that a lap or tee needs over a gap: a fillet as high as gap and leg, and what creeps
// in.
func NeedFillet(gap, leg, in float64) float64 { return (gap+leg)*(gap+leg)/2 + gap*in }

// NeedCorner is the metal, mm2, that the notch of an outside corner needs: the triangle between the two edges, and
// the same height over the gap by which they stand apart along the bead's chord.
func NeedCorner(gap, t1, t2 float64) float64 { return t1 * t2 * (0.5 + gap/math.Hypot(t1, t2)) }

// Throat returns the throat of a fillet over a gap, mm: from the upper sheet's lower edge square to the face. z is what
// is wetted up the upper sheet's edge, w on the through member, gap under the upper sheet, all mm.
func Throat(z, w, gap float64) (float64, error) {
	if !(z > 0 && w > 0 && gap >= 0) || math.IsInf(z+w+gap, 1) {
		return 0, fmt.Errorf("%w: throat of %g by %g mm over a gap of %g mm", formula.ErrRange, z, w, gap)
	}
	return z * w / math.Hypot(w, gap+z), nil
}

// touches is how far the metal stands over the gap.
func (j *Joint) touches() float64 {
	high, err := TouchHeight(j.liquidBead(), j.Wet[1], j.creep())
	if err != nil {
		return -Most
	}
	return margin(high, j.Gap)
}

// fills is the metal laid over what the joint needs with its gap.
func (j *Joint) fills() float64 {
	if j.Kind == "corner" {
		return margin(j.Bead, NeedCorner(j.Gap, j.Thick[0], j.Thick[1]))
	}
	return margin(j.Bead, NeedFillet(j.Gap, j.Leg, j.creep()))
}
