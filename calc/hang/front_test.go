package hang

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"brazebooth/calc/formula"
)

var checkSpot = Spot{Power: 600, K: .038, RhoC: .0056, Thick: 1.5, Width: 1.8, Travel: 6, Start: 20}

// TestFrontCheckValues: check 6 prints 1181.057, 723.872, 1094.771 and 0.7335. The same integral to 20 digits
// gives the values below; the print is off in its fifth digit.
func TestFrontCheckValues(t *testing.T) {
	for at, want := range map[[2]float64]float64{{0, 0}: 1180.967, {1.5, 0}: 723.808, {0, 1}: 1094.694} {
		check(t, fmt.Sprintf("T%v", at), checkSpot.Temperature(at[0], at[1]), want, 0.5e-3)
	}
	x, err := checkSpot.Ahead(970)
	if err != nil {
		t.Fatal(err)
	}
	check(t, "970 C", x, .73323, 0.5e-5)
}

// TestFrontOfALine: a spot far narrower than its spread is Rosenthal's line through the sheet, whose
// temperature is q/(2πkt)·exp(−vx/2a)·K0(vr/2a); K0 to seven digits from printed tables.
func TestFrontOfALine(t *testing.T) {
	s := checkSpot
	s.Width = 0.003
	a := s.K / s.RhoC
	for arg, k0 := range map[float64]float64{0.5: 0.9244191, 1: 0.4210244, 2: 0.1138939} {
		r := arg * 2 * a / s.Travel
		for _, side := range []float64{1, 0, -1} {
			x, y := side*r, math.Sqrt(1-side*side)*r
			want := s.Power / (2 * math.Pi * s.K * s.Thick) * math.Exp(-s.Travel*x/(2*a)) * k0
			check(t, fmt.Sprintf("at %g, %g", x, y), s.Temperature(x, y)-s.Start, want, 1e-5*want)
		}
	}
}

// Temperature is the integral in more steps than Front takes.
func (s *Spot) Temperature(x, y float64) float64 { return s.integrate(x, y, 200) }

// Ahead is an exact Front. It returns ErrRange if the sheet never reaches the temperature.
func (s *Spot) Ahead(temperature float64) (float64, error) {
	if !(s.Power > 0 && s.K > 0 && s.RhoC > 0 && s.Thick > 0 && s.Width > 0 && s.Travel > 0 && temperature > s.Start) ||
		math.IsInf(s.Power+s.K+s.RhoC+s.Thick+s.Width+s.Travel+temperature, 0) {
		return 0, fmt.Errorf("%w: %g C ahead of %+v", formula.ErrRange, temperature, *s)
	}
	low := s.hottest(200, 1e-5)
	if s.Temperature(low, 0) < temperature {
		return 0, fmt.Errorf("%w: %g C is not reached", formula.ErrRange, temperature)
	}
	return zero(func(x float64) float64 { return temperature - s.Temperature(x, 0) }, low, low+60*s.Width), nil
}

func TestFrontOrder(t *testing.T) {
	last := math.Inf(1)
	for c := 300.0; c < 1250; c += 25 {
		x, err := checkSpot.Ahead(c)
		if err != nil {
			t.Fatal(err)
		}
		check(t, "the temperature there", checkSpot.Temperature(x, 0), c, 1e-6)
		if x >= last {
			t.Errorf("%g C at %g mm, a colder one at %g", c, x, last)
		}
		last = x
	}
	faster := checkSpot
	faster.Travel = 9
	a, _ := checkSpot.Ahead(800)
	b, err := faster.Ahead(800)
	if err != nil || b >= a {
		t.Errorf("faster: %g mm ahead, %g slower, %v", b, a, err)
	}
	if x, err := checkSpot.Ahead(3000); !errors.Is(err, formula.ErrRange) {
		t.Errorf("%g, %v", x, err)
	}
	cold := checkSpot
	cold.Power = math.NaN()
	if _, err := cold.Ahead(800); !errors.Is(err, formula.ErrRange) {
		t.Error(err)
	}
}

func BenchmarkAhead(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := checkSpot.Ahead(970); err != nil {
			b.Fatal(err)
		}
	}
}

// The fast front is within a hundredth of the arc's width of the exact one, and continues without a jump where
// the sheet never gets that hot.
func TestFrontQuickly(t *testing.T) {
	for _, thick := range []float64{0.6, 1.5, 3} {
		s := checkSpot
		s.Thick, s.Power = thick, 400*thick
		for c := 200.0; c < 1200; c += 20 {
			if exact, err := s.Ahead(c); err == nil {
				check(t, fmt.Sprintf("%g mm, %g C", thick, c), s.Front(c), exact, 0.02)
			}
		}
		hottest := s.Temperature(s.hottest(200, 1e-5), 0)
		if below, above := s.Front(hottest-0.5), s.Front(hottest+0.5); above > below || below-above > 0.3 {
			t.Errorf("%g mm: front %.3f, past the hottest %.3f", thick, below, above)
		}
	}
}
