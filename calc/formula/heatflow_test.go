package formula

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
	"pgregory.net/rapid"

	"brazebooth/calc/section"
	"brazebooth/internal/deep"
	"brazebooth/tables"
)

func TestMain(m *testing.M) { deep.Main(m, 100) }

func near(t testing.TB, what string, got, want, relative float64) {
	t.Helper()
	if !(math.Abs(got-want) <= relative*math.Abs(want)) {
		t.Errorf("%s: %.12g, want %.12g", what, got, want)
	}
}

// Checks against the integral definitions, Abramowitz and Stegun 9.6.24, by a general-purpose library.
func TestBesselAgainstQuadrature(t *testing.T) {
	for _, x := range []float64{1e-3, 0.02, 0.1, 0.5, 0.999, 1, 1.001, 2, 3.7, 5, 12, 60, 400} {
		top := math.Acosh(1 + 45/x)
		want0 := quad.Fixed(func(t float64) float64 { return math.Exp(-x * (math.Cosh(t) - 1)) }, 0, top, 200, nil, 0)
		want1 := quad.Fixed(func(t float64) float64 { return math.Exp(-x*(math.Cosh(t)-1)) * math.Cosh(t) }, 0, top,
			200, nil, 0)
		k0, k1 := besselK(x)
		near(t, "K0", k0, want0, 2e-13)
		near(t, "K1", k1, want1, 2e-13)
	}
}

// A slow source heats less far to the side than a fast one with the same heat per millimetre.
func TestSlowerReachesLess(t *testing.T) {
	for _, loss := range []float64{0, 120} {
		last := 0.0
		for _, travel := range []float64{2, 4, 8, 16, 1000, 4000} {
			y, err := MovingHalfWidth(100, travel, 0.8, 0.0048, 0.040, loss, 887)
			if err != nil || y <= last {
				t.Errorf("%g mm/s: %g mm after %g (%v)", travel, y, last, err)
			}
			last = y
		}
	}
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

// Mass is conserved: the melted wire is deposited or lost, and the bead holds what is deposited.
func TestMassIsConserved(t *testing.T) {
	const d, feed, rho, eff, v = 0.889, 105.83, 8.53, 0.93, 6.0
	area, err := BeadArea(d, feed, eff, v)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "g/s", area*v*rho*1e-3, MeltRate(d, feed, rho)*eff, 1e-12)
	near(t, "length", LengthPerMass(d, rho)*MassPerLength(d, rho), 1000, 1e-12)
}

// The cross-section scales steel's curves to a metal's conductivity and heat capacity: those of mild steel must
// leave the curves unchanged.
func TestMildSteelLeavesTheCurvesUnchanged(t *testing.T) {
	m, ok := tables.Metals.ByID("mild-steel")
	if !ok || section.SteelMean.K != m.Conductivity.V || section.SteelMean.RhoC != m.HeatCapacity.V {
		t.Errorf("curves are scaled to %+v, mild steel has %g and %g", section.SteelMean, m.Conductivity.V,
			m.HeatCapacity.V)
	}
}

// Where EN 1993-1-2 is no longer a polynomial, the cross-section's steel agrees with the rows of tables.
func TestSteelAgreesWithItsRows(t *testing.T) {
	for _, at := range []float64{800, 1000, 1200} {
		near(t, "conductivity", section.SteelConductivity(at, 1), tables.SteelConductivityPlateau.V, 1e-12)
	}
	near(t, "heat", (section.SteelHeat(1200)-section.SteelHeat(900))/300, tables.SteelHeatPlateau.V, 1e-12)
	peak := tables.SteelPeak.V
	slope := func(at float64) float64 { return section.SteelHeat(at+0.5) - section.SteelHeat(at-0.5) }
	for _, at := range []float64{peak - 5, peak - 1, peak + 1, peak + 5} {
		if slope(at) >= slope(peak) {
			t.Errorf("heat at %g C is no less than at its peak", at)
		}
	}
}

func TestLimitsAgreeWithTheirRowsAndGrow(t *testing.T) {
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
