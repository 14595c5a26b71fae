package quantity

import (
	"math"
	"testing"
)

// showRows has, for each of a card's units, a round metric value with its text, and a value that is round in the inch
// system by the factor that NIST SP 811 appendix B.8 prints, with its text. A round value shows the fewest decimals.
var showRows = []struct {
	unit       string
	v          float64
	text       string
	round      float64
	inchAsText string
}{
	{"m/min", 5, "5.0 m/min", 5.08, "200 in/min"},
	{"mm/s", 6, "6.0 mm/s", 12.7, "30.0 in/min"},
	{"m/s", 2, "2.0 m/s", 0.508, "100 ft/min"},
	{"mm", 12, "12 mm", 50.8, "2 in"},
	{"m", 3, "3.0 m", 3.048, "10.0 ft"},
	{"g/min", 40, "40.0 g/min", 1.259979e-4 * 60e3, "1.00 lb/h"},
	{"g/h", 2, "2.0 g/h", 28.34952, "1.00 oz/h"},
	{"mg/s", 2.5, "2.5 mg/s", 2.5, "2.5 mg/s"},
	{"g/s", 0.5, "0.50 g/s", 0.5, "0.50 g/s"},
	{"g/kg", 5, "5 g/kg", 5, "5 g/kg"},
	{"g/m", 5, "5.00 g/m", 1.488164, "1.00 lb/1000 ft"},
	{"g/m2", 275, "275 g/m²", 305.1517, "1.00 oz/ft²"},
	{"J/mm", 300, "300 J/mm", 39.37008, "1.00 kJ/in"},
	{"J/mm3", 8, "8 J/mm³", 0.6102374, "10 kJ/in³"},
	{"m/kg", 189, "189 m/kg", 300 * 0.3048 / 0.4535924, "300 ft/lb"},
	{"mm2", 4, "4.0 mm²", 645.16, "1.0000 in²"},
	{"mm3", 8, "8.0 mm³", 16387.06, "1.00000 in³"},
	{"L/min", 12, "12 L/min", 20 * 7.865791e-6 * 6e4, "20 cfh"},
	{"L", 40, "40 L", 28.31685, "1.0 ft³"},
	{"m3", 5, "5.00 m³", 2.831685, "100 ft³"},
	{"m3/h", 50, "50 m³/h", 4.719474e-4 * 3600 * 100, "100 cfm"},
	{"m3/min", 3, "3 m³/min", 2.831685, "100 cfm"},
	{"C", 100, "100 °C", 100, "212 °F"},
	{"K", 50, "50 K", 50, "90 °F"},
	{"kN", 5, "5.0 kN", 4.448222, "1000 lbf"},
	{"MPa", 350, "350 MPa", 50 * 6.894757, "50 ksi"},
	{"GPa", 206, "206 GPa", 1000 * 6.894757, "1000000 ksi"},
	{"1e-6/K", 14.2, "14.2 10⁻⁶/K", 14.2, "14.2 10⁻⁶/K"},
	{"g", 3, "3.0 g", 28.34952, "1.00 oz"},
	{"kg", 5, "5.0 kg", 4.5359237, "10.0 lb"},
	{"per kg", 12, "12.00 a kg", 2.204623, "1.00 a lb"},
	{"A", 93, "93 A", 93, "93 A"},
	{"V", 15, "15.0 V", 15, "15.0 V"},
	{"s", 2, "2.0 s", 2, "2.0 s"},
	{"min", 2, "2 min", 2, "2 min"},
	{"h", 2, "2.0 h", 2, "2.0 h"},
	{"ms", 2.1, "2.1 ms", 2.1, "2.1 ms"},
	{"deg", 15, "15°", 15, "15°"},
	{"1", 3, "3", 3, "3"},
	{"marks", 4, "4.0 marks", 4, "4.0 marks"},
	{"g/cm3", 8, "8.00 g/cm³", 8, "8.00 g/cm³"},
	{"kg/m3", 2, "2.00 kg/m³", 2, "2.00 kg/m³"},
	{"mg/m3", 5, "5 mg/m³", 5, "5 mg/m³"},
	{"J/mm3K", 0.004, "0.0040 J/mm³K", 0.004, "0.0040 J/mm³K"},
	{"W/m2K", 20, "20 W/m²K", 20, "20 W/m²K"},
	{"ohm mm", 2, "2 Ω·mm", 2, "2 Ω·mm"},
	{"ohm mm/K", 2, "2 Ω·mm/K", 2, "2 Ω·mm/K"},
	{"A2s", 490, "490 A²s", 490, "490 A²s"},
	{"um", 10, "10 µm", 10, "10 µm"},
}

