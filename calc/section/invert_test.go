package section

import (
	"math"
	"testing"
)

// From any starting temperature, invert ends at the right temperature with the heat capacity of the phase
// there, also just above and below each melting point.
func TestInvertEndsInItsPhase(t *testing.T) {
	iron := (&Material{K: 0.035, RhoC: 0.0053, Solidus: 1120, Liquidus: 1180, Latent: 1.6}).curve()
	steel := (&Material{K: 0.04, RhoC: 0.0052, Solidus: 1470, Liquidus: 1520, Latent: 2, Steel: true}).curve()
	filler := (&Filler{K: 0.05, Stir: 2, RhoC: 0.0036, Latent: 1.8, Solidus: 1040, Liquidus: 1045}).curve()
	const body, metal = 0.11, 0.36
	for name, base := range map[string]*curve{"iron": &iron, "steel": &steel} {
		heat := func(t float64) float64 {
			h, _ := base.heat(t)
			f, _ := filler.heat(t)
			return body*h + metal*f
		}
		for _, at := range []float64{1040, 1045, 1120, 1180, 1470, 1520} {
			for off := -2.0; off <= 2; off += 0.0173 {
				want := at + off
				for _, from := range []float64{-300, -3, -0.4, 0, 0.4, 3, 300} {
					got, capacity := invert(heat(want), want+from, body, metal, base, &filler)
					const small = 1e-6
					slope := (heat(want+small) - heat(want-small)) / (2 * small)
					if math.Abs(got-want) > 1e-6 || math.Abs(off) > 1e-3 && math.Abs(capacity/slope-1) > 0.01 {
						t.Fatalf("%s, %g C from %+g K: %g C, capacity %g where it is %g", name, want, from, got,
							capacity, slope)
					}
				}
			}
		}
	}
}
