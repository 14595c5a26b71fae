package quantity

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"brazebooth/internal/deep"
)

func TestMain(m *testing.M) { deep.Main(m, 100) }

func TestShow(t *testing.T) {
	for _, c := range []struct {
		v    float64
		unit string
		sys  System
		want string
	}{
		{6.35, "m/min", Metric, "6.35 m/min"}, {6.35, "m/min", Inch, "250 in/min"},
		{6.35, "m/min", Both, "6.35 m/min (250 in/min)"},
		{1.6129, "mm", Both, "1.61 mm (.0635 in)"}, {0.889, "mm", Both, "0.89 mm (.035 in)"}, {12, "mm", Metric,
			"12 mm"},
		{93, "A", Both, "93 A"}, {14.8, "V", Inch, "14.8 V"}, {12, "L/min", Both, "12 L/min (25.4 cfh)"},
		{204, "C", Inch, "399 °F"},
		{345, "MPa", Inch, "50 ksi"}, {15, "deg", Metric, "15°"}, {0, "mm", Both, "0 mm (0 in)"},
		{3, "furlong", Both, "3 furlong"},
		{6.65e-06, "mm", Metric, "0.0 mm"}, {-6.65e-06, "mm", Metric, "0.0 mm"}, {6.65e-06, "mm", Inch, ".0 in"},
		{0.002, "mm", Metric, "0.002 mm"},
	} {
		if got := Show(c.v, c.unit, c.sys); got != c.want {
			t.Errorf("Show(%g %s, %s) = %q, want %q", c.v, c.unit, c.sys, got, c.want)
		}
	}
}

// A long time is counted in minutes, then in hours, and a part of an hour in minutes.
func TestCounted(t *testing.T) {
	for _, c := range []struct {
		v    float64
		unit string
		want string
	}{
		{179, "s", "179.0 s"}, {180, "s", "3 min"}, {1214, "s", "20.2 min"}, {7200, "s", "2.0 h"},
		{0.029, "h", "1.74 min"},
		{2, "h", "2.0 h"}, {0, "h", "0.0 h"}, {500, "A", "500 A"},
	} {
		each, unit := Counted(c.v, c.unit)
		if got := Show(c.v*each, unit, Metric); got != c.want {
			t.Errorf("%g %s: %q, want %q", c.v, c.unit, got, c.want)
		}
	}
}

func TestBand(t *testing.T) {
	for _, c := range []struct {
		v, low, high float64
		unit         string
		sys          System
		value, band  string
	}{
		{96.53, 82.9, 111.8, "A", Metric, "97", "83–112"},
		{15.25, 13.93, 16.6, "V", Metric, "15.2", "13.9–16.6"},
		{6.35, 6.35, 6.35, "m/min", Inch, "250", "250–250"},
		{60.7, 54.7, 66.7, "%", Metric, "61", "55–67"}, // the same as the sentence beside it
		{1.039, 0.989, 1.089, "mm", Metric, "1.04", "0.99–1.09"}, {1.039, 1.037, 1.041, "mm", Metric, "1.0390",
			"1.0370–1.0410"},
		{0.213, 0.096, 0.497, "s", Metric, "0.21", "0.10–0.50"},
		{8.66, 6.97, 11.1, "mm", Inch, ".341", ".274–.437"},
		{6.65e-06, 9.43e-08, 0.00021, "mm", Metric, "0.0", "0.0–0.001"}, {6.65e-06, 9.43e-08, 0.00021, "mm", Inch, ".0",
			".0–.0001"},
		{0, 0, 0, "mm", Metric, "0", "0–0"}, {0.010, 0.001, 0.050, "mm", Metric, "0.010", "0.001–0.050"},
		{2e-5, 1e-5, 0.02, "mm", Metric, "0.0", "0.0–0.0200"},
		{-270, -280, -260, "mm", Inch, "-10.63", "-11.02 to -10.24"}, {-5.08, -6.1, -4.1, "mm", Inch, "-.200",
			"-.240 to -.161"},
		{1.039, 0.989, 1.089, "mm", Metric, "1.04", "0.99–1.09"},
		{1.039, 0.989, 1.089, "mm", Inch, ".041", ".039–.043"},
		{0.026, 0.017, 0.1, "mm", Metric, "0.03", "0.02–0.10"}, {9.83, 9.2, 10.49, "mm2", Metric, "9.8", "9.2–10.5"},
		{9.83, 9.2, 10.49, "mm2", Inch, "0.0152", "0.0143–0.0163"}, {15.87, 15.36, 16.39, "mm3", Metric, "15.9",
			"15.4–16.4"},
		{5.29, 5, 5.6, "g/m", Metric, "5.3", "5.0–5.6"}, {59.2, 53.2, 65.2, "%", Metric, "59", "53–65"},
	} {
		value, band := Band(c.v, c.low, c.high, c.unit, c.sys)
		if value != c.value || band != c.band {
			t.Errorf("Band(%g, %g, %g %s) = %q %q, want %q %q", c.v, c.low, c.high, c.unit, value, band, c.value,
				c.band)
		}
	}
}

