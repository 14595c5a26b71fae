package quantity

import (
	"math"
	"math/big"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// exactUnits are the units that are exact by definition, as NIST SP 811 appendix B.8 and B.9 print them ("1 in = 25.4
// mm"), each as a quotient of two products, in the base unit.
var exactUnits = []struct{ parser, unit, over, under string }{
	{"length", "in", "25.4", "1"}, {"length", "ft", "304.8", "1"}, {"length", "mil", "0.0254", "1"},
	{"length", "um", "0.001", "1"},
	{"feed", "in/min", "25.4", "60"}, {"feed", "m/min", "1000", "60"}, {"travel", "in/min", "25.4", "60"},
	{"travel", "cm/min", "10", "60"},
	{"flow", "cfh", "28.316846592", "60"}, {"flow", "m3/h", "1000", "60"},
	{"force", "lbf", "4.4482216152605", "1000"}, {"force", "kgf", "9.80665", "1000"},
	{"mass", "lb", "0.45359237", "1"}, {"mass", "oz", "0.45359237", "16"}, {"mass", "t", "1000", "1"},
	{"price", "/lb", "1", "0.45359237"}, {"duration", "ms", "0.001", "1"}, {"duration", "h", "3600", "1"},
}

// Conversions against exact rational arithmetic. The typed number, the factor, the product and the quotient are each
// rounded once, so the results may differ by two units in the last place.
func TestConversionsAreExact(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		u := rapid.SampledFrom(exactUnits).Draw(r, "unit")
		n := strconv.FormatFloat(rapid.Float64Range(0.01, 3000).Draw(r, "n"), 'f', rapid.IntRange(0, 4).Draw(r,
			"decimals"), 64)
		want := ratio(n)
		want.Mul(want, ratio(u.over)).Quo(want, ratio(u.under))
		exact, _ := want.Float64()
		p := parsers[u.parser]
		got, err := p.parse(n + u.unit)
		if err != nil {
			if sp := specs[p.field]; sp.holds(exact) {
				r.Fatalf("%s%s is %g, in range, and refused: %v", n, u.unit, exact, err)
			}
			return
		}
		if math.Abs(got-exact) > 2*ulp(exact) {
			r.Fatalf("%s%s = %.17g, exactly %.17g", n, u.unit, got, exact)
		}
	})
}

// Fahrenheit, NIST SP 811 B.8: t/°C = (t/°F − 32)/1.8. The subtraction keeps the rounding error of the typed number, so
// the fixed points must be right to the last bit, and other values to that error.
func TestFahrenheitIsExact(t *testing.T) {
	for text, want := range map[string]float64{"32F": 0, "212F": 100, "-40F": -40, "1832F": 1000, "50F": 10,
		"23F": -5} {
		if got, err := Read(FieldTemperature, text); err != nil || got != want {
			t.Errorf("%q: %.17g, %v; want %.17g", text, got, err, want)
		}
	}
	if got, err := Read(FieldTemperature, "491,67F"); err != nil || math.Abs(got-459.67*5/9) > ulp(491.67) {
		t.Errorf("491.67F: %.17g, %v", got, err)
	}
	if got, err := Read(FieldTemperature, "300K"); err != nil || math.Abs(got-26.85) > 1e-13 {
		t.Errorf("300K: %.17g, %v", got, err)
	}
}

// Factors that are not exact, as NIST SP 811 appendix B.8 prints them. The tolerance is half the last printed digit.
func TestConvertAgainstPrintedFactors(t *testing.T) {
	for _, c := range []struct {
		unit, label string
		inMetric    float64 // how many of the card's units make one of the other system's
		half        float64
	}{
		{"kN", "lbf", 4.448222e-3, 5e-10},                  // pound-force, N
		{"MPa", "ksi", 6.894757, 5e-7},                     // kip per square inch, Pa
		{"g", "oz", 2.834952e1, 5e-6},                      // ounce (avoirdupois), kg
		{"g/h", "oz/h", 2.834952e1, 5e-6},                  // the same an hour
		{"g/m2", "oz/ft²", 3.051517e2, 5e-5},               // ounce (avoirdupois) per square foot, kg/m2
		{"g/m", "lb/1000 ft", 1.488164, 5e-7},              // pound per foot, kg/m: a thousandth of that, in g
		{"g/min", "lb/h", 1.259979e-4 * 60e3, 5e-11 * 6e4}, // pound per hour, kg/s
		{"L", "ft³", 2.831685e1, 5e-6},                     // cubic foot, m3
		{"m3/h", "cfm", 4.719474e-4 * 3600, 5e-11 * 3600},  // cubic foot per minute, m3/s
		{"mm3", "in³", 1.638706e4, 5e-3},                   // cubic inch, m3
		{"mm2", "in²", 645.16, 1e-12},                      // square inch, exact
		{"mm", "in", 25.4, 1e-14},                          // inch, exact
		{"m", "ft", 0.3048, 1e-16},                         // foot, exact
		{"kg", "lb", 0.45359237, 1e-16},                    // pound, exact
		{"m/min", "in/min", 0.0254, 1e-17},
		{"mm/s", "in/min", 4.233333e-4 * 1e3, 5e-8},      // inch per minute, m/s
		{"L/min", "cfh", 7.865791e-6 * 6e4, 5e-13 * 6e4}, // cubic foot per hour, m3/s
		{"m3", "ft³", 2.831685e-2, 5e-9},
		{"m3/min", "cfm", 2.831685e-2, 5e-9},
		{"J/mm", "kJ/in", 39.37008, 5e-6},  // 1000 over the inch, 25.4 mm exact
		{"per kg", "a lb", 2.204623, 5e-7}, // reciprocal of the pound, 0.453 592 37 kg exact
		{"K", "°F", 1 / 1.8, 1e-15},        // degree Fahrenheit as an interval, exact
	} {
		one, label := Convert(1, c.unit, Inch)
		if got := 1 / one; math.Abs(got-c.inMetric) > c.half || label != c.label {
			t.Errorf("1 %s is %.9g %s; printed %.9g %s", label, got, c.unit, c.inMetric, c.label)
		}
	}
	if f, label := Convert(-40, "C", Inch); f != -40 || label != "°F" {
		t.Errorf("-40 C is %g %s", f, label)
	}
}

func ratio(s string) *big.Rat {
	r, ok := new(big.Rat).SetString(strings.TrimSpace(s))
	if !ok {
		panic("not a number: " + s)
	}
	return r
}

func ulp(v float64) float64 { return math.Nextafter(math.Abs(v), math.Inf(1)) - math.Abs(v) }

// The value alone decides the decimals of a band without width.
func TestBandWithoutWidth(t *testing.T) {
	for v, want := range map[float64]string{0.45: "0.45", 0.125: "0.125", 3: "3"} {
		if got, _ := Band(v, v, v, "mm", Metric); got != want {
			t.Errorf("%v is shown as %s, want %s", v, got, want)
		}
	}
}
