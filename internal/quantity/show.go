package quantity

import (
	"math"
	"strconv"
	"strings"
)

// view is how a card's unit is printed in each system: v·num/den + zero in the inch system.
type view struct {
	unit     string // as it stands in a card: ASCII
	metric   string // on screen
	inch     string // the unit in the other system, as on screen; "" where it is the same
	num, den float64
	zero     float64
	least    [2]int // decimals that a value without a band has at least: metric, inch
}

var views = [...]view{
	{"m/min", "m/min", "in/min", 1000, inch, 0, [2]int{1, 0}},
	{"mm/s", "mm/s", "in/min", 60, inch, 0, [2]int{1, 1}},
	{"mm", "mm", "in", 1, inch, 0, [2]int{0, 0}},
	{"m", "m", "ft", 1000, foot, 0, [2]int{1, 1}},
	{"g/min", "g/min", "lb/h", 0.06, pound, 0, [2]int{1, 2}},
	{"g/h", "g/h", "oz/h", 0.016, pound, 0, [2]int{1, 2}},
	{"g/m", "g/m", "lb/1000 ft", foot / 1000, pound, 0, [2]int{2, 2}},
	{"g/m2", "g/m²", "oz/ft²", 16 * foot * foot * 1e-9, pound, 0, [2]int{0, 2}},
	{"J/mm", "J/mm", "kJ/in", inch, 1000, 0, [2]int{0, 2}},
	{"mm2", "mm²", "in²", 1, squareIn, 0, [2]int{1, 4}},
	{"mm3", "mm³", "in³", 1, squareIn * inch, 0, [2]int{1, 5}},
	{"L/min", "L/min", "cfh", 60, cubicFoot, 0, [2]int{0, 0}},
	{"L", "L", "ft³", 1, cubicFoot, 0, [2]int{0, 1}},
	{"m3", "m³", "ft³", 1000, cubicFoot, 0, [2]int{2, 0}},
	{"m3/h", "m³/h", "cfm", 1000, 60 * cubicFoot, 0, [2]int{0, 0}},
	{"m3/min", "m³/min", "cfm", 1000, cubicFoot, 0, [2]int{0, 0}},
	{"C", "°C", "°F", 9, 5, 32, [2]int{0, 0}},
	{"K", "K", "°F", 9, 5, 0, [2]int{0, 0}}, // a difference
	{"kN", "kN", "lbf", 1000, lbf, 0, [2]int{1, 0}},
	{"MPa", "MPa", "ksi", squareIn, 1000 * lbf, 0, [2]int{0, 0}},
	{"g", "g", "oz", 0.016, pound, 0, [2]int{1, 2}},
	{"kg", "kg", "lb", 1, pound, 0, [2]int{1, 1}},
	{"per kg", "a kg", "a lb", pound, 1, 0, [2]int{2, 2}},
	{"A", "A", "", 1, 1, 0, [2]int{0, 0}},
	{"V", "V", "", 1, 1, 0, [2]int{1, 1}},
	{"s", "s", "", 1, 1, 0, [2]int{1, 1}},
	{"deg", "°", "", 1, 1, 0, [2]int{0, 0}},
	{"1", "", "", 1, 1, 0, [2]int{0, 0}},
	{"g/cm3", "g/cm³", "", 1, 1, 0, [2]int{2, 2}},
	{"kg/m3", "kg/m³", "", 1, 1, 0, [2]int{2, 2}},
	{"mg/m3", "mg/m³", "", 1, 1, 0, [2]int{0, 0}},
	{"J/mm3K", "J/mm³K", "", 1, 1, 0, [2]int{4, 4}},
	{"W/m2K", "W/m²K", "", 1, 1, 0, [2]int{0, 0}},
	{"ohm mm", "Ω·mm", "", 1, 1, 0, [2]int{0, 0}},
	{"ohm mm/K", "Ω·mm/K", "", 1, 1, 0, [2]int{0, 0}},
	{"um", "µm", "", 1, 1, 0, [2]int{0, 0}},
}

