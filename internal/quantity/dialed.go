package quantity

import (
	"math"
	"strconv"
	"strings"
)

// dial is how finely something can be set by hand: the step, in the unit that a card shows, and the decimals that tell
// one step from the next. bare drops trailing zeros, for scales that have none.
type dial struct {
	step     float64
	decimals int
	bare     bool
}

// dials are the settings that are made by hand, by their figure on the card, in metric and in inch units. The
// resolution of a dial, a timer or a rule in a shop is common practice, no source.
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

// Dialable reports whether a card's figure is a setting that is made by hand.
func Dialable(figure string) bool { _, ok := dials[figure]; return ok }

// Dialed prints a setting and the ends of its band, without the unit, as finely as it can be set by hand. figure is its
// name on a card; v, low and high are in a card's unit. A typed value stays as it was typed. If the band is the good
// one, its ends are rounded inwards and the value with them, so that every value shown as good is good. A band narrower
// than a step gets more digits, except for times: no timer has them.
func Dialed(figure string, v, low, high float64, unit string, good bool, sys System) (value, from, to string) {
	s := scaleOf(unit, sys)
	d := dialOn(figure, &s)
	if low == high {
		text := d.typed(&s, v, unit)
		return text, text, text
	}
	x, lo, hi := s.of(v), s.of(low), s.of(high)
	at, a, b := d.inside(x, lo, hi, good)
	for i := 0; i < 2 && good && a > b && s.unit != "s"; i++ {
		d = dial{d.step / 10, d.decimals + 1, d.bare}
		at, a, b = d.inside(x, lo, hi, good)
	}
	if a > b {
		at, a, b = d.inside(x, lo, hi, false)
	}
	value, from, to = d.show(&s, at), d.show(&s, a), d.show(&s, b)
	d.bare = false // a value and the ends of its range have the same decimals
	point := strings.Contains(from, ".")
	if point != strings.Contains(to, ".") || point != strings.Contains(value, ".") {
		value, from, to = d.show(&s, at), d.show(&s, a), d.show(&s, b)
	}
	return value, from, to
}

// dialOn is the dial of a figure on a scale.
func dialOn(figure string, s *scale) dial {
	if s.inch {
		return dials[figure][1]
	}
	return dials[figure][0]
}

// OnDial rounds a setting that nobody typed to a step of its dial, as it is shown. Argument and result are in a card's
// unit.
func OnDial(figure string, v float64, unit string, sys System) float64 {
	if !Dialable(figure) {
		return v
	}
	s := scaleOf(unit, sys)
	step := dialOn(figure, &s).step
	return s.card(math.Round(s.of(v)/step) * step)
}

// ShowDialed prints a setting with its unit; in both systems if sys is Both.
func ShowDialed(figure string, v float64, unit string, sys System) string {
	text, _, _ := Dialed(figure, v, v, v, unit, false, sys)
	shown := join(text, Label(unit, sys))
	if twice(unit, sys) {
		return shown + " (" + ShowDialed(figure, ShownValue(text, v), unit, Inch) + ")"
	}
	return shown
}

// inside rounds a value and the ends of its band to steps. A good band shrinks, and its value stays inside. If no step
// lies in the band, a is greater than b.
func (d dial) inside(x, low, high float64, good bool) (at, a, b float64) {
	const same = 1e-6 // in steps: an end this near to a step lies on it
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

// typed prints a value without a band: as it was typed if it has few decimals, otherwise rounded to a step. A value
// with fewer decimals in the other system was typed in that system.
func (d dial) typed(s *scale, v float64, unit string) string {
	const sure, most = 2, 4
	elsewhere := Inch
	if s.inch {
		elsewhere = Metric
	}
	x, o := s.of(v), scaleOf(unit, elsewhere)
	if n := decimalsOf(x, most); n <= max(sure, d.decimals) || n <= most && n <= decimalsOf(o.of(v), most) {
		d.decimals = max(n, d.decimals)
		return d.show(s, x)
	}
	return d.show(s, math.Round(x/d.step)*d.step)
}

// decimalsOf is how many decimals a value has; most+1 if it has more than most.
func decimalsOf(x float64, most int) int {
	return fewest(x, 0, most+1, func(r float64) bool { return math.Abs(r-x) < 1e-10*max(1, math.Abs(x)) })
}

// show prints a value. A value smaller than a step gets the digits that it needs.
func (d dial) show(s *scale, x float64) string {
	text := s.number(x, d.decimals)
	if d.bare && strings.Contains(text, ".") {
		text = strings.TrimSuffix(strings.TrimRight(text, "0"), ".")
	}
	if text == "" || x != 0 && strings.Trim(text, "0.") == "" {
		return strconv.FormatFloat(x, 'g', 2, 64)
	}
	return text
}
