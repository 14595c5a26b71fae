package calc_test

import (
	"testing"

	"gonum.org/v1/gonum/integrate/quad"

	"brazebooth/calc/section"
	"brazebooth/tables"
)

// steelHeat is the specific heat of the solver's steel at t C, J/kgK: the slope of its enthalpy.
func steelHeat(t float64) float64 {
	const h = 1e-4
	return 1000 * (section.SteelHeat(t+h) - section.SteelHeat(t-h)) / (2 * h)
}

// EN 1993-1-2:2005 3.4.1.2 (read): specific heat of carbon steel at the curve's printed points.
func TestSteelHeats(t *testing.T) {
	check(t, "c 20", steelHeat(20), 440, 0.5)
	check(t, "c 600", steelHeat(600), 760, 0.5)
	check(t, "c 735", steelHeat(735), 5000, 0.5)
	check(t, "c 900", steelHeat(900), 650, 0.5)
	check(t, "c 1200", steelHeat(1200), 650, 0.5)
}

// The enthalpy, integrated from 20 C by an independent library, J/g.
func TestSteelEnthalpy(t *testing.T) {
	for temp, want := range map[float64]float64{600: 335.737818, 735: 475.427813, 970: 677.563843} {
		check(t, at("%g C", temp), section.SteelHeat(temp), want, 1e-3)
	}
	check(t, "on with 0.650 J/gK past 1200 C", section.SteelHeat(1480), 1009.063843, 1e-3)
}

// EN 1993-1-2:2005 3.4.1.3 (read): 54 − 3.33e-2·θ to 800 C, then 27.3 W/mK.
func TestSteelConducts(t *testing.T) {
	for temp, want := range map[float64]float64{20: 53.334, 200: 47.34, 400: 40.68, 600: 34.02, 800: 27.3, 1200: 27.3} {
		check(t, at("%g C", temp), 1000*section.SteelConductivity(temp, 1), want, 1e-6)
	}
}

// The means of the curves against the single constant in a metal's row.
func TestSteelMeans(t *testing.T) {
	steel, _ := tables.Metals.ByID("mild-steel")
	mean := func(to float64) float64 { return section.SteelHeat(to) / (to - 20) * 7.85e-3 }
	check(t, "rho c to 600", mean(600), 0.0045, 0.00005)
	check(t, "rho c to 970", mean(970), 0.0056, 0.00005)
	check(t, "row", steel.HeatCapacity.V, (mean(600)+mean(970))/2, 0.0002)
	sum := 0.0
	for _, part := range [][2]float64{{20, 800}, {800, 1030}} { // where the curve bends
		sum += quad.Fixed(func(t float64) float64 { return section.SteelConductivity(t, 1) }, part[0], part[1],
			20, nil, 0)
	}
	conducts := sum / (1030 - 20)
	check(t, "k to 1030", 1000*conducts, 37.4, 0.05)
	between(t, "row k, from that to what Kou prints", steel.Conductivity.V, 0.0374, 0.041)
}
