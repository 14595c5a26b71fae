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
)

// Input is one section under one moving arc. Lengths mm, time s, heat J, temperature C.
type Input struct {
	Joint  Joint
	Thick  [2]float64 // metal alone
	Base   [2]Material
	Filler Filler
	Heat   float64 // net, the filler's own included, J/mm
	Bead   float64 // metal laid, mm2
	Travel float64 // mm/s
	Sigma  float64 // of arc and filler, mm
	Aim    float64 // arc's offset toward the second member, mm
	Gap    float64 // of a butt, mm
	Loss   float64 // from each face, W/mm2K
	Start  float64 // of the parts, C
	Lowest float64 // isotherm to follow outward at the end, C; 0: none
}

// Result is what the section reached. Index 0 is the first member, 1 the second.
type Result struct {
	Wet      [2]float64 // wetted width on each member's bead side, mm
	Skin     [2]float64 // peak of the skin, C
	Core     [2]float64 // peak of the core, mean over one sigma beside the joint, C
	Front    [2]Profile // peaks along the bead's face of each member
	Back     [2]Profile // peaks along its other face
	Residual float64    // of the energy balance, relative
	Steps    int
	Work     int // what it took to compute: columns times steps, see layersWork
}

// Profile is a peak temperature along one face of a member, from the joint outward.
type Profile struct {
	n    int
	at   [maxColumns]float32 // mm
	peak [maxColumns]float32 // C
}

// Reach returns how far from the joint the peak reaches a temperature, mm: 0 where it never does, NaN where it does
// so beyond the grid.
func (p *Profile) Reach(temperature float64) float64 {
	t := float32(temperature)
	if p.n == 0 || p.peak[0] < t {
		return 0
	}
	for i := 1; i < p.n; i++ {
		if p.peak[i] < t {
			return p.between(i, temperature)
		}
	}
	return math.NaN()
}

// between finds where the peak crosses a temperature inside the cell before column i, on the parabola through three
// columns: on a straight line the width would jump a little as the grid shifts, and margins are differences of widths.
func (p *Profile) between(i int, temperature float64) float64 {
	k := i + 1
	if k >= p.n {
		k = i - 2
	}
	x0, x1, y0, y1 := float64(p.at[i-1]), float64(p.at[i]), float64(p.peak[i-1]), float64(p.peak[i])
	straight := x0 + (y0-temperature)/(y0-y1)*(x1-x0)
	if k < 0 {
		return straight
	}
	x2, y2 := float64(p.at[k]), float64(p.peak[k])
	bend := ((y2-y0)/(x2-x0) - (y1-y0)/(x1-x0)) / (x2 - x1)
	lo, hi := x0, x1
	for range 24 {
		mid := (lo + hi) / 2
		if y0+(mid-x0)*((y1-y0)/(x1-x0)+bend*(mid-x1)) >= temperature {
			lo = mid
		} else {
			hi = mid
		}
	}
	if math.IsNaN(bend) {
		return straight
	}
	return (lo + hi) / 2
}

func (in *Input) check() error {
	members := 2
	if in.Joint == OverlayJoint {
		members = 1
	}
	for i := range members {
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
	case !(in.Loss >= 0 && in.Loss < 1) || !(math.Abs(in.Start) < 2000) || !(in.Gap >= 0 && in.Gap < 100):
		return fmt.Errorf("%w: loss %g, start %g or gap %g", ErrRange, in.Loss, in.Start, in.Gap)
	}
	return nil
}
