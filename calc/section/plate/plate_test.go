package plate

import (
	"math"
	"testing"
)

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: %.9g, want %.9g ± %.2g", what, got, want, tolerance)
	}
}

// A source at rest on a half-space: q/(kσ√(8π)) at its centre.
func TestStandingSource(t *testing.T) {
	near(t, "centre", Moving(1e-6, math.Inf(1), 0, 0, Front), 1/math.Sqrt(8*math.Pi), 1e-6)
}
