package formula

import "math"

// MovingThickHalfWidth returns the distance to the side of a moving point source on a thick plate within which
// the peak rise is at least rise K, mm: Rosenthal's thick source without loss, exact for constant properties.
// net J/mm; travel mm/s; rhoC J/mm3K; k W/mmK. In Christensen's numbers n = qv/(4πa²ρc·rise) and ψ = vy/2a the
// hottest moment has a parameter x, the distance from the source times v/2a: n = x·e^(x/(1+x)), ψ =
// x·√(1+2x)/(1+x). Source: Christensen, Davies and Gjermundsen, British Welding Journal 1965 (memory high). As
// travel grows it tends to √(2·net/(πe·ρc·rise)).
func MovingThickHalfWidth(net, travel, rhoC, k, rise float64) (float64, error) {
	if err := Positive([7]string{"net heat", "travel", "heat capacity", "conductivity", "rise"},
		net, travel, rhoC, k, rise); err != nil {
		return 0, err
	}
	a := k / rhoC
	n := net * travel * travel / (4 * math.Pi * a * a * rhoC * rise)
	if n < 1e-9 || n > 1e9 {
		return 0, Outside("net heat", net, "neither a point nor a line")
	}
	// n lies between x and e·x, and grows faster than x.
	x := newton(math.Log(n)-0.5, func(x float64) (float64, float64) {
		return math.Log(x) + x/(1+x) - math.Log(n), 1 + x/((1+x)*(1+x))
	})
	return x * math.Sqrt(1+2*x) / (1 + x) * 2 * a / travel, nil
}
