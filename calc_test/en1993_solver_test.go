package calc_test

import (
	"testing"

	"brazebooth/calc/section"
)

// EN 1993-1-2:2005 3.4.1.2, specific heat of carbon steel, integrated from 20 C by an independent library; the
// heat-flow models take this curve.
func TestSteelHeat(t *testing.T) {
	for temp, want := range map[float64]float64{600: 335.737818, 735: 475.427813, 970: 677.563843} {
		check(t, at("%g C", temp), section.SteelHeat(temp), want, 1e-3)
	}
	check(t, "on with 0.650 J/gK past 1200 C", section.SteelHeat(1480), 1009.063843, 1e-3)
}

// EN 1993-1-2:2005 3.4.1.3: 54 − 3.33e-2·θ to 800 C, then 27.3 W/mK.
func TestSteelConducts(t *testing.T) {
	for temp, want := range map[float64]float64{20: 53.334, 200: 47.34, 400: 40.68, 600: 34.02, 800: 27.3, 1200: 27.3} {
		check(t, at("%g C", temp), 1000*section.SteelConductivity(temp), want, 0.07) // 0.06 apart at 800 C in the standard itself
	}
}
