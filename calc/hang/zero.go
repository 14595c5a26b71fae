package hang

import "math"

// zero returns where a rising function passes zero between two ends: false position in which an end that stays
// gets half its weight, with a bisection wherever the bracket has not at least halved within three steps.
func zero(f func(float64) float64, low, high float64) float64 {
	fl, fh := f(low), f(high)
	if fl >= 0 {
		return low
	}
	if fh <= 0 {
		return high
	}
	side, width := 0, high-low
	for i := 1; i <= 90 && high-low > 1e-14*(math.Abs(low)+math.Abs(high)); i++ {
		mid := (low*fh - high*fl) / (fh - fl)
		if i%3 == 0 {
			if high-low > width/2 || !(mid > low && mid < high) {
				mid, side = (low+high)/2, 0
			}
			width = high - low
		}
		v := f(mid)
		switch {
		case v == 0:
			return mid
		case v < 0:
			low, fl = mid, v
			if side < 0 {
				fh /= 2
			}
			side = -1
		default:
			high, fh = mid, v
			if side > 0 {
				fl /= 2
			}
			side = 1
		}
	}
	return (low + high) / 2
}