// When both systems are shown, the inches are converted from the metric number as printed.
func TestBothAgree(t *testing.T) {
	for mm := 1000.0; mm < 15000; mm += 37 {
		text := ShowDialed("wire_feed", mm/1000, "m/min", Both)
		var metric, inches float64
		if _, err := fmt.Sscanf(text, "%g m/min (%g in/min)", &metric, &inches); err != nil {
			t.Fatal(text, err)
		}
		if want := metric * 1000 / 25.4; math.Abs(inches-want) > 0.5001 {
			t.Errorf("%s, but the metric number is %.1f in/min", text, want)
		}
	}
}

// Every shown value can be typed back, to the digits shown.
func TestShownCanBeTypedBack(t *testing.T) {
	ranges := map[string]struct {
		unit      string
		scale     float64 // base unit of the parser over the card's unit
		low, high float64
		zero      float64 // the parts in 500 are counted from here
	}{
		"feed": {"m/min", 1000.0 / 60, 0.4, 39, 0}, "travel": {"mm/s", 1, 0.4, 59, 0}, "length": {"mm", 1, 0.1, 1e4, 0},
		"flow":  {"L/min", 1, 1.1, 59, 0},
		"force": {"kN", 1, 0.1, 9000, 0}, "temperature": {"C", 1, 1, 1400, 32 / 1.8}, "current": {"A", 1, 6, 590, 0},
	}
	for name, p := range ranges {
		parse := parsers[name].parse
		rapid.Check(t, func(r *rapid.T) {
			v := rapid.Float64Range(p.low, p.high).Draw(r, name)
			sys := rapid.SampledFrom([]System{Metric, Inch}).Draw(r, "system")
			shown := Show(v, p.unit, sys)
			back, err := parse(strings.ReplaceAll(shown, " a ", ""))
			if err != nil {
				r.Fatalf("%s: %q cannot be typed back: %v", name, shown, err)
			}
			if got := back / p.scale; math.Abs(got-v) > math.Abs(v+p.zero)/400 {
				r.Fatalf("%s: %g shows as %q and comes back as %g", name, v, shown, got)
			}
		})
	}
}

// The seconds for 100 mm or for 4 in, as a welder counts them, can be typed back.
func TestSecondsAlong(t *testing.T) {
	for text, want := range map[string]float64{"12.5s/100mm": 8, "12.7s/4in": 8} {
		if v, err := Read(FieldTravel, text); err != nil || math.Abs(float64(v)-want) > 1e-12 {
			t.Errorf("%q: %g, %v", text, v, err)
		}
	}
}