// look finds a unit's row; an unknown unit is printed as it stands.
func look(unit string) view {
	for i := range views {
		if views[i].unit == unit {
			return views[i]
		}
	}
	return view{unit: unit, metric: unit, num: 1, den: 1}
}

// inches reports whether the system prints this unit in the other one's.
func (w *view) inches(sys System) bool { return sys == Inch && w.inch != "" }

// Label is a card's unit as the system's users write it. Both counts as metric: a label names one unit.
func Label(unit string, sys System) string {
	w := look(unit)
	if w.inches(sys) {
		return w.inch
	}
	return w.metric
}

// Convert returns a card's value in the system's unit, with its label.
func Convert(v float64, unit string, sys System) (float64, string) {
	w := look(unit)
	if w.inches(sys) {
		return v*w.num/w.den + w.zero, w.inch
	}
	return v, w.metric
}

// Show prints a value with its unit, in both systems where sys is Both: "6.35 m/min (250 in/min)". The
// value has the decimals that hold it to a part in 500.
func Show(v float64, unit string, sys System) string {
	w := look(unit)
	if sys == Both && w.inch != "" {
		return Show(v, unit, Metric) + " (" + Show(v, unit, Inch) + ")"
	}
	x, label := Convert(v, unit, sys)
	return join(w.number(x, w.decimals(x, sys), sys), label)
}

// Band prints a value and its band without the unit, with the decimals that the band deserves: two
// significant figures of its half-width. Where low equals high the value alone decides.
func Band(v, low, high float64, unit string, sys System) (value, band string) {
	w := look(unit)
	x, _ := Convert(v, unit, sys)
	lo, _ := Convert(low, unit, sys)
	hi, _ := Convert(high, unit, sys)
	d := w.decimals(x, sys)
	if half := (hi - lo) / 2; half > 0 && !math.IsInf(half, 0) {
		d = clamp(1-int(math.Floor(math.Log10(half))), 0, 6)
	}
	return w.number(x, d, sys), w.number(lo, d, sys) + "–" + w.number(hi, d, sys)
}

// decimals are the fewest, from the unit's least, that hold v to a part in 500.
func (w *view) decimals(v float64, sys System) int {
	if w.unit == "%" {
		return 0 // nothing here is known to a tenth of a per cent
	}
	least := w.least[0]
	if w.inches(sys) {
		least = w.least[1]
	}
	for d := least; d < 7; d++ {
		p := math.Pow(10, float64(d))
		if math.Abs(math.Round(v*p)/p-v) <= math.Abs(v)/500 {
			return d
		}
	}
	return 7
}

// number prints v; inch sizes under one have no zero before the point, as they are stamped on spools.
func (w *view) number(v float64, decimals int, sys System) string {
	if a := math.Abs(v); a != 0 && (a >= 1e7 || a < 1e-4) {
		return strconv.FormatFloat(v, 'g', 3, 64)
	}
	s := strconv.FormatFloat(v, 'f', decimals, 64)
	if w.unit == "mm" && w.inches(sys) {
		s = stamped(s)
	}
	if strings.Trim(s, "-0.") == "" {
		return strings.TrimPrefix(s, "-")
	}
	return s
}

// stamped leaves out the zero before the point.
func stamped(s string) string {
	if rest, ok := strings.CutPrefix(s, "0."); ok {
		return "." + rest
	}
	if rest, ok := strings.CutPrefix(s, "-0."); ok {
		return "-." + rest
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

func clamp(v, low, high int) int { return max(low, min(high, v)) }

// Seconds100 is how long a travel in mm/s takes for 100 mm, Seconds4in for 4 in, s: what a hand counts.
func Seconds100(mms float64) float64 { return 100 / mms }

// Seconds4in: see Seconds100.
func Seconds4in(mms float64) float64 { return 4 * inch / mms }
