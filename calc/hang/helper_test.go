package hang

import (
	"math"
	"testing"
)

// check compares a value with one as printed.
func check(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: %.6g, want %g within %g", what, got, want, tolerance)
	}
}

// between checks a bound.
func between(t *testing.T, what string, got, low, high float64) {
	t.Helper()
	if !(got >= low && got <= high) {
		t.Errorf("%s: %.7g is not between %.7g and %.7g", what, got, low, high)
	}
}
