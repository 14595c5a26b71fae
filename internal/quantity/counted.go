package quantity

import "math"

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

// read are the most decimals of a value whose band is wider than a step of them: no crayon tells tenths of a degree, no
// meter on an arc hundredths of a volt, no caliper thousandths of a millimetre.
var read = map[string]int{"C": 0, "V": 1, "%": 0, "mm": 2}

// readTo is that of a value whose band begins at low, in a card's unit. A caliper in inches has one more; a crack or a
// coat of less than a tenth of a millimetre is measured with something finer.
func (w *view) readTo(low float64, sys System) (most int, ok bool) {
	most, ok = read[w.unit]
	if w.unit == "mm" {
		ok = math.Abs(low) >= 0.1
		if w.inches(sys) {
			most++
		}
	}
	return most, ok
}
