package hang

import (
	"math"
	"testing"
)

func TestZero(t *testing.T) {
	for _, c := range []struct {
		name       string
		f          func(float64) float64
		low, high  float64
		want, most float64
	}{
		{"line", func(x float64) float64 { return 3*x - 1 }, -5, 9, 1.0 / 3, 1e-13},
		{"upright", func(x float64) float64 { return math.Cbrt(x - 0.3) }, -1, 50, 0.3, 1e-12},
		// limited by values of 1e-15
		{"flat", func(x float64) float64 { return math.Pow(x-0.3, 5) }, -1, 50, 0.3, 1e-3},
		{"pole", func(x float64) float64 { return 1e-6/(1-x) - 0.1 }, 0, 1 - 1e-12, 1 - 1e-5, 1e-12},
		{"nothing below", func(x float64) float64 { return x + 1 }, 0, 1, 0, 0},
		{"nothing above", func(x float64) float64 { return x - 2 }, 0, 1, 1, 0},
	} {
		calls := 0
		got := zero(func(x float64) float64 { calls++; return c.f(x) }, c.low, c.high)
		check(t, c.name, got, c.want, c.most)
		if calls > 95 {
			t.Errorf("%s: %d calls", c.name, calls)
		}
	}
}
