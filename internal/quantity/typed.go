package quantity

import (
	"math"
	"strconv"
	"strings"
)

// Typed is the value of a field as a person types it in a system's units, without a blank before the unit ("12mm",
// "80C"); Both has the second value in parentheses. unit is the field's unit in a card, "" if the field is no quantity.
// A value without another unit, or typed in another unit, stays as it is.
func Typed(field, value, unit string, sys System) string {
	text, ok := strings.CutSuffix(value, unit)
	w := look(unit)
	v, err := strconv.ParseFloat(text, 64)
	if w.inch == nil || !ok || err != nil || sys != Inch && sys != Both {
		return value
	}
	other := w.typedInch(field, text, v) + strings.TrimPrefix(w.inch.label, "°")
	if sys == Both {
		return value + " (" + other + ")"
	}
	return other
}

// typedInch is the inch number that gives the same setting when it is typed: to a step of its dial, or to the last
// digit of the metric text.
func (w *view) typedInch(field, text string, v float64) string {
	if Dialable(field) {
		number, _, _ := Dialed(field, v, v, v, w.unit, false, Inch)
		return number
	}
	_, written, _ := strings.Cut(text, ".")
	half := 0.49 * math.Pow10(-len(written)) // less than 0.5, because a tie may be rounded the other way
	x, _ := Convert(v, w.unit, Inch)
	decimals := w.decimals(x, Inch)
	for ; decimals < 7; decimals++ {
		p := math.Pow10(decimals)
		if back := (math.Round(x*p)/p - w.inch.zero) * w.inch.den / w.inch.num; math.Abs(back-v) < half {
			break
		}
	}
	return w.number(x, decimals, Inch)
}
