package calc

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
	"pgregory.net/rapid"

	"brazebooth/calc/section"
	"brazebooth/tables"
)

func near(t testing.TB, what string, got, want, relative float64) {
	t.Helper()
	if !(math.Abs(got-want) <= relative*math.Abs(want)) {
		t.Errorf("%s: %.12g, want %.12g", what, got, want)
	}
}

// The integral definitions, Abramowitz and Stegun 9.6.24, by a general-purpose library.
func TestBesselAgainstQuadrature(t *testing.T) {
	for _, x := range []float64{1e-3, 0.02, 0.1, 0.5, 0.999, 1, 1.001, 2, 3.7, 5, 12, 60, 400} {
		top := math.Acosh(1 + 45/x)
		want0 := quad.Fixed(func(t float64) float64 { return math.Exp(-x * (math.Cosh(t) - 1)) }, 0, top, 200, nil, 0)
		want1 := quad.Fixed(func(t float64) float64 { return math.Exp(-x*(math.Cosh(t)-1)) * math.Cosh(t) }, 0, top, 200, nil, 0)
		k0, k1 := besselK(x)
		near(t, "K0", k0, want0, 2e-13)
		near(t, "K1", k1, want1, 2e-13)
	}
}

// A peak found along the path by plain search is the peak of the parametric form.
func TestThinPeakIsTheHighestOnThePath(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		v := rapid.Float64Range(1, 30).Draw(r, "v")
		y := rapid.Float64Range(0.3, 20).Draw(r, "y")
		k := rapid.Float64Range(0.015, 0.4).Draw(r, "k")
		peak, err := ThinPeak(1000, v, 1.2, k, 0.005, y)
		if err != nil {
			r.Fatal(err)
		}
		best := 0.0
		far := 3 * (v*0.005/(2*k)*y*y + y)
		for i := range 20000 {
			xi := -far * float64(i) / 20000
			rise, err := RosenthalThin(1000, v, 1.2, k, 0.005, 0, xi, y)
			if err != nil {
				r.Fatal(err)
			}
			best = max(best, rise)
		}
		if best > peak*(1+1e-9) || best < peak*(1-1e-4) {
			r.Fatalf("v %g y %g k %g: peak %g, search finds %g", v, y, k, peak, best)
		}
	})
}

func TestMovingHalfWidthIsWhereThePeakIs(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		net := rapid.Float64Range(20, 400).Draw(r, "net")
		v := rapid.Float64Range(1, 30).Draw(r, "v")
		thick := rapid.Float64Range(0.4, 4).Draw(r, "t")
		k := rapid.Float64Range(0.015, 0.4).Draw(r, "k")
		rise := rapid.Float64Range(100, 1500).Draw(r, "rise")
		y, err := MovingHalfWidth(net, v, thick, 0.005, k, 0, rise)
		if err != nil {
			r.Fatal(err)
		}
		if y < 1e-6 {
			return // the sheet never gets as hot beside the line
		}
		got, err := ThinPeak(net*v, v, thick, k, 0.005, y)
		if err != nil || math.Abs(got-rise) > 1e-6*rise {
			r.Fatalf("at %g mm the peak is %g, want %g (%v)", y, got, rise, err)
		}
	})
}

// With loss there is no second formula: the path is searched.
func TestMovingHalfWidthWithLoss(t *testing.T) {
	y, err := MovingHalfWidth(100, 6, 0.8, 0.0048, 0.040, 120, 400)
	if err != nil {
		t.Fatal(err)
	}
	best := 0.0
	for i := range 40000 {
		rise, _ := RosenthalThin(600, 6, 0.8, 0.040, 0.0048, 120, -0.005*float64(i), y)
		best = max(best, rise)
	}
	near(t, "peak with loss", best, 400, 1e-6)
}

// A source that travels ever faster is the line that got its heat at once.
func TestFastLimit(t *testing.T) {
	for _, loss := range []float64{0, 120} {
		fast, err := FastHalfWidth(100, 0.8, 0.0048, 0.040, loss, 887)
		if err != nil {
			t.Fatal(err)
		}
		moving, err := MovingHalfWidth(100, 4000, 0.8, 0.0048, 0.040, loss, 887)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "4 m/s", moving, fast, 1e-3)
		slow, _ := MovingHalfWidth(100, 4, 0.8, 0.0048, 0.040, loss, 887)
		if slow >= fast {
			t.Errorf("a slow source reaches %g mm, a fast one %g", slow, fast)
		}
	}
}

