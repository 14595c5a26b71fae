package hang

import "math"

// curve is the largest area over a chord, by the chord's length: a table from the Young-Laplace equation. The
// knots are at chords of end·(1 − (1 − s)²), s from 0 to 1 in equal steps, so that the curve is straight near
// its last knot, where it would otherwise be a square root.
type curve struct {
	end   float64             // chord of the last knot, capillary lengths
	past  float64             // area over any longer chord, capillary lengths squared
	knots [curveKnots]float64 // area over the chord squared
}

const curveKnots = 33

// at returns the area over the chord squared for a chord in capillary lengths: a cubic through four knots.
func (c *curve) at(chord float64) float64 {
	if chord >= c.end {
		return c.past / (chord * chord)
	}
	s := (1 - math.Sqrt(1-max(0, chord)/c.end)) * (curveKnots - 1)
	i := max(1, min(curveKnots-3, int(s)))
	u := s - float64(i)
	k := &c.knots
	return -u*(u-1)*(u-2)/6*k[i-1] + (u+1)*(u-1)*(u-2)/2*k[i] - (u+1)*u*(u-2)/2*k[i+1] + (u+1)*u*(u-1)/6*k[i+2]
}

// curveOf returns the curve for the way a bead lies. Past its end, a bead on a wall gets no fuller: its upper
// part is a film and the lower toe carries everything, area·along = 1. Overhead nothing stays.
func curveOf(kind, position string) *curve {
	switch overhead := position == "overhead"; {
	case overhead && kind == "tee":
		return &overheadFilletCurve
	case overhead:
		return &overheadCurve
	case kind == "tee" || kind == "corner": // the chord of both is at 45 degrees
		return &lyingFilletCurve
	}
	return &wallCurve
}

// Holds returns the largest liquid area over a chord, mm2, that hangs at rest: kind of joint, position overhead
// or horizontal, chord mm, capillary length mm.
func Holds(kind, position string, chord, length float64) float64 {
	return curveOf(kind, position).at(chord/length) * chord * chord
}
