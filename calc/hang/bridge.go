package hang

import (
	"math"

	"brazebooth/tables"
)

// Bridge holds the margins of the four ways in which an open root can fail.
type Bridge struct {
	Span float64 // the liquid runs along the gap by itself
	Land float64 // the wire cannot pass the gap, or ends in the puddle
	Hold float64 // surface tension carries the metal and the arc's push
	Sag  float64 // the root's bead is no higher than an inspector accepts
}

// Least is the edge "bridges".
func (b *Bridge) Least() float64 { return min(b.Span, b.Land, b.Hold, b.Sag) }

// Bridge returns the margins of an opening. If the gap is wider than Span allows, the front runs back at about
// √(2σ/ρt), half a metre a second: faster than any travel.
func (o *Opening) Bridge() Bridge {
	r := o.Root()
	return Bridge{
		Span: margin(r.Slot, o.Gap),
		Land: o.land(&r),
		Hold: margin(2/r.RootChord*o.grip(&r), r.Under),
		Sag:  margin(tables.RootBulge.V+tables.RootBulgePerWidth.V*r.RootChord, r.Sag),
	}
}

// land combines two ways to keep the wire out of the gap, with a soft maximum: a wire thicker than the gap
// cannot pass it, and a wire that ends in the puddle, half a diameter and the clearance behind the puddle's
// front, melts.
func (o *Opening) land(r *Root) float64 {
	const soft = 0.15
	d := o.Wire
	thick := margin(d, o.Gap)
	within := math.Log(max(0.1*d, r.Puddle+d) / (1.5*d + tables.LandClearance.V))
	top := max(thick, within)
	sum := math.Exp((thick-top)/soft) + math.Exp((within-top)/soft)
	return max(-Most, min(Most, top+soft*math.Log(sum)))
}

// grip is the share of a half circle's pressure that a root carries before it pinches off: a fit to the
// Young-Laplace equation of a pendant strip, within 3 % up to a chord of two capillary lengths. It is 1 if
// gravity does not pull into the root.
func (o *Opening) grip(r *Root) float64 {
	if o.Down <= 0 {
		return 1
	}
	x := r.RootChord / (math.Pi * o.Liquid.Length())
	return math.Pow(max(1e-3, 1-o.Down*x*x), 1.8)
}

// Backed is the widest gap, mm, of a root on a bar or strip: twice the arc's standard deviation, mm. Over a
// wider gap the arc reaches too little of both edges.
func Backed(arcWidth float64) float64 { return 2 * arcWidth }
