package calc

import (
	"math"
	"testing"
)

// The Halton sequence by its definition: the number's digits in the base, mirrored at the point. 20 is 10100 in base 2, 202 in
// base 3, 40 in base 5, 26 in base 7, 19 in base 11; 83 is 1010011 in base 2 and 10002 in base 3.
func TestDeviatesAreHaltons(t *testing.T) {
	normal := func(u float64) float64 { return math.Sqrt2 * math.Erfinv(2*u-1) }
	first, last := deviates(0), deviates(63)
	for k, u := range []float64{5.0 / 32, 20.0 / 27, 4.0 / 25, 44.0 / 49, 100.0 / 121} {
		if math.Abs(first[k]-normal(u)) > 1e-9 {
			t.Errorf("base %d of the first: %g, want %g", k, first[k], normal(u))
		}
	}
	for k, u := range []float64{101.0 / 128, 163.0 / 243} {
		if math.Abs(last[k]-normal(u)) > 1e-9 {
			t.Errorf("base %d of the last: %g, want %g", k, last[k], normal(u))
		}
	}
}

// Each input leans little over the samples: the mean is small (the high bases have run three rounds only), the spread is one.
func TestDeviatesAreEven(t *testing.T) {
	var sum, squares [chanceInputs]float64
	for i := range chanceSamples {
		for k, z := range deviates(i) {
			sum[k] += z
			squares[k] += z * z
		}
	}
	for k := range sum {
		if mean, spread := sum[k]/chanceSamples, math.Sqrt(squares[k]/chanceSamples); math.Abs(mean) > 0.2 || math.Abs(spread-1) > 0.15 {
			t.Errorf("%s: mean %.3f, spread %.3f", chanceNames[k], mean, spread)
		}
	}
}
