package limit

import (
	"math"
	"testing"
)

// The end of a range against a known limit: straight, bent, never missed, missed at once, and missed over a stretch
// before it is met again.
func TestLastMetByHand(t *testing.T) {
	edge := func(at, bend float64) func(float64) float64 {
		return func(x float64) float64 { d := math.Log(at / x); return d + bend*d*d*d }
	}
	dip := func(low, high, most float64) func(float64) float64 { // missed between, and met again beyond
		return func(x float64) float64 { return min(most, 5*math.Log(low/x)*math.Log(high/x)) }
	}
	for _, x := range []struct {
		what             string
		from, most, want float64
		worst            func(float64) float64
	}{
		{"straight", 2, 8, 4, edge(4, 0)}, {"bent", 2, 8, 4, edge(4, 30)}, {"no edge", 2, 8, 8, edge(100, 0)},
		{"on the edge", 2, 8, 2, edge(2, 0)},
		{"outside", 2, 8, 2, edge(1.5, 0)}, {"nowhere to go", 8, 8, 8, edge(100, 0)},
		{"no answer beyond", 2, 8, 4, func(x float64) float64 {
			if x > 4.2 {
				return -Far
			}
			return math.Log(4 / x)
		}},
		{"no number beyond", 2, 8, 4, func(x float64) float64 {
			if x > 4 {
				return math.NaN()
			}
			return math.Log(4 / x)
		}},
		{"a dip far out", 2, 8, 4, dip(4, 5, 0.3)}, {"a short dip near by", 2, 8, 2.1, dip(2.1, 2.2, 0.01)},
		{"toward less", 8, 2, 5, dip(4, 5, 0.3)},
		{"no number at all", 2, 8, 2, func(float64) float64 { return math.NaN() }},
	} {
		got := LastMet(x.from, x.worst(x.from), x.most, x.worst)
		short := math.Log(x.want / got)
		if x.most < x.from {
			short = -short
		}
		if short < -1e-9 || short > 0.03 {
			t.Errorf("%s: %g, by hand %g", x.what, got, x.want)
		}
	}
}
