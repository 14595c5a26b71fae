package quantity

// Counted returns the unit in which people count such a time, and how many of it make one of the given unit. Seconds
// and hours become minutes from 3 minutes to 2 hours. Other units stay.
func Counted(v float64, unit string) (each float64, to string) {
	switch {
	case unit == "s" && v >= 7200:
		return 1.0 / 3600, "h"
	case unit == "s" && v >= 180:
		return 1.0 / 60, "min"
	case unit == "h" && v > 0 && v < 2:
		return 60, "min"
	}
	return 1, unit
}
