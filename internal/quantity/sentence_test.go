package quantity

import (
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

// Of what is said in both systems each keeps its own; both keep both.
func TestSentenceSaidInBoth(t *testing.T) {
	for both, want := range map[string][2]string{
		"within 11 m (35 ft), both sides":           {"within 11 m, both sides", "within 35 ft, both sides"},
		"150 to 200 °F (66 to 93 °C) through":       {"66 to 93 °C through", "150 to 200 °F through"},
		"1.2 mm (.045 in) wire at 150 A":            {"1.2 mm wire at 150 A", ".045 in wire at 150 A"},
		"a room under 284 m³ (10000 ft³) a welder.": {"a room under 284 m³ a welder.", "a room under 10000 ft³ a welder."},
	} {
		if m, i, b := Sentence(both, Metric), Sentence(both, Inch), Sentence(both, Both); m != want[0] || i != want[1] ||
			b != both {
			t.Errorf("%q: %q, %q, %q", both, m, i, b)
		}
	}
}

// Names and what is to be typed stay as they stand.
func TestSentenceLeavesNames(t *testing.T) {
	for _, text := range []string{"type 1.5mm or .060", "0.8, 1.0 or 1.2 mm wire", "50 L 200 bar bottles", "5 mg/m³",
		"2 m/g", "in 72 of 100", "72 in 100", `"5 mm" is not a number`, "15 minutes", "shade 11", "200 A at 17.5 V", "45°",
		"x_2 mm", "ISO 14341-A 3 m2", ""} {
		for _, sys := range Systems {
			if got := Sentence(text, sys); got != text {
				t.Errorf("%s: %q became %q", sys, text, got)
			}
		}
	}
}

func TestTyped(t *testing.T) {
	for value, want := range map[string][2]string{"12mm": {".47in", "12mm (.47in)"}, "80C": {"175F", "80C (175F)"},
		"-0.4mm": {"-.016in", "-0.4mm (-.016in)"}, "0mm": {"0in", "0mm (0in)"}, "40%": {"40%", "40%"},
		".035in": {".035in", ".035in"}, "cusi3": {"cusi3", "cusi3"}, "": {"", ""}, "G60": {"G60", "G60"}} {
		if m, i, b := Typed(value, Metric), Typed(value, Inch), Typed(value, Both); m != value || i != want[0] ||
			b != want[1] {
			t.Errorf("%q: %q, %q, %q", value, m, i, b)
		}
	}
}

// Nothing panics, and only a text with digits changes.
func FuzzSentence(f *testing.F) {
	for _, s := range []string{"1 to 2 mm", "900 °C (880 to 920)", "11 m (35 ft)", "1/16 in (1.6 mm)", "0 mm", ". mm", "9 °C (9)"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		for _, sys := range Systems {
			if got := Sentence(s, sys); got != s && !strings.ContainsAny(s, "0123456789") {
				t.Errorf("%q became %q", s, got)
			}
			_ = Typed(s, sys)
		}
	})
}
