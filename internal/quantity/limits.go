package quantity

import (
	"math"
	"strconv"
	"strings"
)

// limitNear is how much a rounded limit may differ from the true one, as a share.
const limitNear = 0.02

// Limits names the range in an error, its unit as a card has it: "from 0.4 to 2.4 mm (.016 to .094 in)". The inch
// numbers are rounded inwards, so that each of them is accepted when it is typed.
func Limits(low, high float64, unit string) string {
	label := Label(unit, Metric)
	text := "from " + short(low) + " to " + join(short(high), label)
	s := scaleOf(unit, Inch)
	if !s.inch || strings.HasPrefix(label, "a ") { // a price has its own currency
		return text
	}
	return text + " (" + s.limit(s.of(low), math.Ceil) + " to " + s.limit(s.of(high), math.Floor) + " " + s.label + ")"
}

// limit is a number of the inch system in the fewest digits that are near enough. round is ceil or floor.
func (s *scale) limit(v float64, round func(float64) float64) string {
	if v == 0 {
		return "0"
	}
	power := int(math.Floor(math.Log10(math.Abs(v))))
	for decimals := -power; ; decimals++ {
		step := math.Pow10(-decimals)
		n := v / step
		if whole := math.Round(n); math.Abs(n-whole) < 1e-9 { // a limit that is already round
			n = whole
		}
		if r := round(n) * step; math.Abs(r-v) <= limitNear*math.Abs(v) {
			text := strconv.FormatFloat(r, 'f', max(0, decimals), 64)
			if s.unit == "mm" {
				text = noZero(text)
			}
			return text
		}
	}
}
