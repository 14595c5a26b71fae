package quantity

import (
	"math"
	"strings"
	"testing"
)

// The message names the part that is wrong, as it was typed.
func TestEachRefusalSaysWhy(t *testing.T) {
	for _, c := range []struct{ parser, text, why string }{
		{"length", "1/0 in", "is not a number"}, {"length", "1.5/4 in", "is not a number"},
		{"length", "1/1.5 in", "is not a number"}, {"length", "1234567/8 in", "is not a number"},
		{"length", "1/1234567 in", "is not a number"}, {"length", "1.5 1/4 in", "is not a number"},
		{"length", "1- /4 in", "is not a number"}, {"offset", "--1/4 in", "is not a number"},
		{"length", "12 mm4", "is not a number"},
		{"length", "1.2,500 mm", "is not a number"}, {"length", ",", "is not a number"},
		{"length", "1.2.3 mm", "is not a number"}, {"length", "1 2,5 mm", "is not a number"},
		{"flow", "20 ft33/h", "is not a number"}, {"flow", "20 ft3 3", "is not a number"}, {"flow", "20 n/2",
			"is not a number"},
		{"flow", "20 2", "is not a number"},
		{"flow", "20 a2", "has a unit that does not fit"}, {"flow", "20 z3", "has a unit that does not fit"},
		{"flow", "20 ft2/h", "has a unit that does not fit"},
		{"current", "1/2", "has a unit that does not fit"}, {"current", "93 mm", "has a unit that does not fit"},
		{"offset", "about -3", "does not begin with its number"}, {"gap", "about 3", "does not begin with its number"},
		{"size", "about 3", "does not begin with its number"},
		{"size", "$16", "does not begin with its number"}, {"size", "#16 mm", "does not begin with its number"},
		{"size", "no 1.5mm", "does not begin with its number"},
		{"size", "16swg", "has a unit that does not fit"}, {"size", "-16ga", "cannot be negative"},
		{"gap", "-1mm", "cannot be negative"},
		{"size", "#1.5", "a gauge is a number from 7 to 30"}, {"size", "no 31", "a gauge is a number from 7 to 30"},
		{"size", "6ga", "a gauge is a number from 7 to 30"},
		{"travel", "s/100mm", "has no seconds before the stroke"},
		{"travel", "5a/100mm", "has no seconds before the stroke"},
		{"travel", "5z/100mm", "has no seconds before the stroke"},
		{"travel", "16s/5A", "has no length after the stroke"}, {"travel", "0s/100mm", "is out of range"},
		{"travel", "16s/4mm", "is out of range"}, {"travel", "/5", "does not begin with its number"},
		{"price", "12 abcde/kg", "has a currency that is neither a sign nor a code"},
		{"price", "#12/kg", "has a currency that is neither a sign nor a code"},
		{"price", "12 a#/kg", "has a currency that is neither a sign nor a code"},
		{"price", "12 eur/m", "has a unit that does not fit"}, {"price", "", "is empty"}, {"gap", " \t ", "is empty"},
	} {
		v, err := parsers[c.parser].parse(c.text)
		if err == nil || !strings.HasSuffix(err.Error(), c.why) || v != 0 {
			t.Errorf("%s %q: %g, %v; want 0 and %q", c.parser, c.text, v, err, c.why)
		}
	}
}

// With an error the value is zero, so that nobody computes with it.
func TestValueIsZeroWithAnError(t *testing.T) {
	for _, text := range append(seeds, "12 parsecs", "1/0", "44ga", "#99", "9999999", "-9999999", "1,500", "50,000 psi",
		"25 ???/kg", "16s/x", "xs/16mm", "0s/0mm") {
		for name, p := range parsers {
			if v, err := p.parse(text); err != nil && v != 0 {
				t.Errorf("%s %q: %g beside %v", name, text, v, err)
			}
		}
	}
}

func TestOtherTypedQuantities(t *testing.T) {
	for _, c := range []struct {
		parser, text string
		want         float64
	}{
		{"length", "3/1 in", 76.2}, {"length", "11/16 in", 17.4625}, {"length", "1-11/16 in", 42.8625},
		{"length", "123456/100000 in", 31.357824}, {"length", "12. mm", 12},
		{"length", "0,5 in.", 12.7}, {"length", "1,5 in.", 38.1}, {"length", "1/2 in.", 12.7},
		{"length", "10 in.", 254}, {"length", "1/8 mm", 0.125},
		{"offset", "-1,500 mm", -1.5}, {"temperature", "-1,5", -1.5}, {"offset", "-1-1/4 mm", -1.25},
		{"number", "1000,500", 1000.5}, {"number", "0,889", 0.889}, {"number", "1,5000", 1.5}, {"number", "1,50", 1.5},
		{"number", "007", 7}, {"number", "1,2345", 1.2345},
		{"length", "300,000 mm", 300}, {"length", "200,500 mm", 200.5}, {"price", "12 abcd/kg", 12},
		{"price", "kr 12", 12}, {"price", "12 $", 12},
		{"size", "no16", 16}, {"size", "№ 16", 16}, {"size", "16g", 16}, {"size", "16msg", 16}, {"size", "16gsg", 16},
		{"size", "5-1/2in", 139.7},
		{"wire", "0,9 mm", 0.9}, {"gap", "0.26", 0.26}, {"size", "0.26", 0.26}, {"stickout", "1.9", 48.26},
	} {
		v, err := parsers[c.parser].parse(c.text)
		if err != nil || math.Abs(v-c.want) > 1e-12*math.Abs(c.want) {
			t.Errorf("%s %q: %.15g, %v; want %g", c.parser, c.text, v, err, c.want)
		}
	}
}

