package quantity

import (
	"errors"
	"math"
	"strings"
	"testing"
)

// Exact factors: NIST SP 811 Appendix B (inch 25.4 mm, pound 0.453 592 37 kg, pound-force
// 4.448 221 615 260 5 N, cubic foot 28.316 846 592 L; ksi follows from the last but one).
func TestWhatHandsType(t *testing.T) {
	check := func(text string, got float64, err error, want float64) {
		t.Helper()
		if err != nil || !(math.Abs(got-want) <= 1e-12*math.Abs(want)) {
			t.Errorf("%q: %.15g, %v; want %.15g", text, got, err, want)
		}
	}
	for text, want := range map[string]float64{
		".035": 0.889, "0.035in": 0.889, `.035"`: 0.889, ".035 IN": 0.889, "1/16": 1.5875, `1/16"`: 1.5875, `1/16 in`: 1.5875,
		"0.9": 0.9, "0,9": 0.9, "0.9mm": 0.9, "1,2 mm": 1.2, "3/32": 2.38125, "3/32”": 2.38125, "35 mil": 0.889, "900 µm": 0.9,
	} {
		got, err := ParseWire(text)
		check(text, float64(got), err, want)
	}
	for text, want := range map[string]float64{
		"250ipm": 250 * 25.4 / 60, "250 in/min": 250 * 25.4 / 60, "250": 250 * 25.4 / 60, "6.3m/min": 105, "6,3 m/min": 105, "6.3": 105,
		"800mm/min": 800.0 / 60, "105 mm/s": 105, "630 cm/min": 105,
	} {
		got, err := ParseFeed(text)
		check(text, float64(got), err, want)
	}
	for text, want := range map[string]float64{
		"6": 6, "40cm/min": 400.0 / 60, "14 ipm": 14 * 25.4 / 60, "16s/100mm": 6.25, "12.7 s/4 in": 8, "20 s / 100 mm": 5, "6 mm/s": 6,
	} {
		got, err := ParseTravel(text)
		check(text, float64(got), err, want)
	}
	for text, want := range map[string]float64{"200F": 280.0 / 3, "95C": 95, "400 °C": 400, "-10": -10, "-4F": -20, "20": 20} {
		got, err := ParseTemperature(text)
		check(text, float64(got), err, want)
	}
	for text, want := range map[string]float64{"25cfh": 25 * 28.316846592 / 60, "12 L/min": 12, "12": 12} {
		got, err := ParseFlow(text)
		check(text, float64(got), err, want)
	}
	for text, want := range map[string]float64{"50ksi": 50 * 4448.2216152605 / 645.16, "345MPa": 345, "345": 345} {
		got, err := ParseStress(text)
		check(text, float64(got), err, want)
	}
	for text, want := range map[string]float64{"12mm": 12, "1/2in": 12.7, ".5": 12.7, "12": 12, `½"`: 12.7} {
		got, err := ParseStickOut(text)
		check(text, float64(got), err, want)
	}
	for text, want := range map[string]float64{"1-1/4in": 31.75, `1 1/4"`: 31.75, "300": 300, "1.5m": 1500, "2ft": 609.6, "1½ in": 38.1} {
		got, err := ParseLength(text)
		check(text, float64(got), err, want)
	}
	mass, err := ParseMass("10lb")
	check("10lb", float64(mass), err, 4.5359237)
	force, err := ParseForce("500 lbf")
	check("500 lbf", float64(force), err, 500*4.4482216152605e-3)
	gap, err := ParseGap("0")
	check("0", float64(gap), err, 0)
	time, err := ParseDuration("400ms")
	check("400ms", float64(time), err, 0.4)
	amps, err := ParseCurrent("93A")
	check("93A", float64(amps), err, 93)
	volts, err := ParseVoltage("14,8 V")
	check("14,8 V", float64(volts), err, 14.8)
}

func TestSizes(t *testing.T) {
	for text, want := range map[string]Size{
		"16ga": {Gauge: 16}, "18 ga": {Gauge: 18}, "16": {Gauge: 16}, "#16": {Gauge: 16}, "20 Gauge": {Gauge: 20}, "22 gage": {Gauge: 22},
		".060": {Length: 1.524}, "0.060in": {Length: 1.524}, "1.5": {Length: 1.5}, "1.5mm": {Length: 1.5}, "1/16": {Length: 1.5875},
		"1-1/4in": {Length: 31.75}, "6": {Length: 6}, "2": {Length: 2}, "7 mm": {Length: 7}, "12.5": {Length: 12.5},
	} {
		got, err := ParseSize(text)
		if err != nil || got.Gauge != want.Gauge || math.Abs(float64(got.Length-want.Length)) > 1e-12 {
			t.Errorf("%q: %+v, %v; want %+v", text, got, err, want)
		}
	}
}

