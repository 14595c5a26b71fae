package quantity

// Counted is the unit in which a person counts a time of so many seconds or hours, and how many of it are one of the
// given unit: minutes from three of them to two hours. Other units stay.
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
