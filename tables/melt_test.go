package tables

import (
	"math"
	"testing"
)

// butler returns the surface tension of a solution of a second metal in copper by Butler's equation without
// excess energies: the monolayers of both metals have one tension. T is in K; x is the share of the second
// metal in the bulk, sigma its own tension in N/m, volume its molar volume in cm3.
func butler(t, x, sigma, volume float64) float64 {
	area := func(volume float64) float64 { // of one mole in one layer, m2
		return 1.091 * math.Cbrt(6.02214e23) * math.Pow(volume*1e-6, 2.0/3)
	}
	copper := 1.633 - 0.21e-3*t
	of := func(s float64) (a, b float64) {
		return copper + 8.314*t/area(7.94)*math.Log((1-s)/(1-x)), sigma + 8.314*t/area(volume)*math.Log(s/x)
	}
	lo, hi := x, 1.0
	for range 60 {
		s := (lo + hi) / 2
		if a, b := of(s); a > b {
			lo = s
		} else {
			hi = s
		}
	}
	a, _ := of(lo)
	return a
}

// TestTensionByButler compares the surface tensions with an ideal solution at the liquidus. The second metals'
// own tensions and molar volumes, extrapolated to there, are from memory (Keene 1993), medium. An ideal
// solution leaves out the bond between the metals, so it must lie in the band but need not be close to the
// value.
func TestTensionByButler(t *testing.T) {
	for _, c := range []struct {
		filler                string
		x                     float64 // atomic share, from the middle of the mass limits
		sigma, volume, atMost float64 // atMost: largest difference from the value, N/m
	}{
		{"cusi3", 0.070, 0.80, 11.2, 0.05},
		{"cual8", 0.157, 0.81, 11.9, 0.05},
		{"cual10fe", 0.203, 0.81, 11.9, 0.08},
		{"cusn6", 0.028, 0.49, 17.6, 0.06},
		{"cusn1", 0.0045, 0.49, 17.6, 0.03},
	} {
		f, _ := Fillers.ByID(c.filler)
		m, ok := Melts.ByID(c.filler)
		got := butler(f.Liquidus.V+273, c.x, c.sigma, c.volume)
		if d := m.Tension; !ok || got < d.Low || got > d.High || math.Abs(got-d.V) > c.atMost {
			t.Errorf("%s: %.3f N/m by Butler, the row says %g (%g to %g)", c.filler, got, d.V, d.Low, d.High)
		}
	}
}

func TestLiquidDensity(t *testing.T) {
	for _, m := range Melts {
		f, ok := Fillers.ByID(m.Filler)
		if !ok {
			t.Errorf("%s is no filler", m.Filler)
			continue
		}
		// Copper has 8.02 g/cm3 liquid at its melting point and 8.96 at 20 C. The rows are rounded to 10 kg/m3,
		// that of CuSn6 to 100.
		if want := 8.02 / 8.96 * 1000 * f.Density.V; math.Abs(m.Density.V-want) > 0.003*want {
			t.Errorf("%s: %g kg/m3, copper's ratio gives %.0f", m.Filler, m.Density.V, want)
		}
	}
}

func TestEveryBronzeHasAMelt(t *testing.T) {
	for _, f := range Fillers {
		if _, ok := Melts.ByID(f.ID); ok == f.Comparison() {
			t.Errorf("%s: melt %v", f.ID, ok)
		}
	}
	if _, ok := Melts.ByID(""); ok {
		t.Error("no filler has a melt")
	}
}

func TestBackings(t *testing.T) {
	for _, b := range Backings {
		if got, ok := Backings.ByID(b.ID); !ok || got != b {
			t.Errorf("%s is not found", b.ID)
		}
	}
	if _, ok := Backings.ByID("wood"); ok {
		t.Error("wood is no backing")
	}
}
