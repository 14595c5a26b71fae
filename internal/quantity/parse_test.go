package quantity

import (
	"errors"
	"math"
	"strings"
	"testing"

	"brazebooth/internal/mistake"
)

// Exact factors: NIST SP 811 Appendix B (inch 25.4 mm, pound 0.453 592 37 kg, pound-force 4.448 221 615 260 5 N, cubic
// foot 28.316 846 592 L).
func TestTypedQuantities(t *testing.T) {
	check := func(text string, got float64, err error, want float64) {
		t.Helper()
		if err != nil || !(math.Abs(got-want) <= 1e-12*math.Abs(want)) {
			t.Errorf("%q: %.15g, %v; want %.15g", text, got, err, want)
		}
	}
	for text, want := range map[string]float64{
		".035": 0.889, "0.035in": 0.889, `.035"`: 0.889, ".035 IN": 0.889, "1/16": 1.5875, `1/16"`: 1.5875,
		`1/16 in`: 1.5875,
		"0.9":     0.9, "0,9": 0.9, "0.9mm": 0.9, "1,2 mm": 1.2, "3/32": 2.38125, "3/32”": 2.38125, "35 mil": 0.889,
		"900 µm": 0.9,
	} {
		got, err := Read(FieldWire, text)
		check(text, got, err, want)
	}
	for text, want := range map[string]float64{
		"250ipm": 250 * 25.4 / 60, "250 in/min": 250 * 25.4 / 60, "250": 250 * 25.4 / 60, "6.3m/min": 105,
		"6,3 m/min": 105, "6.3": 105,
		"800mm/min": 800.0 / 60, "105 mm/s": 105, "630 cm/min": 105,
	} {
		got, err := Read(FieldFeed, text)
		check(text, got, err, want)
	}
	for text, want := range map[string]float64{
		"6": 6, "40cm/min": 400.0 / 60, "14 ipm": 14 * 25.4 / 60, "16s/100mm": 6.25, "12.7 s/4 in": 8,
		"20 s / 100 mm": 5, "6 mm/s": 6,
		"16 sec per 100 mm": 6.25, "16s/100": 6.25, "½ s/4mm": 8,
	} {
		got, err := Read(FieldTravel, text)
		check(text, got, err, want)
	}
	for text, want := range map[string]float64{"200F": 280.0 / 3, "95C": 95, "400 °C": 400, "-10": -10, "-4F": -20,
		"20": 20} {
		got, err := Read(FieldTemperature, text)
		check(text, got, err, want)
	}
	for text, want := range map[string]float64{"25cfh": 25 * 28.316846592 / 60, "12 L/min": 12, "12": 12} {
		got, err := Read(FieldFlow, text)
		check(text, got, err, want)
	}
	for text, want := range map[string]float64{"12mm": 12, "1/2in": 12.7, ".5": 12.7, "12": 12, `½"`: 12.7} {
		got, err := Read(FieldStickOut, text)
		check(text, got, err, want)
	}
	for text, want := range map[string]float64{"1-1/4in": 31.75, `1 1/4"`: 31.75, "300": 300, "1.5m": 1500,
		"2ft": 609.6, "1½ in": 38.1} {
		got, err := Read(FieldLength, text)
		check(text, got, err, want)
	}
	offset, err := Read(FieldOffset, "−1/32 in")
	check("−1/32 in", offset, err, -0.79375)
	count, err := Read(FieldNumber, "12")
	check("12", count, err, 12)
	share, err := Read(FieldPercent, "40 %")
	check("40 %", share, err, 40)
	force, err := Read(FieldForce, "500 lbf")
	check("500 lbf", force, err, 500*4.4482216152605e-3)
	gap, err := Read(FieldGap, "0")
	check("0", gap, err, 0)
	time, err := Read(FieldDuration, "400ms")
	check("400ms", time, err, 0.4)
	amps, err := Read(FieldCurrent, "93A")
	check("93A", amps, err, 93)
	volts, err := Read(FieldVoltage, "14,8 V")
	check("14,8 V", volts, err, 14.8)
}

func TestSizes(t *testing.T) {
	for text, want := range map[string]Size{
		"16ga": {Gauge: 16}, "18 ga": {Gauge: 18}, "16": {Gauge: 16}, "#16": {Gauge: 16}, "20 Gauge": {Gauge: 20},
		"22 gage": {Gauge: 22},
		".060":    {MM: 1.524}, "0.060in": {MM: 1.524}, "1.5": {MM: 1.5}, "1.5mm": {MM: 1.5},
		"1/16":    {MM: 1.5875},
		"1-1/4in": {MM: 31.75}, "6": {MM: 6}, "2": {MM: 2}, "7 mm": {MM: 7}, "12.5": {MM: 12.5},
	} {
		got, err := ParseSize(text)
		if err != nil || got.Gauge != want.Gauge || math.Abs(got.MM-want.MM) > 1e-12 {
			t.Errorf("%q: %+v, %v; want %+v", text, got, err, want)
		}
	}
}

