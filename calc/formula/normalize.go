package formula

// Normalize scales weights so that their sum is 1; of none above zero it leaves all as they are.
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
