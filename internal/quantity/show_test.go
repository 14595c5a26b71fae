package quantity

import (
	"flag"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// TestMain fixes the seed of the random tests; another one is tried with -rapid.seed.
func TestMain(m *testing.M) {
	flag.Parse()
	if f := flag.Lookup("rapid.seed"); f != nil && f.Value.String() == f.DefValue {
		_ = f.Value.Set("974")
	}
	os.Exit(m.Run())
}

func TestShow(t *testing.T) {
	for _, c := range []struct {
		v    float64
		unit string
		sys  System
		want string
	}{
		{6.35, "m/min", Metric, "6.35 m/min"}, {6.35, "m/min", Inch, "250 in/min"}, {6.35, "m/min", Both, "6.35 m/min (250 in/min)"},
		{1.6129, "mm", Both, "1.61 mm (.0635 in)"}, {0.889, "mm", Both, "0.89 mm (.035 in)"}, {12, "mm", Metric, "12 mm"},
		{93, "A", Both, "93 A"}, {14.8, "V", Inch, "14.8 V"}, {12, "L/min", Both, "12 L/min (25.4 cfh)"}, {204, "C", Inch, "399 °F"},
		{345, "MPa", Inch, "50 ksi"}, {15, "deg", Metric, "15°"}, {0, "mm", Both, "0 mm (0 in)"}, {3, "furlong", Both, "3 furlong"},
	} {
		if got := Show(c.v, c.unit, c.sys); got != c.want {
			t.Errorf("Show(%g %s, %s) = %q, want %q", c.v, c.unit, c.sys, got, c.want)
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
		{0.213, 0.096, 0.497, "s", Metric, "0.21", "0.10–0.50"},
		{8.66, 6.97, 11.1, "mm", Inch, ".341", ".274–.437"},
	} {
		value, band := Band(c.v, c.low, c.high, c.unit, c.sys)
		if value != c.value || band != c.band {
			t.Errorf("Band(%g, %g, %g %s) = %q %q, want %q %q", c.v, c.low, c.high, c.unit, value, band, c.value, c.band)
		}
	}
}

// What is shown can be typed back, to the digits shown.
func TestShownCanBeTypedBack(t *testing.T) {
	parsers := map[string]struct {
		unit      string
		scale     float64 // base unit of the parser over the card's unit
		low, high float64
		zero      float64 // what a part in 500 counts from
	}{
		"feed": {"m/min", 1000.0 / 60, 0.4, 39, 0}, "travel": {"mm/s", 1, 0.4, 59, 0}, "length": {"mm", 1, 0.1, 1e4, 0}, "flow": {"L/min", 1, 1.1, 59, 0},
		"stress": {"MPa", 1, 1, 4900, 0}, "force": {"kN", 1, 0.1, 9000, 0}, "mass": {"kg", 1, 0.1, 9e4, 0}, "temperature": {"C", 1, 1, 1400, 32 / 1.8}, "current": {"A", 1, 6, 590, 0},
	}
	for name, p := range parsers {
		parse := everyParser[name]
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

// Case and blanks mean nothing.
func TestCaseAndBlanksMeanNothing(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		v := rapid.Float64Range(1, 30).Draw(r, "v")
		unit := rapid.SampledFrom([]string{"m/min", "mm/s", "ipm", "in/min"}).Draw(r, "unit")
		n := strconv.FormatFloat(v, 'f', 3, 64)
		plainly, err1 := ParseTravel(n + unit)
		loosely, err2 := ParseTravel("  " + n + "  " + strings.ToUpper(unit) + " ")
		if plainly != loosely || (err1 == nil) != (err2 == nil) {
			r.Fatalf("%s%s: %g %v, loosely %g %v", n, unit, plainly, err1, loosely, err2)
		}
	})
}

func BenchmarkParseSize(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := ParseSize("16ga"); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkBand(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		Band(96.53, 82.9, 111.8, "A", Metric)
	}
}
