package section

import (
	"fmt"
	"math"
)

// Joint is the shape of the section.
type Joint int

// The joints. The first member is the one that ends at the joint.
const (
	LapJoint Joint = iota
	TeeJoint
	ButtJoint
	CornerJoint
	OverlayJoint
	StripJoint // a butt of two equal sheets (first member) on a strip behind the root (second)
)

// Input is one section under one moving arc. Lengths mm, time s, heat J, temperature C.
type Input struct {
	Joint  Joint
	Thick  [2]float64 // metal alone
	Base   [2]Material
	Filler Filler
	Heat   float64 // net, including the filler's own, J/mm
	Bead   float64 // deposited metal, mm2
	Travel float64 // mm/s
	Sigma  float64 // of arc and filler, mm
	Aim    float64 // arc's offset toward the second member, mm
	Gap    float64 // of a butt, mm; under a lap's upper or a tee's standing sheet
	High   float64 // height at which a tee's standing member ends, mm; 0: beyond the heat's reach
	Bar    Bar     // behind a butt; the zero Bar means none
	Loss   float64 // from each face, W/mm2K
	Start  float64 // of the parts, C
	Lowest float64 // C, lowest isotherm whose reach is wanted; 0: none
}

// Bar is a copper bar behind a butt. It stays at the temperature of the parts before the arc.
type Bar struct {
	Dry, Wet float64 // heat transfer from the sheet's back face, and from filler in the gap, W/mm2K
	Groove   float64 // width under the seam where it does not touch, mm
}

// leastHigh is the least height of a standing member that ends, mm.
const leastHigh = 2.0

func (in *Input) check() error {
	for i := range in.members() {
		b := &in.Base[i]
		if !(in.Thick[i] >= 0.02 && in.Thick[i] <= 200) {
			return fmt.Errorf("%w: thickness %g mm, from 0.02 to 200", ErrRange, in.Thick[i])
		}
		if !(b.K > 0 && b.RhoC > 0 && b.Latent >= 0 && b.Liquidus > b.Solidus) {
			return fmt.Errorf("%w: base metal %+v", ErrRange, *b)
		}
	}
	f := &in.Filler
	switch {
	case !(f.K > 0 && f.Stir >= 0.1 && f.RhoC > 0 && f.Latent >= 0 && f.Liquidus > f.Solidus):
		return fmt.Errorf("%w: filler %+v", ErrRange, *f)
	case !(in.Heat > 0 && in.Heat <= 1e5):
		return fmt.Errorf("%w: heat %g J/mm, from 0 to 100000", ErrRange, in.Heat)
	case !(in.Travel >= 0.2 && in.Travel <= 100):
		return fmt.Errorf("%w: travel %g mm/s, from 0.2 to 100", ErrRange, in.Travel)
	case !(in.Bead >= 0 && in.Bead <= 1000):
		return fmt.Errorf("%w: bead %g mm2, from 0 to 1000", ErrRange, in.Bead)
	case !(in.Sigma >= 0.3 && in.Sigma <= 10 && math.Abs(in.Aim) <= 10):
		return fmt.Errorf("%w: arc width %g mm or aim %g mm", ErrRange, in.Sigma, in.Aim)
	case !(in.Bar.Dry >= 0 && in.Bar.Dry < 1 && in.Bar.Wet >= 0 && in.Bar.Wet < 1 && in.Bar.Groove >= 0):
		return fmt.Errorf("%w: bar %+v", ErrRange, in.Bar)
	case in.High != 0 && !(in.High >= leastHigh && in.High < 1e4):
		return fmt.Errorf("%w: a standing member %g mm high, from %g", ErrRange, in.High, leastHigh)
	case in.Joint == StripJoint && !(in.Gap >= leastOpen):
		return fmt.Errorf("%w: a strip behind a gap of %g mm, from %g", ErrRange, in.Gap, leastOpen)
	case !(in.Loss >= 0 && in.Loss < 1) || !(math.Abs(in.Start) < 2000) || !(in.Gap >= 0 && in.Gap < 100):
		return fmt.Errorf("%w: loss %g, start %g or gap %g", ErrRange, in.Loss, in.Start, in.Gap)
	}
	return nil
}

// evenButt reports whether the two halves of a butt are equal.
func (in *Input) evenButt() bool {
	return in.Joint == ButtJoint && in.Aim == 0 && in.Thick[0] == in.Thick[1] && in.Base[0] == in.Base[1]
}

// members is the number of the joint's members.
func (in *Input) members() int {
	if in.Joint == OverlayJoint {
		return 1
	}
	return 2
}
