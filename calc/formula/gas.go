package formula

import "math"

// GasVolume returns the gas used, L, of a flow in L/min over a time in s.
func GasVolume(flow, time float64) (float64, error) {
	if !(flow > 0) || !(time >= 0) {
		return 0, Outside("gas flow or time", flow, "flow above zero and no negative time")
	}
	return flow * time / 60, nil
}

// GasReynolds returns the Reynolds number of a flow in L/min through a round bore in mm, for a density in
// kg/m3 and a viscosity in Pa s: 4·ρ·Q/(π·d·µ).
func GasReynolds(flow, bore, density, viscosity float64) (float64, error) {
	if err := Positive([7]string{"gas flow", "bore", "density", "viscosity"}, flow, bore, density,
		viscosity); err != nil {
		return 0, err
	}
	return 4 * density * flow / 60e3 / (math.Pi * bore * 1e-3 * viscosity), nil
}

// LaminarFlow returns the flow in L/min at which a bore reaches the Reynolds number where flow stops
// being laminar: more gas draws air in.
func LaminarFlow(bore, density, viscosity, reynolds float64) (float64, error) {
	one, err := GasReynolds(1, bore, density, viscosity)
	if err != nil {
		return 0, err
	}
	return reynolds / one, nil
}