// A value and its band have the same number of decimals, and each is within half a step of its printed number.
func TestBandDecimals(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		unit := rapid.SampledFrom([]string{"m/min", "mm/s", "A", "V", "mm", "C", "g/min", "J/mm", "mm2", "L/min",
			"s"}).Draw(r, "unit")
		sys := rapid.SampledFrom([]System{Metric, Inch}).Draw(r, "system")
		v := rapid.Float64Range(0.5, 900).Draw(r, "value")
		down, up := rapid.Float64Range(0.001, 0.6).Draw(r, "down"), rapid.Float64Range(0.001, 0.6).Draw(r, "up")
		value, band := Band(v, v*(1-down), v*(1+up), unit, sys)
		low, high, _ := strings.Cut(band, "–")
		if decimals(value) != decimals(low) || decimals(low) != decimals(high) {
			r.Fatalf("%q %q: digits differ", value, band)
		}
		for text, x := range map[string]float64{value: v, low: v * (1 - down), high: v * (1 + up)} {
			want, _ := Convert(x, unit, sys)
			got, err := strconv.ParseFloat(text, 64)
			if step := math.Pow(10, -float64(decimals(text))); err != nil || math.Abs(got-want) > step*0.5000001 {
				r.Fatalf("%g %s shows as %q", want, unit, text)
			}
		}
	})
}

func decimals(s string) int {
	_, after, _ := strings.Cut(s, ".")
	return len(after)
}

// No parser minds upper case, lower case or blanks.
func TestCaseAndBlanksMeanNothing(t *testing.T) {
	typed := map[string][]string{ // "|" parts number and unit: blanks may only stand between them
		"size": {"16|ga", "18|gauge", ".06|in", "1-1/4|inch"}, "wire": {".035|in", "0.9|mm", "3/32|\""},
		"gap": {"1/16|in", "1.5|mm"}, "stickout": {"1/2|in", "12|mm"},
		"length": {"1.5|m", "2|ft", "30|cm"}, "offset": {"-1|mm", "1/32|in"}, "feed": {"250|ipm", "250|in/min",
			"6.3|m/min", "105|mm/s"}, "travel": {"14|ipm", "16s|/100mm", "8|mm/s"},
		"current": {"93|A", "93|amps"}, "voltage": {"14.8|V"}, "temperature": {"200|F", "95|°C", "-4|°F"},
		"flow":  {"25|cfh", "12|L/min", "1|m³/h"},
		"force": {"500|lbf", "5|kN"}, "duration": {"400|ms", "2|min"}, "price": {"$12|/lb", "25|EUR/kg"},
		"gas price": {"8|EUR/m3", "$0.25|/ft³"}, "rate": {"45|/h", "$45|/hour"}, "per length": {"3|min/m"},
		"mass": {"2|kg", "5|lb"}, "percent": {"40|%"}, "number": {"12|"},
		"count": {"12|"},
	}
	for name, p := range parsers {
		rapid.Check(t, func(r *rapid.T) {
			number, unit, _ := strings.Cut(rapid.SampledFrom(typed[name]).Draw(r, "typed"), "|")
			plainly, err := p.parse(number + unit)
			blank := rapid.SampledFrom([]string{"", " ", "  ", "\t", "\u00a0", "\u202f"})
			cased := rapid.SampledFrom([]func(string) string{strings.ToLower, strings.ToUpper,
				strings.ToTitle}).Draw(r, "case")
			loose := blank.Draw(r, "before") + number + blank.Draw(r, "between") + cased(unit) + blank.Draw(r, "after")
			got, err2 := p.parse(loose)
			if err != nil || err2 != nil || got != plainly {
				r.Fatalf("%s: %q is %g (%v), %q is %g (%v)", name, number+unit, plainly, err, loose, got, err2)
			}
		})
	}
}

func BenchmarkParseSize(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := ParseSize("16ga"); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkParseFeed(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Read(FieldFeed, "6.3 m/min"); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkRefuse(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Read(FieldWire, "400mm"); err == nil {
			b.Fatal("taken")
		}
	}
}

func BenchmarkShow(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		Show(6.35, "m/min", Both)
	}
}

func BenchmarkBand(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		Band(96.53, 82.9, 111.8, "A", Metric)
	}
}

func TestIntervalKeepsMinusSignsApart(t *testing.T) {
	for _, c := range [][3]string{{"3.4", "5.0", "3.4–5.0"}, {"-70", "41", "-70 to 41"}, {"-74", "-36", "-74 to -36"},
		{"0", "6", "0–6"}} {
		if got := Interval(c[0], c[1]); got != c[2] {
			t.Errorf("%s and %s: %q, want %q", c[0], c[1], got, c[2])
		}
	}
}
