package calc_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"

	"brazebooth/calc"
	"brazebooth/tables"
)

// EN 1993-1-2:2005 3.4.1.2 and 3.4.1.3 (read): the curves' printed points, J/kgK and W/mK; and their means, by a
// general-purpose quadrature, against the one constant that a metal's row carries.
func TestSteelCurves(t *testing.T) {
	ok := must(t)
	check(t, "c 20", 1000*ok(calc.SteelSpecificHeat(20)), 440, 0.5)
	check(t, "c 600", 1000*ok(calc.SteelSpecificHeat(600)), 760, 0.5)
	check(t, "c 735", 1000*ok(calc.SteelSpecificHeat(735)), 5000, 0.5)
	check(t, "c 900", 1000*ok(calc.SteelSpecificHeat(900)), 650, 1e-6) // from here on a constant, so exact
	check(t, "c 1200", 1000*ok(calc.SteelSpecificHeat(1200)), 650, 0.5)
	check(t, "k 20", 1000*ok(calc.SteelConductivity(20)), 53.3, 0.05)
	check(t, "k 800", 1000*ok(calc.SteelConductivity(800)), 27.3, 1e-6) // likewise
	check(t, "k 1200", 1000*ok(calc.SteelConductivity(1200)), 27.3, 0.05)
}

func TestSteelMeans(t *testing.T) {
	ok := must(t)
	mean := func(f func(float64) (float64, error), from, to float64) float64 {
		sum := 0.0
		edges := []float64{from, 600, 700, 734, 735, 736, 745, 800, 900, to} // where the curve bends
		for i := 1; i < len(edges); i++ {
			a, b := math.Max(from, edges[i-1]), math.Min(to, edges[i])
			if a < b {
				sum += quad.Fixed(func(t float64) float64 { return ok(f(t)) }, a, b, 60, nil, 0)
			}
		}
		return sum / (to - from)
	}
	steel, _ := tables.MetalByID("mild-steel")
	rhoC600 := mean(calc.SteelSpecificHeat, 20, 600) * 7.85e-3
	rhoC970 := mean(calc.SteelSpecificHeat, 20, 970) * 7.85e-3
	check(t, "rho c to 600", rhoC600, 0.0045, 0.00005)
	check(t, "rho c to 970", rhoC970, 0.0056, 0.00005)
	check(t, "row", steel.HeatCapacity.V, (rhoC600+rhoC970)/2, 0.0002)
	check(t, "k to 1030", 1000*mean(calc.SteelConductivity, 20, 1030), 37.4, 0.05)
	check(t, "row k", steel.Conductivity.V, 0.0374, 0.0037) // Kou prints 0.041: between the two
}

// Heat to heat steel, J/g from 20 C: 1009.06 to 1480 C with the last value carried on above 1200, worked with an
// independent library.
func TestSteelEnthalpy(t *testing.T) {
	ok := must(t)
	sum := 0.0
	edges := []float64{20, 600, 700, 734, 735, 736, 745, 800, 900, 1200}
	for i := 1; i < len(edges); i++ {
		sum += quad.Fixed(func(t float64) float64 { return ok(calc.SteelSpecificHeat(t)) }, edges[i-1], edges[i], 60, nil, 0)
	}
	check(t, "1480 C", sum+280*ok(calc.SteelSpecificHeat(1200)), 1009.06, 0.005)
}
