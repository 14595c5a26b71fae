package section

import (
	"math"
	"testing"
)

// A lap's throat by points along the arc from toe to toe: over widths, thicknesses and bulges.
func TestLapThroatByPoints(t *testing.T) {
	for _, wu := range []float64{0.5, 2, 4} {
		for _, wl := range []float64{0.5, 2.5, 5} {
			for _, sheet := range []float64{0.6, 1.5, 3} {
				for _, phi := range []float64{-0.3, 0, 0.2, 0.8, 1.4} {
					got := LapThroat(wu, wl, sheet, phi)
					want := min(wl, math.Hypot(wu, sheet), byPoints(wu, wl, sheet, phi))
					if math.Abs(got-max(0, want)) > 2e-3 {
						t.Errorf("widths %g and %g, sheet %g, %g rad: %g, by points %g", wu, wl, sheet, phi, got, want)
					}
				}
			}
		}
	}
}

// byPoints is the least distance from the root to points of the arc; 0 where the bead hangs under the root.
func byPoints(wu, wl, sheet, phi float64) float64 {
	chord := math.Hypot(wu+wl, sheet)
	least := math.Inf(1)
	const points = 20000
	for i := 0; i <= points; i++ {
		s := float64(i)/points - 0.5
		rise := 0.0
		if math.Abs(phi) > 1e-9 {
			r := chord / 2 / math.Sin(math.Abs(phi))
			rise = math.Copysign(math.Sqrt(r*r-s*s*chord*chord)-r*math.Cos(phi), phi)
		}
		x, y := (wl-wu)/2+s*(wu+wl), sheet/2-s*sheet
		nx, ny := sheet/chord, (wu+wl)/chord
		over := x*nx + y*ny + rise
		x, y = x+nx*rise, y+ny*rise
		if along := x*ny - y*nx; math.Abs(along) < chord/points && over < 0 {
			return 0
		}
		least = min(least, math.Hypot(x, y))
	}
	return least
}

// OffMiddle is the section that counts for a pull beside the middle, by n of 4·n·e/h = 1 − n².
func TestOffMiddle(t *testing.T) {
	for _, h := range []float64{0.5, 1, 3} {
		for _, e := range []float64{0, 0.1, 0.5, 2, 10} {
			n := OffMiddle(h, e) / h
			if math.Abs(4*n*e/h-(1-n*n)) > 1e-9 || n > 1 || n <= 0 {
				t.Errorf("h %g, e %g: n %g", h, e, n)
			}
		}
	}
}