func TestPrices(t *testing.T) {
	for text, want := range map[string]struct {
		v float64
		c string
	}{"$12/lb": {12 / 0.45359237, "$"}, "25 EUR/kg": {25, "EUR"}, "€25/kg": {25, "€"}, "30": {30, ""}, "9,5 eur": {9.5,
		"EUR"}, "$8": {8, "$"},
		"25 eur per lb": {25 / 0.45359237, "EUR"}, "12 $/pound": {12 / 0.45359237, "$"}} {
		v, c, err := ParsePrice(FieldPrice, text)
		if err != nil || math.Abs(float64(v)-want.v) > 1e-12*want.v || c != want.c {
			t.Errorf("%q: %g %q, %v; want %g %q", text, v, c, err, want.v, want.c)
		}
	}
}

// Each price and each time per length accepts the units of a bill, a payslip or a watch, and no others.
func TestUnitsOfCosts(t *testing.T) {
	for _, x := range []struct {
		field Field
		text  string
		v     float64
		c     string
	}{
		{FieldGasPrice, "8", 8, ""}, {FieldGasPrice, "8/m3", 8, ""}, {FieldGasPrice, "8 EUR/m³", 8, "EUR"},
		{FieldGasPrice, "$0.25/ft3", 8.82867, "$"}, {FieldGasPrice, "1c/L", 1000, "C"},
		{FieldGasPrice, "$8 per m3", 8, "$"},
		{FieldRate, "45", 45, ""}, {FieldRate, "45/h", 45, ""}, {FieldRate, "$45", 45, "$"},
		{FieldRate, "$45/hr", 45, "$"}, {FieldRate, "45 EUR per hour", 45, "EUR"}, {FieldRate, "0.5/min", 30, ""},
	} {
		v, c, err := ParsePrice(x.field, x.text)
		if err != nil || math.Abs(v-x.v) > 1e-5 || c != x.c {
			t.Errorf("%q: %g %q, %v; want %g %q", x.text, v, c, err, x.v, x.c)
		}
	}
	for text, want := range map[string]float64{"3": 3, "3min/m": 3, "3 minutes per metre": 3, "30 s/m": 0.5,
		"1min/ft": 3.28084} {
		if v, err := Read(FieldPerLength, text); err != nil || math.Abs(v-want) > 1e-5 {
			t.Errorf("%q: %g, %v; want %g", text, v, err, want)
		}
	}
	for _, x := range []struct {
		field Field
		text  string
	}{{FieldGasPrice, "8/kg"}, {FieldRate, "45/m"}, {FieldRate, "45/kg"}, {FieldPrice, "25/h"}} {
		if v, _, err := ParsePrice(x.field, x.text); err == nil || !strings.Contains(err.Error(), "does not fit") {
			t.Errorf("%q is read as %g, %v", x.text, v, err)
		}
	}
	if v, err := Read(FieldPerLength, "3 min"); err == nil {
		t.Errorf("3 min is read as %g a metre", v)
	}
}

func TestNonsenseIsRefusedWithWhatToType(t *testing.T) {
	nonsense := []string{"", "   ", "banana", "NaN", "inf", "Infinity", "1e3", "0x10p3", "1.2.3", "--3", "1/0", "1//2",
		"/", ".", "-", "9999999999999",
		strings.Repeat("9", 400), "12 parsecs", "\x1b[31m", "3 4", "1,2,3", "５", "1_000", "1,234.5", "1.234,5",
		"1·5", "1°5", "½5", "5²", "16" + strings.Repeat(" ", 200) + "ga", "1 per 2 per 3", "-½-", "no"}
	for name, p := range parsers {
		for _, text := range nonsense {
			v, err := p.parse(text)
			var e *mistake.Error
			if !errors.As(err, &e) || e.What == "" || e.Hint == "" {
				t.Errorf("%s %q: %g, %v; want an error that says what to type", name, text, v, err)
				continue
			}
			if strings.ContainsRune(e.What, 0x1b) {
				t.Errorf("%s %q: the message repeats an escape sequence", name, text)
			}
		}
	}
	for text, parse := range map[string]string{"400mm": "wire", "-3mm": "size", "44": "size", "6ga": "size",
		"31ga": "size", "16.5ga": "size", "3A": "feed",
		"fast": "feed", "0": "feed", "250ipm": "travel", "0 s/100mm": "travel", "60mm": "gap", "-5": "duration",
		"16ga": "wire", "93V": "current", "5 mm/s": "length", "-26": "offset",
		"12 L/min": "force", "10lb": "length", "$12": "number", "12 mm": "number", "16s/0": "travel",
		"s/100mm": "travel", "16s/16s": "travel", "1/2": "current"} {
		if v, err := parsers[parse].parse(text); err == nil {
			t.Errorf("%s %q was taken as %g", parse, text, v)
		}
	}
}

