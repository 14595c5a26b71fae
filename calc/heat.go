package calc

import "brazebooth/internal/quantity"

// Three heats, three names. Published figures for arc brazing differ by 25 % because authors do not say
// which of the first two they mean.

// ArcEnergy returns U·I/v, J/mm, for volts V, amps A (the mean, the arc-on share included) and travel
// mm/s. ASME and AWS call this heat input, in kJ/in: see KilojoulesPerInch.
func ArcEnergy(volts, amps, travel float64) (float64, error) {
	if err := positive([4]string{"voltage", "current", "travel"}, volts, amps, travel); err != nil {
		return 0, err
	}
	return volts * amps / travel, nil
}

// HeatInput returns k·U·I/v, J/mm: the figure for reports, with the process's conventional factor k
// (EN 1011-1, ISO/TR 17671-1: 0.8 for gas metal arc).
func HeatInput(k, volts, amps, travel float64) (float64, error) {
	e, err := ArcEnergy(volts, amps, travel)
	return k * e, err
}

// NetHeat returns η·U·I/v, J/mm: the heat that reaches the work, with the measured arc efficiency η.
func NetHeat(eta, volts, amps, travel float64) (float64, error) {
	e, err := ArcEnergy(volts, amps, travel)
	return eta * e, err
}

// EnergyPerLength returns the measured energy of a waveform-controlled bead, J over mm (ISO/TR 18491).
func EnergyPerLength(joules, mm float64) (float64, error) {
	if err := positive([4]string{"energy", "length"}, joules, mm); err != nil {
		return 0, err
	}
	return joules / mm, nil
}

// KilojoulesPerInch turns J/mm into kJ/in.
func KilojoulesPerInch(jmm float64) float64 { return jmm * quantity.MMPerInch / 1000 }
