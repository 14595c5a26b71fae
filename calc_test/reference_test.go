package calc_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
)

// Reference solutions: published formulas that are written here and nowhere in the program, for tests that
// compare the program's own models with them. They are not counted as checks.

// rosenthal returns the rise (K) about a line source that has always moved, in a sheet that is equally hot
// behind and in front (Rosenthal 1941), xi mm ahead of it and y beside it: power W, travel mm/s, sheet t mm, k
// W/mmK, rhoC J/mm3K, loss of both faces together W/m2K.
func rosenthal(power, travel, t, k, rhoC, loss, xi, y float64) float64 {
	u := travel * rhoC / (2 * k)
	x := math.Hypot(xi, y) * math.Sqrt(u*u+loss*1e-6/(k*t))
	return power / (2 * math.Pi * k * t) * math.Exp(-u*xi-x) * scaledK0(x)
}

// scaledK0 is exp(x)·K0(x) from its integral, Abramowitz and Stegun 9.6.24, by a general-purpose quadrature.
func scaledK0(x float64) float64 {
	return quad.Fixed(func(t float64) float64 { return math.Exp(-x * (math.Cosh(t) - 1)) }, 0, math.Acosh(1+45/x),
		200, nil, 0)
}

// hottest is the highest rise at y mm beside the source's path. It searches along the path, where the rise has
// a single maximum.
func hottest(power, travel, t, k, rhoC, loss, y float64) float64 {
	at := func(behind float64) float64 { return rosenthal(power, travel, t, k, rhoC, loss, -behind, y) }
	near, far := 0.0, 3*(travel*rhoC/(2*k)*y*y+y)
	for range 80 {
		a, b := near+(far-near)/3, far-(far-near)/3
		if at(a) < at(b) {
			near = a
		} else {
			far = b
		}
	}
	return at(near)
}

// The reference itself, with k 0.040 W/mmK, rho c 0.0050 J/mm3K, 20 C: points worked with another library (SciPy).
func TestReferencePoints(t *testing.T) {
	for _, c := range []struct{ q, v, d, xi, y, want float64 }{
		{1000, 8, 1, 0, 2, 1695.203013}, {1000, 8, 1, -5, 2, 2428.391866}, {1000, 8, 1, -20, 0, 1578.253956},
		{1000, 8, 1, 3, 0, 209.818011}, {1500, 12, 1.5, -10, 4, 990.314814}, {1500, 12, 1.5, 0, 3, 354.396918},
	} {
		if got := 20 + rosenthal(c.q, c.v, c.d, 0.040, 0.0050, 0, c.xi, c.y); !(math.Abs(got-c.want) <= 5e-7) {
			t.Errorf("%+v: %.9g", c, got)
		}
	}
}
