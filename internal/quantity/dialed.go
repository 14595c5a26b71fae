package quantity

import (
	"math"
	"strconv"
	"strings"
)

// dial is how finely a hand can set something: the step, in the unit that a card shows, with the decimals that tell
// one step from the next; bare leaves out zeros at their end, where a scale has none.
type dial struct {
	step     float64
	decimals int
	bare     bool
}

// dials are the settings that a hand makes, by the figure of a card, in metric and in inch units. What a dial, a timer
// or a rule in a shop shows is common practice, no source.
var dials = map[string][2]dial{
	"wire_feed": {{0.1, 1, false}, {1, 0, false}},
	"volts":     {{0.1, 1, false}, {0.1, 1, false}},
	"travel":    {{0.1, 1, false}, {0.5, 1, false}},
	"arc_on":    {{0.01, 2, false}, {0.01, 2, false}},
	"arc_off":   {{0.01, 2, false}, {0.01, 2, false}},
	"spot_step": {{0.1, 1, false}, {1.0 / 64, 2, false}},
	"stickout":  {{1, 0, true}, {1.0 / 32, 2, true}},
	"gas_flow":  {{1, 0, true}, {1, 0, true}},

	"root_opening":    {{0.1, 1, true}, {1.0 / 64, 2, true}},
	"tack_pitch":      {{5, 0, true}, {0.5, 1, true}},
	"shaft_speed":     {{0.1, 1, false}, {0.1, 1, false}},
	"pulse_time":      {{0.1, 1, false}, {0.1, 1, false}},
	"pulse_frequency": {{1, 0, true}, {1, 0, true}},
}

// Dialable reports whether a figure of a card is a setting that a hand makes.
func Dialable(figure string) bool { _, ok := dials[figure]; return ok }

// Dialed prints a setting without its unit as finely as a hand can set it, and the ends of its band; figure is its name
// on a card, v, low and high are in a card's unit. What somebody typed stands as it was typed. Where the band is the
// good one, its ends are rounded to the inside and the value with them, so that whatever is shown as good is good; a
// band that is narrower than a step has more digits, but for times: no timer has them.
func Dialed(figure string, v, low, high float64, unit string, good bool, sys System) (value, from, to string) {
	w := look(unit)
	d := dials[figure][0]
	if w.inches(sys) {
		d = dials[figure][1]
	}
	x, _ := Convert(v, unit, sys)
	lo, _ := Convert(low, unit, sys)
	hi, _ := Convert(high, unit, sys)
	if low == high {
		text := d.typed(&w, v, unit, sys)
		return text, text, text
	}
	at, a, b := d.inside(x, lo, hi, good)
	for i := 0; i < 2 && good && a > b && w.unit != "s"; i++ {
		d = dial{d.step / 10, d.decimals + 1, d.bare}
		at, a, b = d.inside(x, lo, hi, good)
	}
	if a > b {
		at, a, b = d.inside(x, lo, hi, false)
	}
	value, from, to = d.show(&w, at, sys), d.show(&w, a, sys), d.show(&w, b, sys)
	d.bare = false // a value and its range have the same decimals
	point := strings.Contains(from, ".")
	if point != strings.Contains(to, ".") || point != strings.Contains(value, ".") {
		value, from, to = d.show(&w, at, sys), d.show(&w, a, sys), d.show(&w, b, sys)
	}
	return value, from, to
}

// OnDial is a setting that nobody typed, as it is shown: rounded to a step of its dial. In and out in a card's unit.
func OnDial(figure string, v float64, unit string, sys System) float64 {
	w := look(unit)
	pair, ok := dials[figure]
	switch {
	case !ok:
		return v
	case !w.inches(sys):
		return math.Round(v/pair[0].step) * pair[0].step
	}
	x, _ := Convert(v, unit, sys)
	return (math.Round(x/pair[1].step)*pair[1].step - w.inch.zero) * w.inch.den / w.inch.num
}

// ShowDialed prints a setting with its unit, in both systems where sys is Both.
func ShowDialed(figure string, v float64, unit string, sys System) string {
	if w := look(unit); sys == Both && w.inch != nil {
		text, _, _ := Dialed(figure, v, v, v, unit, false, Metric)
		return join(text, w.metric) + " (" + ShowDialed(figure, Said(text, v), unit, Inch) + ")"
	}
	text, _, _ := Dialed(figure, v, v, v, unit, false, sys)
	return join(text, Label(unit, sys))
}

// inside rounds a value and the ends of its band to steps. A good band shrinks, and its value stays in it; it is empty,
// a over b, where no step lies in it.
func (d dial) inside(x, low, high float64, good bool) (at, a, b float64) {
	const same = 1e-6 // of a step: an end that is a step stays one
	steps := func(v float64, round func(float64) float64) float64 { return round(v/d.step) * d.step }
	at = steps(x, math.Round)
	if !good {
		return at, steps(low, math.Round), steps(high, math.Round)
	}
	a = steps(low, func(n float64) float64 { return math.Ceil(n - same) })
	b = steps(high, func(n float64) float64 { return math.Floor(n + same) })
	if low <= x && x <= high {
		at = max(a, min(at, b))
	}
	return at, a, b
}

// typed prints a value without a band: as it was typed where it has few decimals, else to a step. A value that has
// fewer decimals in the other system was typed there.
func (d dial) typed(w *view, v float64, unit string, sys System) string {
	const sure, most = 2, 4
	x, _ := Convert(v, unit, sys)
	other := Inch
	if sys == Inch {
		other = Metric
	}
	y, _ := Convert(v, unit, other)
	if n := decimalsOf(x, most); n <= max(sure, d.decimals) || n <= most && n <= decimalsOf(y, most) {
		d.decimals = max(n, d.decimals)
		return d.show(w, x, sys)
	}
	return d.show(w, math.Round(x/d.step)*d.step, sys)
}

// decimalsOf is how many decimals a value has, one more than most where it has more.
func decimalsOf(x float64, most int) int {
	for n := range most + 1 {
		p := math.Pow(10, float64(n))
		if math.Abs(math.Round(x*p)/p-x) < 1e-10*max(1, math.Abs(x)) {
			return n
		}
	}
	return most + 1
}

// show prints a value; a value under its own step has the digits that it needs.
func (d dial) show(w *view, x float64, sys System) string {
	text := w.number(x, d.decimals, sys)
	if d.bare && strings.Contains(text, ".") {
		text = strings.TrimSuffix(strings.TrimRight(text, "0"), ".")
	}
	if text == "" || x != 0 && strings.Trim(text, "0.") == "" {
		return strconv.FormatFloat(x, 'g', 2, 64)
	}
	return text
}
