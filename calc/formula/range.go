package formula

import "errors"

// ErrRange is wrapped by the error of every formula that is called outside its range.
var ErrRange = errors.New("outside the formula's range")

// Normalize scales weights to a sum of 1; if none is above zero they stay unchanged.
func Normalize(w []float64) {
	sum := 0.0
	for _, x := range w {
		sum += x
	}
	if !(sum > 0) {
		return
	}
	for i := range w {
		w[i] /= sum
	}
}
