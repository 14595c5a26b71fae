package formula

import "math"

// Groove is a single V between two plates, with upright edges at the root. The root face of a square groove is
// as high as the plate.
type Groove struct {
	Depth   float64 // of the plate, mm
	Opening float64 // between the root faces, mm
	Face    float64 // height of each root face, mm
	Angle   float64 // between both sides, degrees
}

func (g *Groove) slope() float64 { return math.Tan(g.Angle / 2 * math.Pi / 180) }

// Area is the section that fills the groove flush, mm2: b·t + (t − c)²·tan(α/2).
func (g *Groove) Area() float64 {
	v := max(0, g.Depth-g.Face)
	return g.Opening*g.Depth + v*v*g.slope()
}

// BothSides is the section if half of the V is cut from each face, mm2.
func (g *Groove) BothSides() float64 {
	v := max(0, g.Depth-g.Face)
	return g.Opening*g.Depth + v*v/2*g.slope()
}

// Width is the groove's width at the top, mm.
func (g *Groove) Width() float64 { return g.Opening + 2*max(0, g.Depth-g.Face)*g.slope() }

// FilledTo is the height above the root to which this area of metal, mm2, fills the groove, mm; at most its
// depth.
func (g *Groove) FilledTo(area float64) float64 {
	if area >= g.Area() {
		return g.Depth
	}
	if area <= g.Opening*g.Face { // between the root faces
		return area / g.Opening
	}
	k, rest := g.slope(), area-g.Opening*g.Face
	return g.Face + (math.Sqrt(g.Opening*g.Opening+4*k*rest)-g.Opening)/(2*k)
}

// Beads is the number of beads of an area, mm2, that fill a section, mm2: at least one.
func Beads(section, bead float64) float64 { return math.Max(1, math.Ceil(section/bead-1e-9)) }

// PassPeriod is the time from the start of one pass to the start of the next at the same place, s, at which the
// plate is at most rise K above its first temperature before the last of n passes. Each pass leaves
// H/(t·√(4πkρcτ))·e^(−2hτ/ρct) after τ s: a line source deposited at once in a wide plate that loses heat from
// both faces. net J/mm; t mm; k W/mmK; rhoC J/mm3K; film W/m2K. Error: longer than LongestHold. Source:
// Rosenthal's thin plate (memory high), summed over the passes.
func PassPeriod(net, t, k, rhoC, film, rise, n float64) (float64, error) {
	if err := Positive([7]string{"net heat", "thickness", "conductivity", "heat capacity", "film", "rise", "passes"},
		net, t, k, rhoC, film, rise, n); err != nil {
		return 0, err
	}
	left := func(period float64) float64 {
		sum := 0.0
		for i := 1.0; i < n; i++ {
			s := i * period
			sum += net / (t * math.Sqrt(4*math.Pi*k*rhoC*s)) * math.Exp(-2*film*1e-6*s/(rhoC*t))
		}
		return sum
	}
	low, high := 1e-3, float64(LongestHold)
	if left(high) > rise {
		return high, Outside("hold", high, "the plate does not cool to the limit in six hours")
	}
	for high-low > 1e-3*high {
		if mid := math.Sqrt(low * high); left(mid) > rise {
			low = mid
		} else {
			high = mid
		}
	}
	return high, nil
}
