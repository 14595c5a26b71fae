package quantity

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// The inch numbers are those that a shop would write: converted by hand and rounded no finer than the metric ones.
func TestSentence(t *testing.T) {
	for _, x := range [...]struct{ metric, inch, both string }{
		{"open the root to 2 mm", "open the root to .08 in", "open the root to 2 mm (.08 in)"},
		{"strip it 25 mm back.", "strip it 1 in back.", "strip it 25 mm (1 in) back."},
		{"tack every 25 to 50 mm", "tack every 1 to 2 in", "tack every 25 to 50 mm (1 to 2 in)"},
		{"100 mm", "4 in", "100 mm (4 in)"},
		{"a gap of 1.6 mm", "a gap of .063 in", "a gap of 1.6 mm (.063 in)"},
		{"0.1 mm", ".004 in", "0.1 mm (.004 in)"},
		{"under 150 °C", "under 300 °F", "under 150 °C (300 °F)"},
		{"zinc boils at 907 °C", "zinc boils at 1665 °F", "zinc boils at 907 °C (1665 °F)"},
		{"about 900 °C (880 to 920).", "about 1650 °F (1620 to 1690).",
			"about 900 °C (1650 °F), 880 to 920 °C (1620 to 1690 °F)."},
		{"from -40 to 700 °C", "from -40 to 1300 °F", "from -40 to 700 °C (-40 to 1300 °F)"},
		{"50 K of room", "90 °F of room", "50 K (90 °F) of room"},
		{"12 L/min", "25 cfh", "12 L/min (25 cfh)"},
		{"6.3 m/min at 5.1 mm/s", "250 in/min at 12 in/min", "6.3 m/min (250 in/min) at 5.1 mm/s (12 in/min)"},
		{"2 kN", "450 lbf", "2 kN (450 lbf)"},
		{"350 MPa", "51 ksi", "350 MPa (51 ksi)"},
		{"11 mm²", "0.017 in²", "11 mm² (0.017 in²)"},
		{"some 4100 m³/h (380 to 30000)", "some 2400 cfm (225 to 18000)",
			"some 4100 m³/h (2400 cfm), 380 to 30000 m³/h (225 to 18000 cfm)"},
	} {
		inch, both := Sentence(x.metric, Inch), Sentence(x.metric, Both)
		if got := Sentence(x.metric, Metric); got != x.metric || inch != x.inch || both != x.both {
			t.Errorf("%q: metric %q, inch %q, both %q", x.metric, got, inch, both)
		}
		if Sentence(inch, Inch) != inch || Sentence(both, Both) != both {
			t.Errorf("%q is converted twice", x.metric)
		}
	}
}

// If a sentence gives a quantity in both systems, the inch system shows only its own; the other systems show both.
func TestSentenceSaidInBoth(t *testing.T) {
	for both, want := range map[string]string{
		"within 11 m (35 ft), both sides":             "within 35 ft, both sides",
		"150 to 200 °F (66 to 93 °C) through":         "150 to 200 °F through",
		"1.2 mm (.045 in) wire at 150 A":              ".045 in wire at 150 A",
		"a room under 284 m³ (10000 ft³) a welder.":   "a room under 10000 ft³ a welder.",
		"5 mm/s (12 in/min) and 6 m/min (240 in/min)": "12 in/min and 240 in/min",
		"3/32 to 1/8 in (2.4 to 3.2 mm) rod":          "3/32 to 1/8 in rod",
	} {
		if m, i, b := Sentence(both, Metric), Sentence(both, Inch), Sentence(both, Both); m != both || i != want ||
			b != both {
			t.Errorf("%q: %q, %q, %q", both, m, i, b)
		}
	}
}

// Two different quantities are not one quantity in two systems: each is converted.
func TestSentenceOfTwoQuantities(t *testing.T) {
	for metric, want := range map[string][2]string{
		"2 mm (600 °C) tacked":        {".08 in (1110 °F) tacked", "2 mm (.08 in) (600 °C (1110 °F)) tacked"},
		"1.2 mm (8 m/min)":            {".047 in (310 in/min)", "1.2 mm (.047 in) (8 m/min (310 in/min))"},
		"12 mm (10 mm)":               {".47 in (.4 in)", "12 mm (.47 in) (10 mm (.4 in))"},
		"80 of 100 and 2 mm":          {"80 of 100 and .08 in", "80 of 100 and 2 mm (.08 in)"},
		"between 500 and 850 °C":      {"between 930 and 1560 °F", "between 500 and 850 °C (930 and 1560 °F)"},
		"a piece of 40 by 60 mm, cut": {"a piece of 1.6 by 2.4 in, cut", "a piece of 40 by 60 mm (1.6 by 2.4 in), cut"},
	} {
		inch, both := Sentence(metric, Inch), Sentence(metric, Both)
		if inch != want[0] || both != want[1] || Sentence(metric, Metric) != metric {
			t.Errorf("%q: %q, %q", metric, inch, both)
		}
		if Sentence(inch, Inch) != inch || Sentence(both, Both) != both {
			t.Errorf("%q is converted twice", metric)
		}
	}
}

