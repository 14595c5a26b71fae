package calc_test

import (
	"math"
	"testing"

	"brazebooth/calc/formula"
)

// Incropera and DeWitt, Fundamentals of Heat and Mass Transfer (memory high): lumped capacitance, ch. 5, and the fin
// with an insulated tip, Table 3.4.

// Example 5.1, thermocouple junction: h 400 W/m2K, c 400 J/kgK, density 8500 kg/m3, a sphere of 0.706 mm, from
// 25 to 199 C in gas of 200 C: 5.2 s as printed. In the book the sphere is heated; here it cools by as much,
// with the same exponential. 0.1 s, not 0.05, because of the time step's own error.
func TestLumpedExample(t *testing.T) {
	b := formula.Bar{Half: 0.1, K: 0.02, RhoC: 8500 * 400e-9, Area: 1, Surface: 6 / 0.706, Film: 400, Air: 200}
	if err := b.Start(375); err != nil {
		t.Fatal(err)
	}
	hold, err := b.Hold(201)
	if err != nil {
		t.Fatal(err)
	}
	check(t, "junction, s", hold, 5.2, 0.1)
}

// Newton's cooling, eq. 5.6: ln(θi/θ)·ρcV/hA. A plate of 10 mm from 300 to 150 C in air of 20 C at 8 W/m2K.
func TestLumpedCooling(t *testing.T) {
	b := formula.Bar{Half: 50, K: 0.04, RhoC: 0.0052, Area: 1000, Surface: 2.0 / 10, Film: 8, Air: 20}
	if err := b.Start(300); err != nil {
		t.Fatal(err)
	}
	hold, err := b.Hold(150)
	if err != nil {
		t.Fatal(err)
	}
	want := math.Log(280.0/130) * 0.0052 / (8e-6 * 0.2) // 2493.6 s
	check(t, "exponential, s", hold, want, 0.005*want)
}

// Radiation alone to surroundings at absolute zero, eq. 5.19: t = ρcV/(3εAσ)·(1/T³ − 1/Ti³). A shaft of 40 mm at
// emissivity 0.8 from 1000 K to 600 K.
func TestRadiationCooling(t *testing.T) {
	const sigma = 5.670374419e-14 // W/mm2K4
	b := formula.Bar{Half: 50, K: 0.04, RhoC: 0.0052, Area: 1256.6, Surface: 4.0 / 40, Emissivity: 0.8, Air: -273.15}
	if err := b.Start(1000 - 273.15); err != nil {
		t.Fatal(err)
	}
	hold, err := b.Hold(600 - 273.15)
	if err != nil {
		t.Fatal(err)
	}
	want := 0.0052 / (3 * 0.8 * 0.1 * sigma) * (1/math.Pow(600, 3) - 1/math.Pow(1000, 3)) // 1387 s
	check(t, "s", hold, want, 0.01*want)
}

// The fin with an insulated tip, Table 3.4 case B: θb = q/(√(hPkA)·tanh(mL)). A shaft of 20 mm with a constant
// 6 W over a short collar, 8 W/m2K; the collar's own skin is added to the fins'.
func TestFinAtRest(t *testing.T) {
	const d, k, h, length, collar = 20.0, 0.04, 8e-6, 120.0, 4.0
	area := math.Pi / 4 * d * d
	b := formula.Bar{Half: collar / 2, Beyond: length, K: k, RhoC: 0.0052, Area: area, Surface: 4 / d, Film: 8, Air: 20}
	if err := b.Start(20); err != nil {
		t.Fatal(err)
	}
	b.Run(60000, 6, 1e9)
	m := math.Sqrt(h * 4 / d / k)
	fins := 2 * k * area * m * math.Tanh(m*length)
	skin := h * math.Pi * d * collar
	check(t, "rise of the collar, K", b.Mean()-20, 6/(fins+skin), 0.01*6/(fins+skin))
}
