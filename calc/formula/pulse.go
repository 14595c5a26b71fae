package formula

import "math"

// PulseFrequency returns the pulses per second, Hz, that melt a feed of mm/s from a wire of diameter d mm at one drop
// of diameter drop mm a pulse: conservation of volume.
func PulseFrequency(d, feed, drop float64) (float64, error) {
	if err := Positive([4]string{"wire diameter", "feed", "drop diameter"}, d, feed, drop); err != nil {
		return 0, err
	}
	return WireArea(d) * feed / (math.Pi / 6 * drop * drop * drop), nil
}
