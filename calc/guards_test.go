package calc

import (
	"errors"
	"math"
	"reflect"
	"testing"
)

// guarded are the formulas with arguments that each takes, and what each argument may be: p above zero and finite, q above
// zero, n zero or more and finite, z zero or more, a stroke anything.
var guarded = []struct {
	name  string
	f     any
	takes string
	args  []float64
}{
	{"CurrentFromFeed", CurrentFromFeed, "ppppnpn", []float64{0.9, 100, 8.5, 600, 3e-4, 4, 12}},
	{"FeedFromCurrent", FeedFromCurrent, "ppppnpn", []float64{0.9, 90, 8.5, 600, 3e-4, 4, 12}},
	{"FastPeak", FastPeak, "ppppnp", []float64{100, 1.2, 0.004, 0.045, 30, 3}},
	{"FastHalfWidth", FastHalfWidth, "ppppnp", []float64{100, 1.2, 0.004, 0.045, 30, 400}},
	{"MovingHalfWidth", MovingHalfWidth, "pppppnp", []float64{100, 8, 1.2, 0.004, 0.045, 30, 400}},
	{"ThinPeak", ThinPeak, "pppppp", []float64{900, 8, 1.2, 0.045, 0.004, 3}},
	{"AdamsPeak", AdamsPeak, "ppp--z", []float64{100, 1.2, 0.004, 1500, 20, 3}},
	{"AdamsDistance", AdamsDistance, "ppp---", []float64{100, 1.2, 0.004, 1500, 20, 900}},
	{"AdamsCorrection", AdamsCorrection, "p", []float64{2}},
	{"BeadArea", BeadArea, "pppp", []float64{0.9, 100, 0.95, 8}},
	{"CoolingRateThin", CoolingRateThin, "p-p---", []float64{100, 1.2, 0.045, 0.004, 20, 700}},
	{"CoolingRateThick", CoolingRateThick, "pp--", []float64{100, 0.045, 20, 700}},
	{"RelativeThickness", RelativeThickness, "p-p--", []float64{100, 1.2, 0.004, 20, 700}},
	{"SolidificationTime", SolidificationTime, "p-p---", []float64{100, 2, 0.045, 0.004, 20, 1500}},
	{"DutyAt", DutyAt, "ppp", []float64{150, 100, 60}},
	{"GasVolume", GasVolume, "qzzz", []float64{12, 60, 1, 2}},
	{"GasReynolds", GasReynolds, "pppp", []float64{12, 15, 1.66, 2.2e-5}},
	{"LaminarFlow", LaminarFlow, "ppp-", []float64{15, 1.66, 2.2e-5, 2300}},
	{"ArcEnergy", ArcEnergy, "ppp", []float64{15, 90, 8}},
	{"HeatInput", HeatInput, "-ppp", []float64{0.8, 15, 90, 8}},
	{"NetHeat", NetHeat, "-ppp", []float64{0.8, 15, 90, 8}},
	{"EnergyPerLength", EnergyPerLength, "pp", []float64{900, 8}},
	{"RosenthalThick", RosenthalThick, "pppp---", []float64{900, 8, 0.045, 0.004, -2, 1, 1}},
	{"RosenthalThin", RosenthalThin, "ppppqz--", []float64{900, 8, 1.2, 0.045, 0.004, 30, -2, 1}},
	{"PulseFrequency", PulseFrequency, "ppp", []float64{0.9, 100, 0.9}},
	{"CapillaryLap", CapillaryLap, "pppp", []float64{300, 1.2, 0.8, 150}},
	{"ShaftSpeed", ShaftSpeed, "pp", []float64{6, 40}},
}

// answer calls a formula: its numbers and its error.
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

// A formula that is asked outside its range says so, and hands back no number to compute with.
func TestFormulasKeepTheirRange(t *testing.T) {
	bad := map[byte][]float64{'p': {0, -1, math.NaN(), math.Inf(1)}, 'q': {0, -1, math.NaN()}, 'n': {-1, math.NaN(), math.Inf(1)}, 'z': {-1, math.NaN()}}
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

// Ranges that join two arguments, or have two ends.
func TestFormulasKeepTheirOrder(t *testing.T) {
	for _, c := range []struct {
		name string
		f    any
		args []float64
	}{
		{"AdamsPeak from an isotherm at the start", AdamsPeak, []float64{100, 1.2, 0.004, 20, 20, 3}},
		{"AdamsDistance of the start", AdamsDistance, []float64{100, 1.2, 0.004, 1500, 20, 20}}, {"AdamsDistance above the isotherm", AdamsDistance, []float64{100, 1.2, 0.004, 1500, 20, 1501}},
		{"CoolingRateThin at the start", CoolingRateThin, []float64{100, 1.2, 0.045, 0.004, 20, 20}}, {"CoolingRateThick at the start", CoolingRateThick, []float64{100, 0.045, 20, 20}},
		{"RosenthalThick in the source", RosenthalThick, []float64{900, 8, 0.045, 0.004, 0, 0, 0}}, {"RosenthalThin in the source", RosenthalThin, []float64{900, 8, 1.2, 0.045, 0.004, 30, 0, 0}},
		{"EffectiveAmps", EffectiveAmps, []float64{100, -0.01}}, {"EffectiveAmps", EffectiveAmps, []float64{100, 1.01}},
		{"SteelSpecificHeat", SteelSpecificHeat, []float64{19.9}}, {"SteelSpecificHeat", SteelSpecificHeat, []float64{1200.1}}, {"SteelConductivity", SteelConductivity, []float64{19.9}}, {"SteelConductivity", SteelConductivity, []float64{1200.1}},
		{"DipFloor", DipFloor, []float64{0.39}}, {"DipFloor", DipFloor, []float64{3.21}}, {"SprayTransition", SprayTransition, []float64{0.39}}, {"SprayTransition", SprayTransition, []float64{3.21}},
	} {
		refused(t, c.name, c.f, c.args)
	}
	for _, sample := range [][]float64{nil, {1}, {1, 0}, {1, -2}, {math.NaN(), 1}} {
		if a, b, c, err := Predictive(sample); !errors.Is(err, ErrRange) || a != 0 || b != 0 || c != 0 {
			t.Errorf("Predictive(%v) = %g, %g, %g, %v", sample, a, b, c, err)
		}
	}
	for _, m := range [][2][]float64{{{1}, {1, 2}}, {{-1}, {1}}, {{1}, {0}}} {
		if v, err := Mixture(m[0], m[1]); !errors.Is(err, ErrRange) || v != 0 {
			t.Errorf("Mixture(%v) = %g, %v", m, v, err)
		}
	}
	for _, at := range []float64{20, 1200} {
		if _, err := SteelSpecificHeat(at); err != nil {
			t.Error(err)
		}
		if _, err := SteelConductivity(at); err != nil {
			t.Error(err)
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
