package section

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"brazebooth/internal/deep"
)

func TestMain(m *testing.M) { deep.Main(m, 25) }

// solved computes a section and checks its energy balance.
func solved(t testing.TB, in Input) Result {
	t.Helper()
	w := &Workspace{audited: true}
	r, err := w.Solve(&in)
	if err != nil {
		t.Fatal(err)
	}
	if off := w.residual(); !(math.Abs(off) < 1e-9) {
		t.Errorf("%+v: residual %g", in, off)
	}
	return r
}

func TestEnergyIsConserved(t *testing.T) {
	for _, joint := range []Joint{LapJoint, TeeJoint, ButtJoint, CornerJoint, OverlayJoint} {
		for _, v := range []float64{3, 6, 12} {
			in := lap(v)
			in.Joint = joint
			w := &Workspace{audited: true}
			if _, err := w.Solve(&in); err != nil || math.Abs(w.residual()) > 1e-12 {
				t.Errorf("joint %d at %g: residual %g, %v", joint, v, w.residual(), err)
			}
		}
	}
}

func TestEqualButtIsSymmetric(t *testing.T) {
	in := lap(6)
	in.Joint = ButtJoint
	r := solved(t, in)
	if math.Abs(r.Wet[0]-r.Wet[1]) > 1e-9 || math.Abs(r.Skin[0]-r.Skin[1]) > 1e-7 {
		t.Errorf("wet %g and %g, peaks %g and %g", r.Wet[0], r.Wet[1], r.Skin[0], r.Skin[1])
	}
}

// Mirrored members and aim give the mirrored result.
func TestMirror(t *testing.T) {
	in := lap(6)
	in.Joint, in.Thick, in.Aim = ButtJoint, [2]float64{1, 2}, 0.4
	a := solved(t, in)
	in.Thick, in.Aim = [2]float64{2, 1}, -0.4
	b := solved(t, in)
	// The bridge between the members uses the first one's thickness, so the results differ a little.
	for i := range 2 {
		near(t, "wet", a.Wet[i], b.Wet[1-i], 0.02)
		near(t, "peak", a.Skin[i], b.Skin[1-i], 0.02)
	}
}

func TestSlowerIsHotterAndWider(t *testing.T) {
	last := solved(t, lap(16))
	for _, v := range []float64{12, 9, 6, 4} {
		r := solved(t, lap(v))
		for i := range 2 {
			if r.Wet[i] <= last.Wet[i] || r.Skin[i] <= last.Skin[i] ||
				r.Front[i].Reach(419.53) <= last.Front[i].Reach(419.53) {
				t.Errorf("%g mm/s, member %d: wet %g after %g, peak %g after %g", v, i, r.Wet[i], last.Wet[i],
					r.Skin[i], last.Skin[i])
			}
		}
		last = r
	}
}

func TestThickerIsColder(t *testing.T) {
	last := math.Inf(1)
	for _, thick := range []float64{0.7, 1, 1.5, 2, 2.8} {
		in := lap(8)
		in.Thick = [2]float64{thick, thick}
		if r := solved(t, in); r.Wet[0]+r.Wet[1] >= last {
			t.Errorf("%g mm wets %g, thinner sheet %g", thick, r.Wet[0]+r.Wet[1], last)
		} else {
			last = r.Wet[0] + r.Wet[1]
		}
	}
}

func TestAimMovesTheHeat(t *testing.T) {
	in := lap(6)
	centre := solved(t, in)
	in.Aim = 0.5
	toward := solved(t, in)
	for i, sign := range []float64{-1, 1} {
		change := sign * (toward.Wet[i]/centre.Wet[i] - 1)
		if change < 0.05 || change > 0.35 {
			t.Errorf("half a millimetre moves member %d by %.0f %%", i, 100*change)
		}
	}
}

// Halving columns and steps changes the results little. The results are logged so that the order can be read.
func TestConvergence(t *testing.T) {
	if testing.Short() {
		t.Skip("many runs")
	}
	for _, v := range []float64{4, 8} {
		in := lap(v)
		var usual Result
		for _, f := range []float64{1, 1.5, 2, 3} {
			w := &Workspace{finer: [2]float64{f, f}}
			r, err := w.Solve(&in)
			if err != nil {
				t.Fatal(err)
			}
			t.Logf("v %g finer %g: wet %.3f %.3f, peak %.0f %.0f, melted %.2f, %d steps", v, f, r.Wet[0], r.Wet[1],
				r.Skin[0], r.Skin[1], r.Front[0].Reach(419.53), r.Steps)
			if f == 1 {
				usual = r
				continue
			}
			for i := range 2 {
				near(t, "wet", usual.Wet[i], r.Wet[i], 0.03)
				near(t, "peak", usual.Skin[i], r.Skin[i], 0.03)
				near(t, "melted", usual.Front[i].Reach(419.53), r.Front[i].Reach(419.53), 0.04)
			}
		}
	}
}

func TestAnyInput(t *testing.T) {
	w := &Workspace{audited: true}
	rapid.Check(t, func(r *rapid.T) {
		f := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(r, name) }
		m := func(name string) Material {
			if rapid.Bool().Draw(r, name) {
				return steel()
			}
			return Material{K: f(name+" k", 0.01, 0.4), RhoC: f(name+" c", 0.002, 0.006), Solidus: 900, Liquidus: 950,
				Latent: 1.5}
		}
		in := Input{Joint: Joint(rapid.IntRange(0, 4).Draw(r, "joint")), Thick: [2]float64{f("t1", 0.05, 150), f("t2",
			0.05, 150)},
			Base: [2]Material{m("first"), m("second")}, Filler: bronze(), Heat: f("heat", 0.1, 3e4), Bead: f("bead",
				0, 500),
			Travel: f("travel", 0.3, 60), Sigma: f("sigma", 0.5, 4), Aim: f("aim", -4, 4), Loss: f("loss", 0, 1e-3),
			Start:  f("start", -40, 700),
			Lowest: f("lowest", 0, 500)}
		res, err := w.Solve(&in)
		if err != nil {
			if !errors.Is(err, ErrRange) {
				r.Fatal(err)
			}
			return
		}
		for i := range 2 {
			if math.IsNaN(res.Skin[i]) || math.IsInf(res.Skin[i], 0) || math.IsNaN(res.Core[i]) || res.Wet[i] < 0 {
				r.Fatalf("%+v: skin %v core %v wet %v", in, res.Skin, res.Core, res.Wet)
			}
		}
		if math.Abs(w.residual()) > 1e-9 {
			r.Fatalf("%+v: residual %g", in, w.residual())
		}
	})
}
