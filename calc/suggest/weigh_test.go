package suggest

import (
	"fmt"
	"math"
	"testing"

	"brazebooth/tables"
)

func check(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: %.8g, want %g within %g", what, got, want, tolerance)
	}
}

const heatDoubt = 0.125 // of the heat, from arc efficiency, volts and current, as in usual jobs

func TestLnPhi(t *testing.T) {
	// Values of the normal distribution from printed tables; the last two from 30-digit arithmetic.
	for x, want := range map[float64]float64{0: math.Log(0.5), 1: math.Log(0.8413447461), -2: math.Log(0.0227501319),
		-5: math.Log(2.866515719e-7), -29: -424.787420, -40: -804.608442} {
		check(t, fmt.Sprintf("ln Φ(%g)", x), lnPhi(x), want, 1e-6)
	}
	check(t, "where the series takes over", lnPhi(-30+1e-12)-lnPhi(-30-1e-12), 0, 1e-7)
	last := math.Inf(-1)
	for x := -200.0; x < 8; x += 0.01 {
		v := lnPhi(x)
		if !(v > last) || v > 0 {
			t.Fatalf("ln Φ(%g) = %g after %g", x, v, last)
		}
		last = v
	}
}

// TestThreeHeatsAreEnough compares the three heats with a fine sum over all heats.
func TestThreeHeatsAreEnough(t *testing.T) {
	doubts := []float64{tables.WetsDoubt.V, tables.SolidDoubt.V}
	for cold := -0.2; cold < 0.5; cold += 0.1 {
		for hot := -0.1; hot < 0.5; hot += 0.1 {
			at := func(z float64) []float64 { // warmer: wets better, stays solid less
				return []float64{cold + z*heatDoubt, hot - z*heatDoubt}
			}
			var three [3][]float64
			for k := range heats {
				three[k] = at(heats[k].z)
			}
			sum, all := 0.0, 0.0
			for z := -6.0; z <= 6; z += 0.01 {
				w := math.Exp(-z * z / 2)
				m := at(z)
				sum, all = sum+w*math.Exp(lnPhi(m[0]/doubts[0])+lnPhi(m[1]/doubts[1])), all+w
			}
			// Up to 6.1 points off, where an edge is steeper than the three heats can show.
			check(t, fmt.Sprintf("cold %.1f, hot %.1f", cold, hot), math.Exp(LogChance(three, doubts)), sum/all, 0.062)
		}
	}
	sum := 0.0
	for _, h := range heats {
		sum += h.weight
	}
	check(t, "weights", sum, 1, 1e-12)
	check(t, "variance", heats[0].weight*3+heats[2].weight*3, 1, 1e-12)
	check(t, "fourth moment", heats[0].weight*9+heats[2].weight*9, 3, 1e-12)
}

func TestHand(t *testing.T) {
	r := Range{4, 14}
	_, off := r.hand(math.Sqrt(4 * 14))
	check(t, "the middle", off, 0, 1e-12)
	for _, v := range []float64{4, 14} {
		chance, off := r.hand(v)
		check(t, "at an end", off, 1, 1e-12)
		check(t, "even odds at an end", chance, math.Log(0.5), 1e-9)
	}
}

func TestLine(t *testing.T) {
	l := line{0, 1, 4, 4, 2, 5}
	for i, v := range l {
		check(t, "through its points", l.at(float64(i)), v, 1e-12)
	}
	straight := line{1, 3, 5, 7}
	for x := 0.0; x <= 3; x += 0.1 {
		check(t, "straight", straight.at(x), 1+2*x, 1e-12)
	}
	for x := 0.0; x <= 5; x += 0.01 { // it stays between its neighbouring points
		i := min(4, int(x))
		if v := l.at(x); v < min(l[i], l[i+1])-1e-12 || v > max(l[i], l[i+1])+1e-12 {
			t.Errorf("%g at %g", v, x)
		}
	}
	check(t, "one point", line{7}.at(0), 7, 0)
}

func TestMean(t *testing.T) {
	var x, v []float64
	for i := range 201 {
		x = append(x, float64(i)/100-1)
		v = append(v, -(x[i]-0.2)*(x[i]-0.2))
	}
	check(t, "of one hill: its top", mean(x, v, 0.01), 0.2, 1e-9)
	check(t, "of a plain: its middle", mean(x, make([]float64, 201), 0.04), 0, 1e-12)
}
