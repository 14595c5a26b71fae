package calc

import (
	"math"
	"testing"

	"brazebooth/calc/section"
	"brazebooth/internal/deep"
)

// A closed butt's throat is its cap's, beside the pull's line: less than half of the sheet. It grows with the opening
// at the same setting, without a jump, and is never more than the sheet.
func TestButtThroatGrowsWithTheOpening(t *testing.T) {
	var jobs []Job
	for _, metal := range []string{"mild-steel", "galvanized", "dp600", "stainless-304"} {
		for _, mm := range []float64{0.8, 1, 1.5, 2} {
			for _, travel := range []float64{5, 7} {
				jobs = append(jobs, Job{Metal: metal, Thickness: Some(mm), Joint: "butt", Feed: Some(3 + mm),
					Travel: Some(travel)})
			}
		}
	}
	for _, j := range deep.Of(t, jobs, 5) {
		last := 0.0
		for gap := 0.0; gap <= 0.51; gap += 0.1 {
			j.Gap = Some(gap)
			c := card(t, j)
			f, ok := c.Figure("throat")
			if !ok {
				t.Fatalf("%s %g mm, gap %g: no throat", j.Metal, j.Thickness.V, gap)
			}
			sheet := c.Setup.Members[0].Core
			switch {
			case gap == 0 && f.Value > sheet/2:
				t.Errorf("%s %g mm: a closed butt carries like %g mm", j.Metal, j.Thickness.V, f.Value)
			case f.Value > sheet+1e-9 || f.High > sheet+1e-9 || f.Low > f.Value:
				t.Errorf("%s %g mm, gap %g: throat %g, %g to %g", j.Metal, j.Thickness.V, gap, f.Value, f.Low, f.High)
			case gap > 0 && c.Section.BoiledBack[0] > sheet && (f.Value < last-0.02*sheet || f.Value > last+0.35*sheet):
				t.Errorf("%s %g mm, gap %.1f: throat %g after %g", j.Metal, j.Thickness.V, gap, f.Value, last)
			}
			last = f.Value
		}
	}
}

// A lap's throat by points along the arc from toe to toe: over widths, thicknesses and bulges.
func TestLapThroatByPoints(t *testing.T) {
	for _, wu := range []float64{0.5, 2, 4} {
		for _, wl := range []float64{0.5, 2.5, 5} {
			for _, sheet := range []float64{0.6, 1.5, 3} {
				for _, phi := range []float64{-0.3, 0, 0.2, 0.8, 1.4} {
					got := section.LapThroat(wu, wl, sheet, phi)
					if want := min(wl, math.Hypot(wu, sheet), byPoints(wu, wl, sheet, phi)); math.Abs(got-max(0,
						want)) > 2e-3 {
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

// What a pull beside the middle leaves of a section, by n of 4·n·e/h = 1 − n².
func TestOffMiddle(t *testing.T) {
	for _, h := range []float64{0.5, 1, 3} {
		for _, e := range []float64{0, 0.1, 0.5, 2, 10} {
			n := section.OffMiddle(h, e) / h
			if math.Abs(4*n*e/h-(1-n*n)) > 1e-9 || n > 1 || n <= 0 {
				t.Errorf("h %g, e %g: n %g", h, e, n)
			}
		}
	}
}
