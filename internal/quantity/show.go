package quantity

import (
	"math"
	"strconv"
	"strings"
)

// view is how a card's unit is printed in each system.
type view struct {
	unit   string // as it stands in a card: ASCII
	metric string // on screen
	least  int    // the fewest decimals of a value without a band
	inch   *other // nil if the unit is the same there
}

// other is a unit into which a card's value is converted: v·num/den + zero.
type other struct {
	label          string
	least          int
	num, den, zero float64
}

var views = [...]view{
	{"m/min", "m/min", 1, &other{"in/min", 0, 1000, inch, 0}},
	{"mm/s", "mm/s", 1, &other{"in/min", 1, 60, inch, 0}},
	{"m/s", "m/s", 1, &other{"ft/min", 0, 60000, foot, 0}},
	{"mm", "mm", 0, &other{"in", 0, 1, inch, 0}},
	{"m", "m", 1, &other{"ft", 1, 1000, foot, 0}},
	{"g/min", "g/min", 1, &other{"lb/h", 2, 0.06, pound, 0}},
	{"g/h", "g/h", 1, &other{"oz/h", 2, 0.016, pound, 0}},
	{"mg/s", "mg/s", 1, nil},
	{"g/s", "g/s", 2, nil},
	{"g/kg", "g/kg", 0, nil},
	{"g/m", "g/m", 2, &other{"lb/1000 ft", 2, foot / 1000, pound, 0}},
	{"g/m2", "g/m²", 0, &other{"oz/ft²", 2, 16 * foot * foot * 1e-9, pound, 0}},
	{"J/mm", "J/mm", 0, &other{"kJ/in", 2, inch, 1000, 0}},
	{"J/mm3", "J/mm³", 0, &other{"kJ/in³", 0, squareIn * inch, 1000, 0}},
	{"m/kg", "m/kg", 0, &other{"ft/lb", 0, 1000 * pound, foot, 0}},
	{"mm2", "mm²", 1, &other{"in²", 4, 1, squareIn, 0}},
	{"mm3", "mm³", 1, &other{"in³", 5, 1, squareIn * inch, 0}},
	{"L/min", "L/min", 0, &other{"cfh", 0, 60, cubicFoot, 0}},
	{"L", "L", 0, &other{"ft³", 1, 1, cubicFoot, 0}},
	{"m3", "m³", 2, &other{"ft³", 0, 1000, cubicFoot, 0}},
	{"m3/h", "m³/h", 0, &other{"cfm", 0, 1000, 60 * cubicFoot, 0}},
	{"m3/min", "m³/min", 0, &other{"cfm", 0, 1000, cubicFoot, 0}},
	{"C", "°C", 0, &other{"°F", 0, 9, 5, 32}},
	{"K", "K", 0, &other{"°F", 0, 9, 5, 0}}, // a difference
	{"kN", "kN", 1, &other{"lbf", 0, 1000, lbf, 0}},
	{"MPa", "MPa", 0, &other{"ksi", 0, squareIn, 1000 * lbf, 0}},
	{"GPa", "GPa", 0, &other{"ksi", 0, 1000 * squareIn, 1000 * lbf, 0}},
	{"1e-6/K", "10⁻⁶/K", 1, nil},
	{"g", "g", 1, &other{"oz", 2, 0.016, pound, 0}},
	{"kg", "kg", 1, &other{"lb", 1, 1, pound, 0}},
	{"per kg", "a kg", 2, &other{"a lb", 2, pound, 1, 0}},
	{"A", "A", 0, nil},
	{"V", "V", 1, nil},
	{"s", "s", 1, nil},
	{"min", "min", 0, nil},
	{"h", "h", 1, nil},
	{"ms", "ms", 1, nil},
	{"deg", "°", 0, nil},
	{"1", "", 0, nil},
	{"marks", "marks", 1, nil}, // of a dial
	{"g/cm3", "g/cm³", 2, nil},
	{"kg/m3", "kg/m³", 2, nil},
	{"mg/m3", "mg/m³", 0, nil},
	{"J/mm3K", "J/mm³K", 4, nil},
	{"W/m2K", "W/m²K", 0, nil},
	{"ohm mm", "Ω·mm", 0, nil},
	{"ohm mm/K", "Ω·mm/K", 0, nil},
	{"A2s", "A²s", 0, nil},
	{"um", "µm", 0, nil},
}

// scale is a card's unit as one system prints it.
type scale struct {
	unit string // as it stands in a card
	inch bool   // printed as an inch unit
	other
}

// scaleOf is a unit's scale in a system; Both counts as metric. An unknown unit is printed as it is.
func scaleOf(unit string, sys System) scale {
	for i := range views {
		switch w := &views[i]; {
		case w.unit != unit:
		case w.inch != nil && sys == Inch:
			return scale{unit, true, *w.inch}
		default:
			return scale{unit, false, other{w.metric, w.least, 1, 1, 0}}
		}
	}
	return scale{unit, false, other{unit, 0, 1, 1, 0}}
}

// of is a card's value on the scale, card the value of a card for one on the scale.
func (s *scale) of(v float64) float64   { return v*s.num/s.den + s.zero }
func (s *scale) card(x float64) float64 { return (x - s.zero) * s.den / s.num }

