package formula

import (
	"errors"
	"math"
	"reflect"
	"testing"
)

// guarded lists formulas with the range of each argument: p is above zero and finite, q above zero, n zero or
// more and finite, z zero or more, a dash any number.
var guarded = []struct {
	name  string
	f     any
	takes string
	args  []float64
}{
	{"CurrentFromFeed", CurrentFromFeed, "ppppnpn", []float64{0.9, 100, 8.5, 600, 3e-4, 4, 12}},
	{"FeedFromCurrent", FeedFromCurrent, "ppppnpn", []float64{0.9, 90, 8.5, 600, 3e-4, 4, 12}},
	{"MovingHalfWidth", MovingHalfWidth, "pppppnp", []float64{100, 8, 1.2, 0.004, 0.045, 30, 400}},
	{"BeadArea", BeadArea, "pppp", []float64{0.9, 100, 0.95, 8}},
	{"DutyAt", DutyAt, "ppp", []float64{150, 100, 60}},
	{"GasVolume", GasVolume, "qz", []float64{12, 60}},
	{"GasReynolds", GasReynolds, "pppp", []float64{12, 15, 1.66, 2.2e-5}},
	{"LaminarFlow", LaminarFlow, "ppp-", []float64{15, 1.66, 2.2e-5, 2300}},
	{"ArcEnergy", ArcEnergy, "ppp", []float64{15, 90, 8}},
	{"SoakThrough", SoakThrough, "ppp", []float64{12, 0.04, 0.0043}},
	{"SeamStart", SeamStart, "ppp", []float64{8, 0.35, 0.0038}},
	{"PulseFrequency", PulseFrequency, "ppp", []float64{0.9, 100, 0.9}},
	{"ShaftSpeed", ShaftSpeed, "pp", []float64{6, 40}},
}

// answer calls a formula and returns its numbers and its error.
func answer(f any, args []float64) (numbers []float64, err error) {
	in := make([]reflect.Value, len(args))
	for i, v := range args {
		in[i] = reflect.ValueOf(v)
	}
	out := reflect.ValueOf(f).Call(in)
	for _, v := range out[:len(out)-1] {
		numbers = append(numbers, v.Float())
	}
	err, _ = out[len(out)-1].Interface().(error)
	return numbers, err
}

// A formula outside its range returns ErrRange and no number to compute with.
func TestFormulasRefuseOutsideTheirRange(t *testing.T) {
	bad := map[byte][]float64{'p': {0, -1, math.NaN(), math.Inf(1)}, 'q': {0, -1, math.NaN()}, 'n': {-1, math.NaN(),
		math.Inf(1)}, 'z': {-1, math.NaN()}}
	for _, g := range guarded {
		numbers, err := answer(g.f, g.args)
		for _, v := range numbers {
			if err != nil || !(v > 0) || math.IsInf(v, 1) {
				t.Errorf("%s%v = %v, %v", g.name, g.args, numbers, err)
			}
		}
		for i := range g.takes {
			for _, v := range bad[g.takes[i]] {
				args := append([]float64{}, g.args...)
				args[i] = v
				refused(t, g.name, g.f, args)
			}
			if g.takes[i] == 'n' || g.takes[i] == 'z' {
				args := append([]float64{}, g.args...)
				args[i] = 0
				if _, err := answer(g.f, args); err != nil {
					t.Errorf("%s%v: %v", g.name, args, err)
				}
			}
		}
	}
}

func refused(t *testing.T, name string, f any, args []float64) {
	t.Helper()
	numbers, err := answer(f, args)
	if !errors.Is(err, ErrRange) {
		t.Errorf("%s%v = %v, %v; want it out of range", name, args, numbers, err)
	}
	for _, v := range numbers {
		if v != 0 {
			t.Errorf("%s%v gives %g beside %v", name, args, v, err)
		}
	}
}

// Ranges that depend on two arguments, or have two ends.
func TestRangesOfSeveralArguments(t *testing.T) {
	for _, c := range []struct {
		name string
		f    any
		args []float64
	}{
		{"EffectiveAmps", EffectiveAmps, []float64{100, -0.01}}, {"EffectiveAmps", EffectiveAmps, []float64{100, 1.01}},
		{"DipFloor", DipFloor, []float64{0.39}}, {"DipFloor", DipFloor, []float64{3.21}}, {"SprayTransition",
			SprayTransition, []float64{0.39}}, {"SprayTransition", SprayTransition, []float64{3.21}},
	} {
		refused(t, c.name, c.f, c.args)
	}
	for _, sample := range [][]float64{nil, {1}, {1, 0}, {1, -2}, {math.NaN(), 1}} {
		if a, b, c, err := Predictive(sample); !errors.Is(err, ErrRange) || a != 0 || b != 0 || c != 0 {
			t.Errorf("Predictive(%v) = %g, %g, %g, %v", sample, a, b, c, err)
		}
	}
	for _, d := range []float64{0.4, 3.2} {
		if _, err := DipFloor(d); err != nil {
			t.Error(err)
		}
	}
	for _, duty := range []float64{0, 1} {
		if v, err := EffectiveAmps(100, duty); err != nil || v != 100*duty {
			t.Errorf("%g, %v", v, err)
		}
	}
}

// besselK returns for every argument, and positive numbers for every finite one.
func TestBesselEnds(t *testing.T) {
	for _, x := range []float64{math.NaN(), math.Inf(1), 1e300, 1e-300, 700, 1e-16} {
		k0, k1 := besselK(x)
		if number := !math.IsNaN(x) && !math.IsInf(x, 0) && x < 1e100; number && !(k0 > 0 && k1 > 0) {
			t.Errorf("%g: %g, %g", x, k0, k1)
		}
	}
}
