package thinsheet

import (
	"fmt"
	"math"
)

// Plug is a hole in one sheet on another, and the arc that fills it: rings about the hole's middle, one
// temperature through the lower sheet and the bronze on it, another through the upper sheet around the hole.
// Lengths mm, time s, temperature C.
type Plug struct {
	Hole         float64 // diameter
	Upper, Lower float64 // thickness of the sheets
	Crown        float64 // final height of the bronze over the upper sheet
	Top, Below   Material
	Filler       Material
	Stir         float64 // factor on the conductivity of liquid filler
	Power        float64 // into the work, including the drops' heat, W
	Spread       float64 // standard deviation of the arc
	Led          float64 // radius of the circle on which the arc moves, fast compared with the filling
	Seconds      float64 // in which the hole is filled, at a constant rate
	Contact      float64 // between the sheets around the hole, W/mm2K
	Start        float64 // of the parts; the wire starts at 20
}

const (
	plugRings  = 8   // least number across the hole's radius
	plugFine   = 3   // least number of rings across the arc's standard deviation
	plugWider  = 1.3 // ratio of the widths of successive rings outside the hole
	plugAround = 48  // number of points on the arc's circle
)

func (in *Plug) check() error {
	for _, m := range [...]*Material{&in.Top, &in.Below, &in.Filler} {
		if err := m.check(); err != nil {
			return err
		}
	}
	for _, v := range [...]float64{in.Hole, in.Upper, in.Lower, in.Power, in.Spread, in.Seconds} {
		if !(v > 0 && v < 1e6) {
			return fmt.Errorf("%w: a plug's size, power or time of %g", ErrRange, v)
		}
	}
	if !(in.Contact >= 0 && in.Contact < 1) || !(in.Led >= 0 && in.Led < 1e3) || !(in.Crown >= 0 && in.Crown < 1e3) {
		return fmt.Errorf("%w: contact %g W/mm2K, circle %g mm, crown %g mm", ErrRange, in.Contact, in.Led, in.Crown)
	}
	if !(in.Start >= -50 && in.Start < 1500) || !(in.Stir >= 0.1 && in.Stir <= 20) {
		return fmt.Errorf("%w: parts at %g C, stirring %g", ErrRange, in.Start, in.Stir)
	}
	if in.melting() >= in.Power {
		return fmt.Errorf("%w: %g W do not melt so much filler in %g s", ErrRange, in.Power, in.Seconds)
	}
	return nil
}

// melting is the part of the power that melts the filler, W.
func (in *Plug) melting() float64 {
	h, _ := in.Filler.at(in.Filler.Liquidus)
	return math.Pi / 4 * in.Hole * in.Hole * (in.Upper + in.Crown) * in.Filler.Density * h / in.Seconds
}

// Filled is a plug when its hole is full.
type Filled struct {
	Rim, Middle float64   // temperature of the lower sheet at the hole's rim and in its middle, C
	radii, t    []float64 // of the lower sheet's rings
}

// Fill returns the plug when it is full. No heat is lost from the faces, because a plug takes only seconds.
// Errors wrap ErrRange.
func (in *Plug) Fill() (Filled, error) {
	if err := in.check(); err != nil {
		return Filled{}, err
	}
	p := newPool(in)
	p.fill()
	n, b := p.hole, p.below.ring
	f := Filled{Middle: b[0].t}
	for i := range b {
		f.radii, f.t = append(f.radii, (p.edge[i]+p.edge[i+1])/2), append(f.t, b[i].t)
	}
	x := (p.edge[n] - f.radii[n-1]) / (f.radii[n] - f.radii[n-1])
	f.Rim = f.t[n-1] + x*(f.t[n]-f.t[n-1])
	return f, nil
}

// Within is the diameter on which the lower sheet is hotter than t, mm; at most the hole's, where the bronze
// ends.
func (f *Filled) Within(t, hole float64) float64 {
	if f.Rim >= t {
		return hole
	}
	for i := len(f.t) - 2; i >= 0; i-- {
		if f.t[i] >= t {
			x := (f.t[i] - t) / (f.t[i] - f.t[i+1])
			return min(hole, 2*(f.radii[i]+x*(f.radii[i+1]-f.radii[i])))
		}
	}
	return 0
}
