package thinsheet

import (
	"math"
	"testing"

	"brazebooth/internal/deep"
)

// order is the observed order of convergence: the exponent by which the error falls as the step does.
func order(coarse, fine, ratio float64) float64 { return math.Log(coarse/fine) / math.Log(ratio) }

// In space: 3 mm from a Gaussian source at rest after half a second, with cells of the same side everywhere.
func TestOrderInSpace(t *testing.T) {
	deep.Turn(t)
	if testing.Short() {
		t.Skip("long under the race detector")
	}
	var errs []float64
	for _, d := range []float64{0.9, 0.45, 0.225} {
		in := dryInput(1.8, d, 27)
		in.Power, in.Near = 1000, 27
		s, err := New(in)
		if err != nil {
			t.Fatal(err)
		}
		march(s, 0.5, 0.001, true)
		errs = append(errs, math.Abs(s.At(0, 0, 3)-1161.013246))
		t.Logf("cells of %.3f mm: error %.3f K", d, errs[len(errs)-1])
	}
	for i := 1; i < len(errs); i++ {
		o := order(errs[i-1], errs[i], 2)
		t.Logf("order in space %.2f", o)
		if o < 1.8 || o > 3 {
			t.Errorf("order %.2f, want about 2", o)
		}
	}
}

// In time: the same source, and a moving one, compared with far finer steps; macro steps from 32 to 8 ms.
func TestOrderInTime(t *testing.T) {
	if testing.Short() {
		t.Skip("long under the race detector")
	}
	run := func(dt, speed float64) float64 {
		in := dryInput(1.8, 0.5, 20)
		in.Power, in.Loss, in.Radiates = 600, 1e-5, 4e-14
		s, err := New(in)
		if err != nil {
			t.Fatal(err)
		}
		if speed > 0 {
			s.Travel(speed, 0.96, dt, nil)
			return s.At(0, 0.25, 0.25)
		}
		march(s, 0.48, dt, true)
		march(s, 0.256, dt, false)
		return s.At(0, 0.25, 0.25)
	}
	for name, speed := range map[string]float64{"at rest, on then off": 0, "moving": 5} {
		fine := run(0.0005, speed)
		var errs []float64
		for _, dt := range []float64{0.032, 0.016, 0.008} {
			errs = append(errs, math.Abs(run(dt, speed)-fine))
			t.Logf("%s, steps of %g ms: %.3f K", name, 1000*dt, errs[len(errs)-1])
		}
		o := order(errs[0], errs[2], 4)
		t.Logf("%s: order in time %.2f", name, o)
		if o < 1.7 || o > 3.5 {
			t.Errorf("order %.2f, want about 2", o)
		}
		if errs[1] > 3 {
			t.Errorf("%s: steps of 16 ms are off by %.1f K", name, errs[1])
		}
	}
}
