package thinsheet

import (
	"fmt"
	"math"
	"sync/atomic"
)

// Arm is one half plane of the joint, from the line y = 0 outward.
type Arm struct {
	Base  Material
	Thick float64 // mm
	Lit   bool    // arc and filler reach it
	Aim   float64 // place of the arc's middle on this arm, mm; negative on the other side
	Sigma float64 // of arc and filler across it, mm
}

// Input is a joint and its heat source. Lengths mm, time s, temperature C.
type Input struct {
	Arms     []Arm // one to three
	Mirror   bool  // one arm represents two equal ones
	Gap      float64
	Sigma    float64 // of arc and filler along the seam
	Filler   Material
	Stir     float64 // factor on the conductivity of liquid filler
	Power    float64 // into the work, including the drops' heat, W
	Feed     float64 // deposited filler, g/s
	Droplet  float64 // enthalpy of arriving filler over 20 C, J/g
	Loss     float64 // from each face, W/mm2K
	Radiates float64 // emissivity times Stefan and Boltzmann's constant, W/mm2K4, from each face
	Start    float64 // of the parts, and of the air
	Cell     float64 // side of the cells near the arc; 0 means 0.5, more if the arc points far off
	Near     float64 // distance from the arc up to which cells have that size; 0 means four times the arc's width
	Ahead    float64 // of the arc; 0 means 15 (Behind 20, Aside 25), times √(a/12) if diffusivity a is above 12
	Behind   float64
	Aside    float64

	count *atomic.Int64 // cells times stages, of all sheets of one Run; may be nil
}

// Default sizes, mm.
const (
	usualCell   = 0.5
	usualAhead  = 15
	usualBehind = 20
	usualAside  = 25
	usualQuick  = 12.0 // mm2/s, diffusivity up to which the sizes hold
	widestNear  = 12.0 // enough for usual joints; an arc that points far off gets as many but larger cells
)

func (in *Input) check() error {
	if n := len(in.Arms); n < 1 || n > 3 || in.Mirror && n != 1 {
		return fmt.Errorf("%w: %d arms, mirrored %v", ErrRange, n, in.Mirror)
	}
	if err := in.Filler.check(); err != nil {
		return err
	}
	lit := false
	for i := range in.Arms {
		a := &in.Arms[i]
		if err := a.Base.check(); err != nil {
			return err
		}
		if !(a.Thick >= 0.02 && a.Thick <= 20) || !(math.Abs(a.Aim) <= 10) || a.Lit &&
			!(a.Sigma >= 0.3 && a.Sigma <= 10) {
			return fmt.Errorf("%w: arm of %g mm, aim %g mm, arc width %g mm", ErrRange, a.Thick, a.Aim, a.Sigma)
		}
		lit = lit || a.Lit
	}
	switch {
	case !lit:
		return fmt.Errorf("%w: no arm is lit", ErrRange)
	case !(in.Gap >= 0 && in.Gap <= 20) || !(in.Stir >= 0.1 && in.Stir <= 20):
		return fmt.Errorf("%w: gap %g mm, stirring %g", ErrRange, in.Gap, in.Stir)
	case !(in.Power >= 0 && in.Power < 1e5) || !(in.Feed >= 0 && in.Feed < 100) ||
		!(in.Droplet >= 0 && in.Droplet < 1e4):
		return fmt.Errorf("%w: power %g W, filler %g g/s at %g J/g", ErrRange, in.Power, in.Feed, in.Droplet)
	case !(in.Sigma >= 0.3 && in.Sigma <= 10):
		return fmt.Errorf("%w: arc width %g mm", ErrRange, in.Sigma)
	case in.Feed*in.Droplet > in.Power:
		return fmt.Errorf("%w: the drops bring %g W of %g", ErrRange, in.Feed*in.Droplet, in.Power)
	case !(in.Loss >= 0 && in.Loss < 1) || !(in.Radiates >= 0 && in.Radiates < 1e-12) ||
		!(in.Start > -200 && in.Start < 1500):
		return fmt.Errorf("%w: loss %g, radiation %g, start %g C", ErrRange, in.Loss, in.Radiates, in.Start)
	case in.Cell < 0 || in.Cell > 5 || in.Ahead < 0 || in.Behind < 0 || in.Aside < 0 || in.Near < 0 || in.Near > 100 ||
		in.Cell != 0 && in.Cell < 0.02:
		return fmt.Errorf("%w: cells of %g mm on %g + %g by %g mm", ErrRange, in.Cell, in.Ahead, in.Behind, in.Aside)
	}
	return nil
}

// sized fills in the sizes that were left open.
func (in Input) sized() Input {
	quick := 0.0
	for i := range in.Arms {
		quick = max(quick, in.Arms[i].Base.Diffusivity())
	}
	stretch := max(1, math.Sqrt(quick/usualQuick))
	fill := func(v *float64, usual float64) {
		if *v == 0 {
			*v = usual
		}
	}
	near := 4 * in.Sigma
	for i := range in.Arms {
		if a := &in.Arms[i]; a.Lit {
			near = max(near, 4*a.Sigma+math.Abs(a.Aim))
		}
	}
	fill(&in.Cell, usualCell*max(1, near/widestNear))
	fill(&in.Near, near)
	fill(&in.Ahead, usualAhead*stretch)
	fill(&in.Behind, usualBehind*stretch)
	fill(&in.Aside, usualAside*stretch)
	return in
}
