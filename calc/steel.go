package calc

import "brazebooth/tables"

// Carbon steel by EN 1993-1-2:2005: specific heat 3.4.1.2 in J/kgK and conductivity 3.4.1.3 in W/mK.
// Only the coefficients of the standard's own formulas stand here. Valid from 20 to 1200 C.

// SteelSpecificHeat returns c at a temperature in C, J/gK.
func SteelSpecificHeat(t float64) (float64, error) {
	switch {
	case !(t >= 20 && t <= 1200):
		return 0, outside("temperature", t, "from 20 to 1200 C")
	case t < 600:
		return (425 + 0.773*t - 1.69e-3*t*t + 2.22e-6*t*t*t) / 1000, nil
	case t < 735:
		return (666 + 13002/(738-t)) / 1000, nil
	case t < 900:
		return (545 + 17820/(t-731)) / 1000, nil
	}
	return tables.SteelHeatPlateau.V, nil
}

// SteelConductivity returns k at a temperature in C, W/mmK.
func SteelConductivity(t float64) (float64, error) {
	switch {
	case !(t >= 20 && t <= 1200):
		return 0, outside("temperature", t, "from 20 to 1200 C")
	case t < 800:
		return (54 - 3.33e-2*t) / 1000, nil
	}
	return tables.SteelConductivityPlateau.V, nil
}
