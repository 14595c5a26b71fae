package quantity

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"brazebooth/internal/deep"
)

// units are the units of the figures that are set by hand.
var units = map[string]string{"wire_feed": "m/min", "volts": "V", "travel": "mm/s", "arc_on": "s", "arc_off": "s",
	"spot_step": "mm", "stickout": "mm", "gas_flow": "L/min", "root_opening": "mm", "tack_pitch": "mm",
	"shaft_speed": "r/min", "pulse_time": "ms", "pulse_frequency": "Hz"}

// What a dial, a timer, a flow meter or a rule shows, worked out by hand.
func TestDialed(t *testing.T) {
	for _, x := range []struct {
		figure       string
		v, low, high float64
		good         bool
		sys          System
		want         string
	}{
		{"arc_off", 0.227, 0.16, 0.36, false, Metric, "0.23 0.16 0.36"},
		{"stickout", 12, 8, 18, false, Metric, "12 8 18"},
		{"stickout", 12.3, 8, 18, false, Metric, "12 8 18"},
		{"stickout", 12, 8, 18, false, Inch, ".47 .31 .72"},     // 15/32, 10/32 and 23/32
		{"stickout", 12.7, 12.7, 12.7, false, Inch, ".5 .5 .5"}, // half an inch, typed
		{"volts", 14.08, 12.83, 15.4, false, Metric, "14.1 12.8 15.4"},
		{"wire_feed", 4.2723, 3.31, 5.004, true, Metric, "4.3 3.4 5.0"},
		{"wire_feed", 4.2723, 3.31, 5.004, true, Inch, "168 131 197"}, // 130.3 and 197.01 in/min
		{"wire_feed", 3.34, 3.31, 5.004, true, Metric, "3.4 3.4 5.0"}, // 3.3 would be cold
		{"wire_feed", 3.85, 3.84, 3.87, true, Metric, "3.85 3.84 3.87"},
		{"travel", 7.23, 4.9, 12.1, true, Metric, "7.2 4.9 12.1"},
		{"travel", 7.23, 4.9, 12.1, true, Inch, "17.0 12.0 28.5"}, // 17.08, 11.57, 28.58
		{"gas_flow", 12, 11.8, 18.5, false, Metric, "12 12 19"},
		{"gas_flow", 12, 11.8, 18.5, false, Inch, "25 25 39"},
		{"root_opening", 2, 2, 2, false, Inch, ".08 .08 .08"}, // 5/64
		{"tack_pitch", 40, 25, 50, false, Inch, "1.5 1.0 2.0"},
		{"shaft_speed", 2.86479, 2.86479, 2.86479, false, Metric, "2.9 2.9 2.9"},
		{"pulse_time", 1.11, 0.92, 2.68, false, Metric, "1.1 0.9 2.7"},
		{"pulse_frequency", 93.4, 90.8, 96.2, false, Inch, "93 91 96"},
		{"arc_on", 0.304, 0.3011, 0.3089, true, Metric, "0.30 0.30 0.31"}, // no timer is finer
		// typed
		{"wire_feed", 4.25, 4.25, 4.25, false, Metric, "4.25 4.25 4.25"},
		{"wire_feed", 3.825, 3.825, 3.825, false, Metric, "3.825 3.825 3.825"},
		{"wire_feed", 4.064, 4.064, 4.064, false, Metric, "4.1 4.1 4.1"}, // 160 in/min
		{"wire_feed", 4.064, 4.064, 4.064, false, Inch, "160 160 160"},
		{"travel", 6, 6, 6, false, Inch, "14.0 14.0 14.0"}, // 14.17
		{"travel", 6.25, 6.25, 6.25, false, Metric, "6.25 6.25 6.25"},
		{"arc_on", 0.045, 0.045, 0.045, false, Metric, "0.045 0.045 0.045"},
		{"volts", 14, 14, 14, false, Metric, "14.0 14.0 14.0"},
	} {
		v, from, to := Dialed(x.figure, x.v, x.low, x.high, units[x.figure], x.good, x.sys)
		if got := v + " " + from + " " + to; got != x.want {
			t.Errorf("%s %g (%g to %g), good %v, %s: %s, want %s", x.figure, x.v, x.low, x.high, x.good, x.sys, got,
				x.want)
		}
	}
}

// Every value shown as good is good, the value lies between the shown ends, and no more digits are shown than a dial
// has, unless the band is narrower than its step.
func TestDialedOverTheWholeRange(t *testing.T) {
	chance := deep.Rand(t)
	for range 2000 {
		for figure, unit := range units {
			v := math.Exp(chance.Float64()*math.Log(2000)) / 40 // 0.025 to 50
			low, high := v*(1-0.5*chance.Float64()), v*(1+0.5*chance.Float64())
			for i, sys := range []System{Metric, Inch} {
				d := dials[figure][i]
				text, from, to := Dialed(figure, v, low, high, unit, true, sys)
				x, a, b := number(t, text), number(t, from), number(t, to)
				lo, _ := Convert(low, unit, sys)
				hi, _ := Convert(high, unit, sys)
				if x < a || x > b {
					t.Fatalf("%s %g of %g to %g, %s: %s beyond %s–%s", figure, v, low, high, sys, text, from, to)
				}
				shown := d.step / 2 // how far rounding to decimals moves a step that is no decimal number
				if d.step*math.Pow(10, float64(d.decimals)) == math.Round(d.step*math.Pow(10, float64(d.decimals))) {
					shown = 1e-6
				}
				if wide := hi-lo > 2*d.step; wide && (a < lo-shown || b > hi+shown) {
					t.Fatalf("%s %g, %s: good is %g to %g, shown %s–%s", figure, v, sys, lo, hi, from, to)
				}
				if _, after, _ := strings.Cut(text, "."); hi-lo > 2*d.step && len(after) > d.decimals {
					t.Fatalf("%s %g, %s: %s has more digits than a dial", figure, v, sys, text)
				}
			}
		}
	}
}

// A value that is typed with up to three decimals stays as it was typed.
func TestTypedStaysAsTyped(t *testing.T) {
	chance := deep.Rand(t)
	for range 2000 {
		v := float64(1+chance.IntN(30000)) / 1000
		for figure, unit := range units {
			if text, _, _ := Dialed(figure, v, v, v, unit, false, Metric); math.Abs(number(t, text)-v) > 1e-9 {
				y, _ := Convert(v, unit, Inch)
				if n := decimalsOf(y, 2); n > 2 {
					t.Fatalf("%s %g %s is shown as %s", figure, v, unit, text)
				}
			}
		}
	}
}

// A computed value is rounded to the dial in both systems. By chance about one in a thousand looks typed.
func TestComputedIsAsFineAsTheDial(t *testing.T) {
	chance := deep.Rand(t)
	const tries = 2000
	for figure, unit := range units {
		for i, sys := range []System{Metric, Inch} {
			fine := 0
			for range tries {
				v := 1 + 20*chance.Float64()
				text, _, _ := Dialed(figure, v, v, v, unit, false, sys)
				if _, after, _ := strings.Cut(text, "."); len(after) > dials[figure][i].decimals {
					fine++
				}
			}
			if fine > tries/100 {
				t.Errorf("%s, %s: %d of %d have more digits than a dial", figure, sys, fine, tries)
			}
		}
	}
}

func number(t *testing.T, text string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}
