package hang

import (
	"errors"
	"math"
	"testing"

	"brazebooth/calc/formula"
)

func TestBar(t *testing.T) {
	b := CopperBar(0)
	check(t, "under the gap", b.Sink(0.4, 1), 0.01, 1e-12)
	check(t, "under the sheet", b.Sink(-3, 1), 0.002, 1e-12)
	b.Groove = 4
	check(t, "over the groove", b.Sink(1.9, 1), 0, 0)
	check(t, "beside the groove", b.Sink(2.1, 1), 0.002, 1e-12)
	check(t, "the arc's gap", Backed(1.8), 3.6, 1e-12)
}

func TestChillOf(t *testing.T) {
	for sheet, want := range map[float64][3]float64{0.8: {100, .49, 2.1}, 1.5: {60, .30, 1.6}, 3: {30, .08, 1.2}} {
		c, err := ChillOf(sheet)
		if err != nil {
			t.Fatal(err)
		}
		check(t, "cooler", c.Cooler.V, want[0], 1e-9)
		check(t, "narrow", c.Narrow.V, want[1], 1e-9)
		check(t, "shrink", c.Shrink.V, want[2], 1e-9)
	}
	between, err := ChillOf(math.Sqrt(0.8 * 1.5)) // halfway in logarithms
	if err != nil {
		t.Fatal(err)
	}
	check(t, "cooler, low end", between.Cooler.Low, 20, 1e-9)
	check(t, "cooler, high end", between.Cooler.High, 200, 1e-9)
	continuous(t, "cooler", func(v float64) float64 { c, _ := ChillOf(v); return c.Cooler.V }, 0.8, 3, 200)
	for _, sheet := range []float64{0.79, 3.01, math.NaN(), -1} {
		if _, err := ChillOf(sheet); !errors.Is(err, formula.ErrRange) {
			t.Errorf("%g: %v", sheet, err)
		}
	}
}
