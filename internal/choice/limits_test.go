package choice

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/mistake"
	"brazebooth/internal/quantity"
)

// typed is a number in a choice's unit in a form that can be typed.
func typed(c *Choice, v float64) string {
	unit := map[string]string{"1": "", "per kg": "/kg", "per m3": "/m3", "per hour": "/h"}
	u, ok := unit[c.Unit]
	if !ok {
		u = c.Unit
	}
	return strconv.FormatFloat(v, 'f', -1, 64) + u
}

// A choice accepts exactly the range that a job accepts, also when a value of its list is typed. With two limits for
// one number a user would be told first one and then the other.
func TestOneRangeForEachNumber(t *testing.T) {
	for _, c := range all {
		if c.Unit == "" {
			continue
		}
		low, high, unit, ok := calc.Span(c.Field())
		if !ok || unit != c.Unit && c.Unit != "1" {
			t.Errorf("%s in %q: a job has it from %g to %g %q", c.Name, c.Unit, low, high, unit)
		}
		beyond := (high - low) * 1e-3
		for v, in := range map[float64]bool{low: true, high: true, math.Round((low + high) / 2): true,
			low - beyond: false, high + beyond: false} {
			var j calc.Job
			text := typed(c, v)
			if err := c.Set(&j, text); (err == nil) != in {
				t.Errorf("%s %s: %v, want it taken: %v", c.Name, text, err, in)
			}
			if c.Typed == nil {
				continue
			}
			if _, err := c.Typed(&Present{}, text); (err == nil) != in {
				t.Errorf("%s %s as a row: %v, want it taken: %v", c.Name, text, err, in)
			}
		}
	}
}

// The limits that an error names are accepted when they are typed, in every system of units, and are close to the true
// limits.
func TestNamedLimitsAreTaken(t *testing.T) {
	names := regexp.MustCompile(`from (\S+) to (\S+?)(%| (\S+))?( \(.*\))?$`)
	for _, c := range all {
		if c.Unit == "" || c.Kind.IsPrice() {
			continue
		}
		low, high, _, _ := calc.Span(c.Field())
		var j calc.Job
		e := mistake.Of(c.Set(&j, typed(c, high+(high-low)*1e-3)))
		for _, sys := range []quantity.System{quantity.Metric, quantity.Inch} {
			hint := quantity.Sentence(e.Hint, sys)
			m := names.FindStringSubmatch(hint)
			if m == nil {
				t.Errorf("%s names no limits: %s", c.Name, hint)
				continue
			}
			for k, limit := range []float64{low, high} {
				text := m[1+k] + strings.TrimPrefix(m[4], "°")
				if err := c.Set(&j, text); err != nil {
					t.Errorf("%s is told %s: %v", c.Name, text, err)
				}
				span := math.Max(math.Abs(limit), math.Abs(high)/100)
				if v := c.At(&j).V; c.Unit != "C" && math.Abs(v-limit) > 0.0201*span {
					t.Errorf("%s is told %s, which is %g and far from %g", c.Name, text, v, limit)
				}
			}
		}
	}
}