// A number without a unit is a gauge only if it is whole and at least 7.
func TestBareGauges(t *testing.T) {
	for text, want := range map[string]Size{"6": {MM: 6}, "7": {Gauge: 7}, "30": {Gauge: 30}, "007": {Gauge: 7},
		"19": {Gauge: 19}, "20": {Gauge: 20}, "7.0": {MM: 7}, "7,5": {MM: 7.5}, "30.5": {MM: 30.5},
		"#7": {Gauge: 7}, "30ga": {Gauge: 30}, "7mm": {MM: 7}} {
		if got, err := ParseSize(text); err != nil || got != want {
			t.Errorf("%q: %+v, %v; want %+v", text, got, err, want)
		}
	}
}

// A text of 160 bytes that folds to 40 is read. One byte more, and it is refused unread.
func TestLongestText(t *testing.T) {
	pad := func(before, after string, n int) string {
		return before + strings.Repeat(" ", n-len(before)-len(after)) + after
	}
	zeros := strings.Repeat("0", 39)
	for _, c := range []struct {
		parser, text string
		want         float64
	}{{"size", pad("16", "ga", 160), 16}, {"travel", pad("16s", "/100mm", 160), 6.25}, {"number", zeros + "1", 1}} {
		if v, err := parsers[c.parser].parse(c.text); err != nil || v != c.want {
			t.Errorf("%s of %d bytes: %g, %v; want %g", c.parser, len(c.text), v, err, c.want)
		}
	}
	for name, text := range map[string]string{"size": pad("16", "ga", 161), "travel": pad("16s", "/100mm", 161),
		"number": zeros + "01"} {
		if v, err := parsers[name].parse(text); err == nil || !strings.HasSuffix(err.Error(),
			"is too long to be a number") {
			t.Errorf("%s of %d bytes: %g, %v", name, len(text), v, err)
		}
	}
}

// A message repeats at most 24 columns of the typed text.
func TestMessageRepeatsTheBeginning(t *testing.T) {
	for text, want := range map[string]string{
		"12 aaaaaaaaaaaaaaaaaaaaa":  `a length "12 aaaaaaaaaaaaaaaaaaaaa" has a unit that does not fit`,
		"12 bbbbbbbbbbbbbbbbbbbbbb": `a length "12 bbbbbbbbbbbbbbbbbbbb…" has a unit that does not fit`,
	} {
		if _, err := Read(FieldLength, text); err == nil || err.Error() != want {
			t.Errorf("%q: %v; want %s", text, err, want)
		}
	}
}

// Every unit converts there and back.
func TestUnitsConvertBack(t *testing.T) {
	for _, sp := range specs {
		for _, u := range sp.units {
			for _, v := range []float64{-40, 0, 0.5, 1, 212} {
				if back := u.fromBase(u.toBase(v)); math.Abs(back-v) > 1e-12*math.Max(300, math.Abs(v)) {
					t.Errorf("%g %s comes back as %.15g", v, u.symbol, back)
				}
			}
		}
	}
}

func TestRuleOfNoField(t *testing.T) {
	if Rule(0) != "" {
		t.Errorf("%q", Rule(0))
	}
}

// The thousands may have one to three digits before them. If both readings are in range, the text is refused.
func TestThousandsByTheirDigits(t *testing.T) {
	for _, text := range []string{"1,500", "12,500", "100,500"} {
		if v, err := Read(FieldNumber, text); err == nil || !strings.HasSuffix(err.Error(), "can be read in two ways") {
			t.Errorf("%q: %g, %v", text, v, err)
		}
	}
}

// A number of pieces is whole, also where a comma could mark thousands.
func TestPiecesAreWhole(t *testing.T) {
	for text, want := range map[string]float64{"1": 1, "12": 12, "12.0": 12, "1,500": 1500, "2.5": -1, "2,5": -1,
		"0.5": -1, "-3": -1, "1/2": -1, "12 pieces": -1} {
		v, err := Read(FieldCount, text)
		if refused := want < 0; (err != nil) != refused || !refused && v != want {
			t.Errorf("%q: %g, %v", text, v, err)
		}
	}
	if _, err := Read(FieldCount, "2.5"); !strings.Contains(err.Error(), "not whole") {
		t.Error(err)
	}
}