func TestFastHalfWidthIsWhereFastPeakIs(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		net := rapid.Float64Range(5, 2000).Draw(r, "net")
		thick := rapid.Float64Range(0.2, 10).Draw(r, "t")
		loss := rapid.Float64Range(0, 400).Draw(r, "loss")
		rise := rapid.Float64Range(20, 2000).Draw(r, "rise")
		y, err := FastHalfWidth(net, thick, 0.005, 0.04, loss, rise)
		if err != nil {
			r.Fatal(err)
		}
		got, _, err := FastPeak(net, thick, 0.005, 0.04, loss, y)
		if err != nil || math.Abs(got-rise) > 1e-9*rise {
			r.Fatalf("peak %g at %g mm, want %g (%v)", got, y, rise, err)
		}
	})
}

func TestCurrentAndFeedAreInverse(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		d := rapid.Float64Range(0.4, 3.2).Draw(r, "d")
		feed := rapid.Float64Range(1, 700).Draw(r, "feed")
		stick := rapid.Float64Range(0, 50).Draw(r, "stick")
		rhoE := rapid.Float64Range(0, 1e-3).Draw(r, "rhoE")
		amps, err := CurrentFromFeed(d, feed, 8.53, 642.15, rhoE, 3.25, stick)
		if err != nil {
			r.Fatal(err)
		}
		back, err := FeedFromCurrent(d, amps, 8.53, 642.15, rhoE, 3.25, stick)
		if err != nil || math.Abs(back-feed) > 1e-12*feed {
			r.Fatalf("%g mm/s → %g A → %g mm/s (%v)", feed, amps, back, err)
		}
	})
}

// Mass is neither made nor lost: what melts is deposited or missing, and the bead holds what is laid.
func TestDepositedMassIsTheBead(t *testing.T) {
	const d, feed, rho, eff, v = 0.889, 105.83, 8.53, 0.93, 6.0
	area, err := BeadArea(d, feed, eff, v)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "g/s", area*v*rho*1e-3, MeltRate(d, feed, rho)*eff, 1e-12)
	near(t, "length", LengthPerMass(d, rho)*MassPerLength(d, rho), 1000, 1e-12)
}

// The cross-section scales steel's curves to a metal's pair of constants: mild steel's own pair must leave
// them as they are.
func TestMildSteelTakesTheCurvesAsTheyAre(t *testing.T) {
	m, ok := tables.MetalByID("mild-steel")
	if !ok || section.SteelMean.K != m.Conductivity.V || section.SteelMean.RhoC != m.HeatCapacity.V {
		t.Errorf("curves are scaled to %+v, mild steel has %g and %g", section.SteelMean, m.Conductivity.V, m.HeatCapacity.V)
	}
}

func TestLimitsMeetTheirRowsAndGrow(t *testing.T) {
	for d, want := range map[float64]float64{0.762: 40, 0.889: 50, 1.143: 80} {
		got, err := DipFloor(d)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "floor", got, want, 1e-12)
	}
	for d, want := range map[float64]float64{0.889: 165, 1.143: 205, 1.5875: 270} {
		got, err := SprayTransition(d)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "spray", got, want, 1e-12)
	}
	last := 0.0
	for d := 0.4; d <= 3.2; d += 0.05 {
		got, err := DipFloor(d)
		if err != nil || got <= last {
			t.Fatalf("floor at %g mm: %g after %g (%v)", d, got, last, err)
		}
		last = got
	}
	if _, err := DipFloor(5); err == nil {
		t.Error("5 mm wire has a floor")
	}
}

func BenchmarkMovingHalfWidth(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := MovingHalfWidth(100, 6, 1.5, 0.0052, 0.040, 120, 887); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkCurrentFromFeed(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := CurrentFromFeed(0.889, 105.83, 8.53, 642.15, 0.256e-3, 3.25, 12); err != nil {
			b.Fatal(err)
		}
	}
}
