package formula

import "math"

// DutyAt returns the duty in per cent at a current in A, from a power source's plate (IEC 60974-1): heat goes with
// the square of current. It is at most 100 %: a power source cannot run longer than all the time.
func DutyAt(amps, ratedAmps, ratedDuty float64) (float64, error) {
	if err := Positive([4]string{"current", "rated current", "rated duty"}, amps, ratedAmps, ratedDuty); err != nil {
		return 0, err
	}
	r := ratedAmps / amps
	return min(100, ratedDuty*r*r), nil
}

// EffectiveAmps returns the root-mean-square current of an arc that runs the share duty of the time, A.
func EffectiveAmps(amps, duty float64) (float64, error) {
	if !(duty >= 0 && duty <= 1) {
		return 0, Outside("duty", duty, "from 0 to 1")
	}
	return amps * math.Sqrt(duty), nil
}