func TestEveryUnitInBothSystems(t *testing.T) {
	listed := map[string]bool{}
	for _, r := range showRows {
		listed[r.unit] = true
		if got := Show(r.v, r.unit, Metric); got != r.text {
			t.Errorf("%g %s shows as %q, want %q", r.v, r.unit, got, r.text)
		}
		if got := Show(r.round, r.unit, Inch); got != r.inchAsText {
			t.Errorf("%g %s shows as %q, want %q", r.round, r.unit, got, r.inchAsText)
		}
	}
	for _, w := range views {
		if !listed[w.unit] {
			t.Errorf("%s has no text to be held to", w.unit)
		}
	}
}

// A shown value is within one part in 500, in no more digits than that takes. 200.4004 differs from 200 by 1/500.5 of
// itself. A percentage has no decimals.
func TestFewestDecimals(t *testing.T) {
	for _, c := range []struct {
		v    float64
		unit string
		want string
	}{
		{200.4004, "A", "200 A"}, {199.6, "A", "199.6 A"}, {1.002, "A", "1 A"}, {1.003, "A", "1.003 A"},
		{0.01234, "A", "0.01234 A"}, {-0.01232, "A", "-0.0123 A"},
		{0.0001, "A", "0.0001 A"}, {0.00010346, "A", "0.0001035 A"}, {0.00012346, "A", "0.0001235 A"},
		{0.0000999, "A", "9.99e-05 A"}, {-0.00001, "A", "-1e-05 A"},
		{9999999, "A", "9999999 A"}, {1e7, "A", "1e+07 A"}, {-12345678, "A", "-1.23e+07 A"},
		{40.4, "%", "40%"}, {0, "V", "0.0 V"},
	} {
		if got := Show(c.v, c.unit, Metric); got != c.want {
			t.Errorf("%g %s shows as %q, want %q", c.v, c.unit, got, c.want)
		}
	}
}

// Two significant figures of the half-width, between none and six decimals; a zero has no minus.
func TestBandAtItsEnds(t *testing.T) {
	for _, c := range []struct {
		v, low, high float64
		value, band  string
	}{
		{5000, 4000, 6000, "5000", "4000–6000"}, {50, 40, 60, "50", "40–60"}, {50, 40.2, 60, "50.0", "40.2–60.0"},
		{5, 4, 6, "5.0", "4.0–6.0"},
		{0.5, 0.4999996, 0.5000004, "0.500000", "0.500000–0.500000"}, {0.003, 0.00299, 0.00301, "0.003000",
			"0.002990–0.003010"},
		{-0.01, -0.04, 40, "0", "0–40"}, {1, math.Inf(-1), math.Inf(1), "1", "-Inf to +Inf"},
	} {
		if value, band := Band(c.v, c.low, c.high, "HV", Metric); value != c.value || band != c.band {
			t.Errorf("%g, %g to %g: %q %q, want %q %q", c.v, c.low, c.high, value, band, c.value, c.band)
		}
	}
}

func TestCount(t *testing.T) {
	for n, want := range map[int]string{0: "0 readings", 1: "1 reading", 2: "2 readings", 12: "12 readings"} {
		if got := Count(n, "reading"); got != want {
			t.Errorf("%d: %q, want %q", n, got, want)
		}
	}
}
