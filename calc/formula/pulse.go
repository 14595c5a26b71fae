package formula

import "math"

// PulseTime is how long a pulse of peak A lasts that detaches one drop, s: detach/peak², the power law of one drop a
// pulse (Amin 1983, Allum 1985; memory medium). detach A2s belongs to the wire; peak must be over transition A, below
// which no pulse of any usual length detaches a drop in free flight.
func PulseTime(peak, detach, transition float64) (float64, error) {
	if err := Positive([4]string{"peak current", "detachment", "spray transition"}, peak, detach, transition); err != nil {
		return 0, err
	}
	if peak < transition {
		return 0, Outside("peak current", peak, "a pulse under the spray transition throws no drop of its own")
	}
	return detach / (peak * peak), nil
}

// PulseBase is the current between pulses, A, that leaves the mean as asked: (mean − peak·share)/(1 − share), where
// share is frequency Hz times pulse time s. An error where the pulses alone carry more than the mean.
func PulseBase(mean, peak, frequency, pulse float64) (float64, error) {
	if err := Positive([4]string{"mean current", "peak current", "frequency", "pulse time"}, mean, peak, frequency, pulse); err != nil {
		return 0, err
	}
	share := frequency * pulse
	if share >= 1 {
		return 0, Outside("pulse time", pulse, "the pulses overlap at this frequency")
	}
	base := (mean - peak*share) / (1 - share)
	if base <= 0 {
		return 0, Outside("mean current", mean, "the pulses alone carry more")
	}
	return base, nil
}

// PulseEffective is the root mean square of a square pulse, A.
func PulseEffective(peak, base, share float64) float64 {
	return math.Sqrt(peak*peak*share + base*base*(1-share))
}
