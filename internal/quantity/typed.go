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
	s := scaleOf(unit, Inch)
	v, err := strconv.ParseFloat(text, 64)
	if !s.inch || !ok || err != nil || sys != Inch && sys != Both {
		return value
	}
	other := s.typed(field, text, v) + strings.TrimPrefix(s.label, "°")
	if sys == Both {
		return value + " (" + other + ")"
	}
	return other
}

// typed is the inch number that gives the same setting when it is typed: to a step of its dial, or to the last digit of
// the metric text.
func (s *scale) typed(field, text string, v float64) string {
	if Dialable(field) {
		number, _, _ := Dialed(field, v, v, v, s.unit, false, Inch)
		return number
	}
	_, written, _ := strings.Cut(text, ".")
	half := 0.49 * math.Pow10(-len(written)) // less than 0.5, because a tie may be rounded the other way
	x := s.of(v)
	return s.number(x, fewest(x, s.decimals(x), 7, func(r float64) bool { return math.Abs(s.card(r)-v) < half }))
}
