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

// other is a unit of the inch system: v·num/den + zero.
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

// look finds a unit's row. An unknown unit is printed as it is.
func look(unit string) view {
	for i := range views {
		if views[i].unit == unit {
			return views[i]
		}
	}
	return view{unit: unit, metric: unit}
}

// inches reports whether the system prints this unit as an inch unit.
func (w *view) inches(sys System) bool { return sys == Inch && w.inch != nil }

// Lead is the system that comes first when both are shown.
func (s System) Lead() System {
	if s == Both {
		return Metric
	}
	return s
}

// Label is a card's unit as users of the system write it. Both counts as metric, because a label names one unit.
func Label(unit string, sys System) string {
	w := look(unit)
	if w.inches(sys) {
		return w.inch.label
	}
	return w.metric
}

// Convert returns a card's value in the system's unit, with its label.
func Convert(v float64, unit string, sys System) (float64, string) {
	w := look(unit)
	if w.inches(sys) {
		return v*w.inch.num/w.inch.den + w.inch.zero, w.inch.label
	}
	return v, w.metric
}

// Show prints a value with its unit, in both systems if sys is Both: "6.35 m/min (250 in/min)". It has as many decimals
// as keep it within one part in 500.
func Show(v float64, unit string, sys System) string {
	w := look(unit)
	if sys == Both && w.inch != nil {
		return Show(v, unit, Metric) + " (" + Show(v, unit, Inch) + ")"
	}
	x, label := Convert(v, unit, sys)
	return join(w.number(x, w.decimals(x, sys), sys), label)
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
	w := look(unit)
	x, _ := Convert(v, unit, sys)
	lo, _ := Convert(low, unit, sys)
	hi, _ := Convert(high, unit, sys)
	if w.unit == "mm" && math.Abs(v) < nothingMM && math.Abs(low) < nothingMM && math.Abs(high) < nothingMM &&
		(v != 0 || low != high) {
		least := leastMM // the end is rounded away from zero
		if w.inches(sys) {
			least = leastInch
		}
		return w.number(0, 1, sys), w.number(0, 1, sys), w.number(least, w.decimals(least, sys), sys)
	}
	d := w.decimals(x, sys)
	if half := (hi - lo) / 2; half > 0 && !math.IsInf(half, 0) {
		d = w.most(x, max(0, min(6, 1-int(math.Floor(math.Log10(half))))), sys)
		if most, ok := measured[w.unit]; ok && 2*half >= most.step(&w, sys) && (w.unit != "mm" || math.Abs(x) >=
			fewSteps*most.step(&w, sys)) {
			d = min(d, most.of(&w, sys))
		}
	}
	return w.number(x, d, sys), w.number(lo, d, sys), w.number(hi, d, sys)
}

// decimals is the smallest number of decimals, at least the unit's own, that keeps v within one part in 500.
func (w *view) decimals(v float64, sys System) int {
	if w.unit == "%" {
		return 0 // no percentage is known to a tenth
	}
	d := w.least
	if w.inches(sys) {
		d = w.inch.least
	}
	for ; d < 7; d++ {
		p := math.Pow(10, float64(d))
		if math.Abs(math.Round(v*p)/p-v) <= math.Abs(v)/500 {
			break
		}
	}
	return w.most(v, d, sys)
}

// number prints v. Inch sizes under one have no zero before the point, as stamped on spools.
func (w *view) number(v float64, decimals int, sys System) string {
	switch a := math.Abs(v); {
	case a == 0:
	case w.unit == "mm" && a < 1e-4:
		v, decimals = 0, 1
	case a >= 1e7 || a < 1e-4:
		return strconv.FormatFloat(v, 'g', 3, 64)
	}
	s := strconv.FormatFloat(v, 'f', decimals, 64)
	if w.unit == "mm" && w.inches(sys) {
		s = noZero(s)
	}
	if strings.Trim(s, "-0.") == "" {
		return strings.TrimPrefix(s, "-")
	}
	return s
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