// A comma before three digits marks decimals or thousands. The range decides which; if it cannot, the text is refused.
func TestCommaBeforeThreeDigits(t *testing.T) {
	for text, p := range map[string]struct {
		parser string
		want   float64
	}{"1,613 mm": {"size", 1.613}, "0,889": {"length", 0.889}, ",035": {"wire", 0.889}, "1,000 mm/min": {"feed",
		1000.0 / 60}, "14,800": {"voltage", 14.8}} {
		if v, err := parsers[p.parser].parse(text); err != nil || math.Abs(v-p.want) > 1e-12 {
			t.Errorf("%s %q: %g, %v; want %g", p.parser, text, v, err, p.want)
		}
	}
	for text, parser := range map[string]string{"50,000 lbf": "force", "1,500 mm": "length", "$1,200/lb": "price",
		"1,100 F": "temperature"} {
		v, err := parsers[parser].parse(text)
		var e *mistake.Error
		if !errors.As(err, &e) || !strings.Contains(e.What, "two ways") || !strings.HasPrefix(e.Hint, "type 1") &&
			!strings.HasPrefix(e.Hint, "type 50lbf or 50000lbf") {
			t.Errorf("%s %q: %g, %+v", parser, text, v, e)
		}
	}
}

// Each rule for numbers without a unit holds on both sides of its limit.
func TestBareNumbers(t *testing.T) {
	for _, c := range []struct {
		parser, bare, same string
	}{
		{"size", ".249", ".249in"}, {"size", ".25", ".25mm"}, {"size", "6", "6mm"}, {"size", "7", "7ga"},
		{"size", "30", "30ga"}, {"size", "7.5", "7.5mm"},
		{"wire", ".045", ".045in"}, {"wire", "1.2", "1.2mm"}, {"wire", "3/64", "3/64in"}, {"gap", ".06", ".06in"},
		{"gap", ".25", ".25mm"},
		{"stickout", "1.9", "1.9in"}, {"stickout", "3", "3mm"}, {"length", "1.5", "1.5mm"}, {"length", "3/8", "3/8in"},
		{"offset", "-1", "-1mm"},
		{"feed", "29.9", "29.9m/min"}, {"feed", "30", "30ipm"}, {"travel", "8", "8mm/s"}, {"flow", "25", "25L/min"},
		{"temperature", "200", "200C"},
		{"temperature", "200°", "200C"}, {"force", "5", "5kN"}, {"duration", ".4", ".4s"}, {"price", "12", "12/kg"},
	} {
		bare, err1 := parsers[c.parser].parse(c.bare)
		same, err2 := parsers[c.parser].parse(c.same)
		if err1 != nil || err2 != nil || bare != same {
			t.Errorf("%s: %q is %g (%v), %q is %g (%v)", c.parser, c.bare, bare, err1, c.same, same, err2)
		}
	}
}

// The ends of a range belong to it, in whatever unit they are typed.
func TestEndsOfRanges(t *testing.T) {
	for text, parser := range map[string]string{"0.3 m/min": "feed", "40 m/min": "feed", "300 mm/min": "feed",
		"0.4mm": "wire", "2.4mm": "wire", "50µm": "size",
		"15cm": "size", "-40F": "temperature", "-40C": "temperature", "1500C": "temperature", "100m": "length",
		"60 mm/s": "travel", "3.6 m/min": "travel",
		"50 mm": "stickout", "-10": "offset", "100%": "percent", "1000s": "duration"} {
		if v, err := parsers[parser].parse(text); err != nil {
			t.Errorf("%s %q: %g, %v", parser, text, v, err)
		}
	}
	_, err := Read(FieldFeed, "50 m/min")
	var e *mistake.Error
	if !errors.As(err, &e) || e.Hint != "type 250ipm or 6.3m/min; from 0.3 to 40 m/min (12 to 1570 in/min)" {
		t.Errorf("the range in a message: %+v", e)
	}
}

// The message names the part that is wrong.
func TestMessagesNameWhatIsWrong(t *testing.T) {
	for text, want := range map[string]string{
		"1,234.5 mm": `a length "1,234.5 mm" is not a number`, "12 A": `a length "12 A" has a unit that does not fit`,
		`3/32" x`: `a length '3/32" x' has a unit that does not fit`,
		"about 3": `a length "about 3" does not begin with its number`, "101m": `a length of "101m" is out of range`,
		"-1": "a length cannot be negative",
		" ":  "a length is empty",
	} {
		if _, err := Read(FieldLength, text); err == nil || err.Error() != want {
			t.Errorf("%q: %v; want %s", text, err, want)
		}
	}
}

func TestGaugeMessage(t *testing.T) {
	_, err := ParseSize("44ga")
	var e *mistake.Error
	if !errors.As(err, &e) || e.What != "a gauge is a number from 7 to 30" || e.Hint != "type 16ga, .060 or 1.5mm" {
		t.Errorf("%+v", e)
	}
}

func TestEveryFieldHasARule(t *testing.T) {
	if Rule(0) != "" {
		t.Errorf("a field of names has the rule %q", Rule(0))
	}
	for f := Field(1); f < fields; f++ {
		if Rule(f) == "" || specs[f].hint == "" {
			t.Errorf("field %d has no rule or no hint", f)
		}
	}
}
