// Package section computes the cross-section of a brazed joint: the bead's shape and, under a moving arc, how far it
// wets and how hot the members get. Numbers in, numbers out; the materials are in tables.
package section

import (
	"errors"
	"math"
)

// ErrRange is wrapped by every error about an input outside the model's range.
var ErrRange = errors.New("outside the section model's range")

// Segment returns S(φ) = (φ − sin φ·cos φ)/sin²φ, the area of a circular segment over a quarter of its chord squared.
// φ is the angle between chord and arc at a toe, rad, in (−π, π); negative is concave.
func Segment(phi float64) float64 {
	if math.Abs(phi) < 0.02 { // the difference loses digits: use the quotient's series
		return phi * (2.0/3 + phi*phi*(4.0/45+phi*phi*(4.0/315)))
	}
	s := math.Sin(phi)
	return (phi - s*math.Cos(phi)) / (s * s)
}

// SegmentAngle is the inverse of Segment, rad. It returns ErrRange for an area that no single arc over the
// chord can have.
func SegmentAngle(s float64) (float64, error) {
	if math.IsNaN(s) || math.Abs(s) > 1e6 {
		return 0, ErrRange
	}
	if s < 0 {
		phi, err := SegmentAngle(-s)
		return -phi, err
	}
	// S grows without bound on (0, π): bisection first, then Newton's rule.
	lo, hi := 0.0, math.Pi
	for range 20 {
		mid := (lo + hi) / 2
		if Segment(mid) < s {
			lo = mid
		} else {
			hi = mid
		}
	}
	phi := (lo + hi) / 2
	if s < 0.02 {
		phi = 1.5 * s // the series' first term: bisection does not resolve so flat a bead
	}
	for range 6 {
		sin := math.Sin(phi)
		slope := 2 - 2*math.Cos(phi)/sin*Segment(phi)
		if phi < 0.02 {
			slope = 2.0 / 3
		}
		next := phi - (Segment(phi)-s)/slope
		if !(next > 0 && next < math.Pi) {
			break
		}
		phi = next
	}
	return phi, nil
}

// Toes are a bead's two toe angles, rad, measured inside the bead between its surface and the member, and its
// chord.
type Toes struct {
	First, Second float64 // at the first and the second member
	Chord         float64 // from toe to toe, mm
	Phi           float64 // between chord and surface; negative is concave
}

// Larger returns the larger toe angle, which an inspector looks at first.
func (t Toes) Larger() float64 { return max(t.First, t.Second) }

// beadOver solves c²/4·S(φ) = area − chordArea for φ.
func beadOver(area, chordArea, chord2 float64) (float64, error) {
	if !(chord2 > 0) || !(area > 0) {
		return 0, ErrRange
	}
	return SegmentAngle(4 * (area - chordArea) / chord2)
}

// Lap: the first member, thickness t, lies on the second; wu and wl are the wetted widths on the upper face of the
// first and on the second. The lower toe is on the second member. Metal runs into a gap under the first member for the
// length in.
func Lap(area, wu, wl, t, gap, in float64) (Toes, error) {
	high := t + gap
	c2 := (wu+wl)*(wu+wl) + high*high
	phi, err := beadOver(area, high*(wl-wu)/2+gap*in, c2)
	beta := math.Atan2(high, wu+wl)
	return Toes{phi - beta, phi + beta, math.Sqrt(c2), phi}, err
}

// Tee: the first member stands on the second; ws and wp are the wetted widths on each. Metal runs into a gap under the
// first member for the length in.
func Tee(area, ws, wp, gap, in float64) (Toes, error) {
	high := ws + gap
	c2 := high*high + wp*wp
	phi, err := beadOver(area, high*wp/2+gap*in, c2)
	beta := math.Atan2(high, wp)
	return Toes{phi + math.Pi/2 - beta, phi + beta, math.Sqrt(c2), phi}, err
}

// Butt: w1 and w2 are the wetted widths on the faces beside a gap, in sheet of thickness t.
func Butt(area, w1, w2, gap, t float64) (Toes, error) {
	c := w1 + w2 + gap
	phi, err := beadOver(area, gap*t, c*c)
	return Toes{phi, phi, c, phi}, err
}

// Corner: an outside corner with an open notch of t1 by t2. A gap separates the edges along the chord of the notch;
// metal fills it to the notch's height.
func Corner(area, w1, w2, t1, t2, gap float64) (Toes, error) {
	x, y := w1+t2, t1+w2
	c := math.Hypot(x, y) + gap
	phi, err := beadOver(area, (t1*t2-w1*t1-w2*t2-w1*w2)/2+gap*t1*t2/math.Hypot(t1, t2), c*c)
	beta := math.Atan2(y, x)
	return Toes{phi - beta, phi - math.Pi/2 + beta, c, phi}, err
}

// Edge: two sheets side by side with a gap between them, their edges flush; w1 and w2 are the lengths down from
// the edge over which each is hot enough to wet, t1 and t2 the thicknesses. The bead lies on both edges and
// runs down the outer faces: its wetted surface is unfolded into one face, as if the sheets of a butt were
// folded back up.
func Edge(area, w1, w2, t1, t2, gap float64) (Toes, error) {
	return Butt(area, EdgeWidth(w1, t1), EdgeWidth(w2, t2), gap, 0)
}

// EdgeWidth is the width that a bead wets on one sheet of an edge joint, edge and outer face together, mm, if
// the sheet of thickness t is hot enough down to w. A sheet that is barely hot enough is wetted as far across
// its edge as down its face.
func EdgeWidth(w, t float64) float64 { return w + min(w, t) }

// Overlay: a bead on one face with a wetted width of w to each side.
func Overlay(area, w float64) (Toes, error) {
	phi, err := beadOver(area, 0, 4*w*w)
	return Toes{phi, phi, 2 * w, phi}, err
}