// twice reports whether a system shows a unit in metric and in inch units.
func twice(unit string, sys System) bool { return sys == Both && scaleOf(unit, Inch).inch }

// Lead is the system that comes first when both are shown.
func (s System) Lead() System {
	if s == Both {
		return Metric
	}
	return s
}

// Label is a card's unit as users of the system write it. Both counts as metric, because a label names one unit.
func Label(unit string, sys System) string { return scaleOf(unit, sys).label }

// Convert returns a card's value in the system's unit, with its label.
func Convert(v float64, unit string, sys System) (float64, string) {
	s := scaleOf(unit, sys)
	return s.of(v), s.label
}

// Show prints a value with its unit, in both systems if sys is Both: "6.35 m/min (250 in/min)". It has as many decimals
// as keep it within one part in 500.
func Show(v float64, unit string, sys System) string {
	if twice(unit, sys) {
		return Show(v, unit, Metric) + " (" + Show(v, unit, Inch) + ")"
	}
	s := scaleOf(unit, sys)
	x := s.of(v)
	return join(s.number(x, s.decimals(x)), s.label)
}

// ShownValue is the value, in a card's unit, that a rounded metric number shows. When both systems are shown, the inch
// number is converted from it, so that the two shown numbers agree. It is v if the text is no number.
func ShownValue(text string, v float64) float64 {
	if x, err := strconv.ParseFloat(text, 64); err == nil {
		return x
	}
	return v
}

// The shortest length that a rule in a shop can tell from zero, and the smallest printed end of a band that is not
// zero.
const (
	nothingMM = 5e-4
	leastMM   = 1e-3
	leastInch = 1e-4
)

// Band prints a value and its band without the unit, like Ends, with the band as one text.
func Band(v, low, high float64, unit string, sys System) (value, band string) {
	value, from, to := Ends(v, low, high, unit, sys)
	return value, Interval(from, to)
}

// Interval joins the two printed ends of a band. Beside a minus sign the dash between them would be read as a second
// one.
func Interval(from, to string) string {
	if strings.HasPrefix(from, "-") || strings.HasPrefix(to, "-") {
		return from + " to " + to
	}
	return from + "–" + to
}

// Ends prints a value and the two ends of its band without the unit, with the decimals that the band allows: two
// significant figures of its half-width. If low equals high, the value alone decides.
func Ends(v, low, high float64, unit string, sys System) (value, from, to string) {
	s := scaleOf(unit, sys)
	x, lo, hi := s.of(v), s.of(low), s.of(high)
	if s.unit == "mm" && math.Abs(v) < nothingMM && math.Abs(low) < nothingMM && math.Abs(high) < nothingMM &&
		(v != 0 || low != high) {
		least := leastMM // the end is rounded away from zero
		if s.inch {
			least = leastInch
		}
		return s.number(0, 1), s.number(0, 1), s.number(least, s.decimals(least))
	}
	d := s.decimals(x)
	if half := (hi - lo) / 2; half > 0 && !math.IsInf(half, 0) {
		d = s.most(x, max(0, min(6, 1-int(math.Floor(math.Log10(half))))))
		if most, ok := measured[s.unit]; ok && 2*half >= most.step(&s) && (s.unit != "mm" || math.Abs(x) >=
			fewSteps*most.step(&s)) {
			d = min(d, most.of(&s))
		}
	}
	return s.number(x, d), s.number(lo, d), s.number(hi, d)
}

// decimals is the smallest number of decimals, at least the unit's own, that keeps v within one part in 500.
func (s *scale) decimals(v float64) int {
	if s.unit == "%" {
		return 0 // no percentage is known to a tenth
	}
	return s.most(v, fewest(v, s.least, 7, func(r float64) bool { return math.Abs(r-v) <= math.Abs(v)/500 }))
}

// fewest is the smallest number of decimals, at least least, with which a rounded value is near enough; most if there
// is none.
func fewest(v float64, least, most int, near func(rounded float64) bool) int {
	for n := least; n < most; n++ {
		if p := math.Pow10(n); near(math.Round(v*p) / p) {
			return n
		}
	}
	return most
}

// number prints v. Inch sizes under one have no zero before the point, as stamped on spools.
func (s *scale) number(v float64, decimals int) string {
	switch a := math.Abs(v); {
	case a == 0:
	case s.unit == "mm" && a < 1e-4:
		v, decimals = 0, 1
	case a >= 1e7 || a < 1e-4:
		return strconv.FormatFloat(v, 'g', 3, 64)
	}
	text := strconv.FormatFloat(v, 'f', decimals, 64)
	if s.unit == "mm" && s.inch {
		text = noZero(text)
	}
	if strings.Trim(text, "-0.") == "" {
		return strings.TrimPrefix(text, "-")
	}
	return text
}

func noZero(s string) string {
	if sign, rest, ok := strings.Cut(s, "0."); ok && (sign == "" || sign == "-") {
		return sign + "." + rest
	}
	return s
}

func join(number, label string) string {
	switch label {
	case "":
		return number
	case "°", "%":
		return number + label
	}
	return number + " " + label
}

// Count is a number of things in words: "1 reading", "3 readings".
func Count(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return strconv.Itoa(n) + " " + what + "s"
}
