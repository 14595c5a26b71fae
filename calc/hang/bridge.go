package hang

import (
	"math"

	"brazebooth/tables"
)

// Bridge is the four ways in which an open root fails, each as a margin.
type Bridge struct {
	Span float64 // liquid runs along the gap by itself
	Land float64 // the wire cannot pass, or ends in the puddle
	Hold float64 // tension carries metal and arc
	Sag  float64 // the root's bead is no higher than an inspector accepts
}

// Least is the edge "bridges".
func (b *Bridge) Least() float64 { return min(b.Span, b.Land, b.Hold, b.Sag) }

// Bridge returns the margins of an opening. Span beyond its edge lets the front run back at about √(2σ/ρt), half a
// metre a second: faster than any travel.
func (o *Opening) Bridge() Bridge {
	r := o.Root()
	return Bridge{
		Span: margin(r.Slot, o.Gap),
		Land: o.land(&r),
		Hold: margin(2/r.RootChord*o.grip(&r), r.Under),
		Sag:  margin(tables.RootBulge.V+tables.RootBulgePerWidth.V*r.RootChord, r.Sag),
	}
}

// land joins the two ways to keep the wire out of the gap softly: a wire thicker than the gap cannot pass, and one
// that ends in the puddle, half a diameter and the clearance behind its front, melts.
func (o *Opening) land(r *Root) float64 {
	const soft = 0.15
	d := o.Wire
	thick := margin(d, o.Gap)
	within := math.Log(max(0.1*d, r.Puddle+d) / (1.5*d + o.Assumed.Clearance))
	top := max(thick, within)
	sum := math.Exp((thick-top)/soft) + math.Exp((within-top)/soft)
	return max(-Most, min(Most, top+soft*math.Log(sum)))
}

// grip is how much of a half circle's pressure a root carries before it pinches off: a fit to the pendant strip's
// Young-Laplace equation, within 3 % up to a chord of two capillary lengths. Without gravity into the root it is all.
func (o *Opening) grip(r *Root) float64 {
	if o.Down <= 0 {
		return 1
	}
	x := r.RootChord / (math.Pi * o.Liquid.Length())
	return math.Pow(max(1e-3, 1-o.Down*x*x), 1.8)
}
