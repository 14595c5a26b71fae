package formula

import (
	"math"

	"brazebooth/tables"
)

// Waveform is a square pulse that detaches one drop from a wire.
type Waveform struct {
	Peak, Base float64 // A
	Time       float64 // of the pulse, s
	Longest    float64 // s: a longer pulse leaves too little current between pulses; zero or less: every pulse does
	Share      float64 // of the time at the peak
	Alight     bool    // a pulse exists that detaches a drop and keeps the arc alight until the next
}

// OnePulse is the pulse, by the power law of one drop per pulse (Amin 1983, Allum 1985; memory medium), for a
// mean current, A, and a frequency, Hz, on a wire with this spray transition, A. detach and shortest, A2s, are
// the peak squared times the pulse time that detaches one drop, usually and at least. The time lies between the
// time that detaches a drop and the time that keeps the arc alight: bronze melts at less current than steel at
// the same feed, so that the second often decides. If no pulse does both, the longest that keeps the arc alight
// is taken; if the mean reaches the peak there are no pulses. Every figure is continuous in every argument.
func OnePulse(mean, frequency, transition, detach, shortest float64) (Waveform, error) {
	if err := Positive([7]string{"mean current", "frequency", "spray transition", "detachment"}, mean, frequency,
		transition, detach); err != nil {
		return Waveform{}, err
	}
	least := tables.PulseBaseLeast.V
	w := Waveform{Peak: pulsePeak(mean, frequency, transition, detach)}
	if mean >= w.Peak {
		w.Base, w.Alight = mean, true
		return w, nil
	}
	low := shortest / (w.Peak * w.Peak)
	w.Longest = (mean - least) / (frequency * (w.Peak - least))
	if w.Alight = w.Longest > low; w.Alight {
		w.Time = min(detach/(w.Peak*w.Peak), math.Sqrt(low*w.Longest))
	} else {
		w.Time = max(0, w.Longest)
	}
	w.Share = frequency * w.Time
	w.Base = (mean - w.Peak*w.Share) / (1 - w.Share)
	return w, nil
}

// pulsePeak is the usual peak, A, or a higher one, up to its high end, that keeps the arc alight after a usual
// pulse.
func pulsePeak(mean, frequency, transition, detach float64) float64 {
	over, least := tables.PulsePeakOver, tables.PulseBaseLeast.V
	spare, charge := mean-least, detach*frequency
	most := over.High * transition
	if spare > 0 {
		root := charge*charge - 4*spare*charge*least
		if root <= 0 { // any peak does
			return over.V * transition
		}
		most = min(most, (charge+math.Sqrt(root))/(2*spare))
	}
	return max(over.V*transition, most)
}

// Effective is the root mean square of the pulse, A.
func (w *Waveform) Effective() float64 {
	return math.Sqrt(w.Peak*w.Peak*w.Share + w.Base*w.Base*(1-w.Share))
}

// PulseGain is the mean of the product of volts and amps over the product of their means: 1 + slope·(Ie² −
// I²)/(U·I), for volts that rise by slope V/A with the current at a constant arc length. effective and mean A,
// volts V.
func PulseGain(effective, mean, volts, slope float64) (float64, error) {
	if err := Positive([7]string{"effective current", "mean current", "volts"}, effective, mean, volts); err != nil {
		return 0, err
	}
	if !(slope >= 0) || math.IsInf(slope, 1) {
		return 0, Outside("slope of the arc's volts", slope, "must be zero or more")
	}
	return 1 + slope*max(0, effective*effective-mean*mean)/(volts*mean), nil
}
