package formula

// Bisect closes in on the place between low and high up to which under holds, in n halvings, and returns the ends that
// are left.
func Bisect(low, high float64, n int, under func(x float64) bool) (last, first float64) {
	for range n {
		if mid := (low + high) / 2; under(mid) {
			low = mid
		} else {
			high = mid
		}
	}
	return low, high
}