func TestPrices(t *testing.T) {
	for text, want := range map[string]struct {
		v float64
		c string
	}{"$12/lb": {12 / 0.45359237, "$"}, "25 EUR/kg": {25, "EUR"}, "€25/kg": {25, "€"}, "30": {30, ""}, "9,5 eur": {9.5, "EUR"}, "$8": {8, "$"}} {
		v, c, err := ParsePrice(text)
		if err != nil || math.Abs(float64(v)-want.v) > 1e-12*want.v || c != want.c {
			t.Errorf("%q: %g %q, %v; want %g %q", text, v, c, err, want.v, want.c)
		}
	}
}

// everyParser is every parser by name, for the tests that hold for all.
var everyParser = map[string]func(string) (float64, error){
	"size": func(s string) (float64, error) {
		v, err := ParseSize(s)
		return float64(v.Length) + float64(v.Gauge), err
	},
	"wire":        func(s string) (float64, error) { v, err := ParseWire(s); return float64(v), err },
	"gap":         func(s string) (float64, error) { v, err := ParseGap(s); return float64(v), err },
	"stickout":    func(s string) (float64, error) { v, err := ParseStickOut(s); return float64(v), err },
	"length":      func(s string) (float64, error) { v, err := ParseLength(s); return float64(v), err },
	"feed":        func(s string) (float64, error) { v, err := ParseFeed(s); return float64(v), err },
	"travel":      func(s string) (float64, error) { v, err := ParseTravel(s); return float64(v), err },
	"current":     func(s string) (float64, error) { v, err := ParseCurrent(s); return float64(v), err },
	"voltage":     func(s string) (float64, error) { v, err := ParseVoltage(s); return float64(v), err },
	"flow":        func(s string) (float64, error) { v, err := ParseFlow(s); return float64(v), err },
	"stress":      func(s string) (float64, error) { v, err := ParseStress(s); return float64(v), err },
	"force":       func(s string) (float64, error) { v, err := ParseForce(s); return float64(v), err },
	"mass":        func(s string) (float64, error) { v, err := ParseMass(s); return float64(v), err },
	"duration":    func(s string) (float64, error) { v, err := ParseDuration(s); return float64(v), err },
	"percent":     ParsePercent,
	"price":       func(s string) (float64, error) { v, _, err := ParsePrice(s); return float64(v), err },
	"temperature": func(s string) (float64, error) { v, err := ParseTemperature(s); return float64(v), err },
}

func TestNonsenseIsRefusedWithWhatToType(t *testing.T) {
	nonsense := []string{"", "   ", "banana", "NaN", "inf", "Infinity", "1e3", "0x10p3", "1.2.3", "--3", "1/0", "1//2", "/", ".", "-", "9999999999999",
		strings.Repeat("9", 400), "12 parsecs", "\x1b[31m", "3 4", "1,2,3", "５", "1_000"}
	for name, parse := range everyParser {
		for _, text := range nonsense {
			v, err := parse(text)
			var e *Error
			if !errors.As(err, &e) || e.What == "" || e.Hint == "" {
				t.Errorf("%s %q: %g, %v; want an error that says what to type", name, text, v, err)
				continue
			}
			if strings.ContainsRune(e.What, 0x1b) {
				t.Errorf("%s %q: the message repeats an escape sequence", name, text)
			}
		}
	}
	for text, parse := range map[string]string{"400mm": "wire", "-3mm": "size", "44": "size", "6ga": "size", "31ga": "size", "16.5ga": "size", "3A": "feed",
		"fast": "feed", "0": "feed", "250ipm": "travel", "0 s/100mm": "travel", "60mm": "gap", "-5": "duration"} {
		if v, err := everyParser[parse](text); err == nil {
			t.Errorf("%s %q was taken as %g", parse, text, v)
		}
	}
}

func TestGaugeMessage(t *testing.T) {
	_, err := ParseSize("44ga")
	var e *Error
	if !errors.As(err, &e) || e.What != "a gauge is a number from 7 to 30" || e.Hint != "type 16ga, .060 or 1.5mm" {
		t.Errorf("%+v", e)
	}
}

func FuzzParsers(f *testing.F) {
	for _, s := range []string{"16ga", ".035", "1-1/4in", "250ipm", "16s/100mm", "$12/lb", "-4F", "\x1b[2J", "½", "1,5"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for name, parse := range everyParser {
			v, err := parse(text)
			if err == nil && (math.IsNaN(v) || math.IsInf(v, 0) || v < 0 && name != "temperature") {
				t.Fatalf("%s %q gave %g", name, text, v)
			}
			if err != nil {
				for _, r := range err.Error() {
					if r < 0x20 || r == 0x7f {
						t.Fatalf("%s %q: message %q holds a control character", name, text, err)
					}
				}
			}
		}
	})
}

func TestEveryFieldHasARule(t *testing.T) {
	if Rule(0) != "" {
		t.Errorf("a field of names has the rule %q", Rule(0))
	}
	for f := Field(1); f < fields; f++ {
		if Rule(f) == "" || Hint(f) == "" {
			t.Errorf("field %d has no rule or no hint", f)
		}
	}
}