// Names and texts to be typed stay as they are.
func TestSentenceLeavesNames(t *testing.T) {
	for _, text := range []string{"type 1.5mm or .060", "0.8, 1.0 or 1.2 mm wire", "50 L 200 bar bottles", "5 mg/m³",
		"2 m/g", "in 72 of 100", "72 in 100", `"5 mm" is not a number`, "15 minutes", "shade 11", "200 A at 17.5 V",
		"45°",
		"x_2 mm", "ISO 14341-A 3 m2", `cannot open "seam 2 mm.pdf"`, `no card "tank 2 mm lid"`,
		"no card “tank 2 mm lid” here",
		"no card 'joe's 2 mm lid' here", `"a \"2 mm\" lid"`, "cannot open seam 2 mm.pdf", ""} {
		for _, sys := range Systems {
			if got := Sentence(text, sys); got != text {
				t.Errorf("%s: %q became %q", sys, text, got)
			}
		}
	}
}

// An apostrophe or an inch mark opens no quotation, and the text after it is converted.
func TestSentenceAroundQuotes(t *testing.T) {
	for text, want := range map[string]string{
		"the sheet's edge, 2 mm, isn't cut":  "the sheet's edge, .08 in, isn't cut",
		`3/32" rod at 2 mm, 1/8" at 4 mm`:    `3/32" rod at .08 in, 1/8" at .16 in`,
		`"a 2 mm" is 2 mm, not "3 mm thick"`: `"a 2 mm" is .08 in, not "3 mm thick"`,
		"an open 'quote of 2 mm":             "an open 'quote of .08 in",
	} {
		if got := Sentence(text, Inch); got != want {
			t.Errorf("%q became %q", text, got)
		}
	}
}

func TestTyped(t *testing.T) {
	for _, x := range [...][5]string{
		{"stickout", "12mm", "mm", ".47in", "12mm (.47in)"}, // in thirty-seconds of an inch
		{"preheat", "80C", "C", "176F", "80C (176F)"},
		{"aim", "-0.4mm", "mm", "-.01575in", "-0.4mm (-.01575in)"},
		{"length", "1000mm", "mm", "39.37in", "1000mm (39.37in)"},
		{"gap", "0mm", "mm", "0in", "0mm (0in)"},
		{"wire", ".035in", "mm", ".035in", ".035in"},
		{"operating", "40%", "%", "40%", "40%"},
		{"filler", "cusi3", "", "cusi3", "cusi3"},
		{"metal", "304L", "", "304L", "304L"},
		{"coating", "G60", "", "G60", "G60"},
		{"gap", "", "mm", "", ""},
	} {
		field, value, unit := x[0], x[1], x[2]
		if m, i, b := Typed(field, value, unit, Metric), Typed(field, value, unit, Inch),
			Typed(field, value, unit, Both); m != value || i != x[3] || b != x[4] {
			t.Errorf("%q: %q, %q, %q", value, m, i, b)
		}
	}
}

// A value that is typed back in inches is the same setting, to the last digit shown.
func TestTypedBack(t *testing.T) {
	for c := -40; c <= 700; c++ {
		text := strconv.Itoa(c)
		back, err := Read(FieldTemperature, Typed("preheat", text+"C", "C", Inch))
		if err != nil || strconv.Itoa(int(math.Round(back))) != text {
			t.Errorf("%s °C comes back as %g (%v)", text, back, err)
		}
	}
	for n := range 2000 {
		text := strconv.FormatFloat(float64(n)/10, 'f', 1, 64)
		back, err := Read(FieldLength, Typed("length", text+"mm", "mm", Inch))
		if n > 0 && (err != nil || strconv.FormatFloat(back, 'f', 1, 64) != text) {
			t.Errorf("%s mm comes back as %g (%v)", text, back, err)
		}
	}
}

var digitRun = regexp.MustCompile(`\d+`)

// Nothing panics, metric sentences stay as they are, Both loses no number, and nothing is converted twice.
func FuzzSentence(f *testing.F) {
	for _, s := range []string{"1 to 2 mm", "900 °C (880 to 920)", "11 m (35 ft)", "1/16 in (1.6 mm)", "0 mm", ". mm",
		"9 °C (9)", "2 mm (600 °C)", "between 1 and 2 mm", "2 by 3 mm", `"2 mm" and 2 mm`, "'2 mm", "12 mm (10 mm)",
		"\xff\"2 mm", `"2 mm" "3 mm`} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		if got := Sentence(s, Metric); got != s {
			t.Errorf("metric: %q became %q", s, got)
		}
		both := Sentence(s, Both)
		left := digitRun.FindAllString(both, -1)
		for _, n := range digitRun.FindAllString(s, -1) {
			at := slices.Index(left, n)
			if at < 0 {
				t.Fatalf("both: %q lost %s: %q", s, n, both)
			}
			left = left[at+1:]
		}
		if again := Sentence(both, Both); again != both {
			t.Errorf("both, twice: %q became %q, then %q", s, both, again)
		}
		if got := Sentence(s, Inch); got != s && !strings.ContainsAny(s, "0123456789") {
			t.Errorf("%q became %q", s, got)
		}
		_ = Typed("length", s, "mm", Both)
	})
}
