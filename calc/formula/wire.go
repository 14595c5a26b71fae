package formula

import (
	"fmt"
	"math"
)

// WireArea returns the cross-section of a wire of diameter d mm, mm2.
func WireArea(d float64) float64 { return math.Pi / 4 * d * d }

// MassPerLength returns the mass of wire of diameter d mm and density rho g/cm3, g/m.
func MassPerLength(d, rho float64) float64 { return WireArea(d) * rho }

// LengthPerMass returns the length of wire in one kilogram, m.
func LengthPerMass(d, rho float64) float64 { return 1000 / MassPerLength(d, rho) }

// MeltRate returns the wire melted by a feed in mm/s, g/s, including spatter and other losses.
func MeltRate(d, feed, rho float64) float64 { return WireArea(d) * feed * rho * 1e-3 }

// Outside is ErrRange with the number that was given and what the formula accepts.
func Outside(what string, v float64, takes string) error {
	return fmt.Errorf("%w: %s %.6g, %s", ErrRange, what, v, takes)
}

// Positive returns an error for the first number that is not positive and finite. names are in the same order.
func Positive(names [7]string, v ...float64) error {
	for i, x := range v {
		if !(x > 0) || math.IsInf(x, 1) {
			return Outside(names[i], x, "must be above zero")
		}
	}
	return nil
}

// PulseFrequency returns the pulses per second, Hz, that melt a feed of mm/s from a wire of diameter d mm with
// one drop of diameter drop mm per pulse: conservation of volume.
func PulseFrequency(d, feed, drop float64) (float64, error) {
	if err := Positive([7]string{"wire diameter", "feed", "drop diameter"}, d, feed, drop); err != nil {
		return 0, err
	}
	return WireArea(d) * feed / (math.Pi / 6 * drop * drop * drop), nil
}

// BeadArea returns the section of the deposited metal, mm2: the wire's metal without the losses, over the
// travel. d wire mm; feed mm/s (times the arc-on share); deposit the deposition efficiency; travel mm/s.
func BeadArea(d, feed, deposit, travel float64) (float64, error) {
	if err := Positive([7]string{"wire diameter", "feed", "deposition efficiency", "travel"}, d, feed, deposit,
		travel); err != nil {
		return 0, err
	}
	return WireArea(d) * feed * deposit / travel, nil
}
