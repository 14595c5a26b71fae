package hang

import (
	"math"

	"brazebooth/calc/formula"
)

// Spot is an arc that moves over wide sheet. Its heat is a Gaussian over the face and even through the
// thickness.
type Spot struct {
	Power  float64 // net, without the filler's heat, W
	K      float64 // W/mmK
	RhoC   float64 // J/mm3K
	Thick  float64 // mm
	Width  float64 // standard deviation, mm
	Travel float64 // mm/s
	Start  float64 // C
}

// integrate is the sheet's steady-state temperature, C, at x ahead of the arc and y to its side, mm, in n steps, an
// even number.
//
//	T = T0 + q/(2πρc·t) ∫ exp(−((x+vτ)² + y²)/2D)/D dτ from 0 on, D = σ² + 2aτ
//
// The heat deposited a time τ ago has spread to D. In u = ln(D/σ²) the integrand is smooth and the range finite.
func (s *Spot) integrate(x, y float64, n int) float64 {
	a := s.K / s.RhoC
	square := s.Width * s.Width
	// Heat deposited longer ago than this has faded to less than e^-45.
	last := (45*4*a/s.Travel + 2*math.Abs(x) + 2*s.Width) / s.Travel
	h := math.Log1p(2*a*last/square) / float64(n)
	sum := 0.0
	for i := range n + 1 {
		spread := square * math.Exp(h*float64(i))
		along := x + s.Travel*(spread-square)/(2*a)
		weight := 2 + 2*float64(i%2) // Simpson's rule
		if i == 0 || i == n {
			weight = 1
		}
		sum += weight * math.Exp(-(along*along+y*y)/(2*spread))
	}
	return s.Start + s.Power/(4*math.Pi*s.K*s.Thick)*sum*h/3
}

// Front is how far ahead of the arc the sheet under its path reaches a temperature, C, in mm, to about a hundredth of
// the arc's width; negative behind. The cross-section's own front lies between −0.7 and +0.4 mm of it in a good zone.
// If the temperature is not reached, it is the place where the sheet is hottest, which joins the other case without a
// jump.
func (s *Spot) Front(temperature float64) float64 {
	const steps, near, halvings = 48, 3e-3, 12
	low := s.hottest(steps, near)
	if !(s.integrate(low, 0, steps) > temperature) {
		return low
	}
	low, high := formula.Bisect(low, low+10*s.Width, halvings, func(x float64) bool {
		return s.integrate(x, 0, steps) > temperature
	})
	return (low + high) / 2
}

// hottest is the place of the greatest temperature under the arc's path, mm, behind the arc: by golden section
// to a share near of the arc's width, each integral in n steps. Ahead of it the temperature only falls.
func (s *Spot) hottest(n int, near float64) float64 {
	golden := (3 - math.Sqrt(5)) / 2
	low, high := -40*s.Width, s.Width
	a, b := low+golden*(high-low), high-golden*(high-low)
	ta, tb := s.integrate(a, 0, n), s.integrate(b, 0, n)
	for high-low > near*s.Width {
		if ta < tb {
			low, a, ta = a, b, tb
			b = high - golden*(high-low)
			tb = s.integrate(b, 0, n)
		} else {
			high, b, tb = b, a, ta
			a = low + golden*(high-low)
			ta = s.integrate(a, 0, n)
		}
	}
	return (low + high) / 2
}
