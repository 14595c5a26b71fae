package hang

import (
	"math"
	"testing"
)

// A heavier puddle or a wider chord never makes a spot stay better, over the whole range.
func TestSpotsFallInOrder(t *testing.T) {
	for _, place := range places {
		for _, c := range []struct {
			what  string
			at    func(*Joint) *float64
			a, b  float64
			holds bool // only "holds": on a wall the bead hangs, not the root
		}{
			{"gap", func(j *Joint) *float64 { return &j.Gap }, 0.3, 3.6, true},
			{"current", func(j *Joint) *float64 { return &j.Amps }, 20, 250, true},
			{"bead", func(j *Joint) *float64 { return &j.Bead }, 4, 30, false},
		} {
			last := [2]float64{Most, Most}
			for i := range 60 {
				j := usualJoint(t, "butt", place)
				*c.at(&j) = c.a + (c.b-c.a)*float64(i)/59
				if c.what == "gap" { // a wider gap takes more metal
					j.Bead = 2 * j.Gap * j.Thick[0]
				}
				holds, hangs, err := SpotEdges(&j)
				if err != nil {
					t.Fatal(err)
				}
				for n, e := range []Edge{holds, hangs} {
					if e.Why != "" || c.holds && n > 0 || c.what == "gap" && place != "flat" {
						continue // without weight, a wider root feels less of the arc
					}
					if e.Margin > last[n]+1e-9 {
						t.Errorf("%s, %s %g: edge %d by %.4f after %.4f", place, c.what, *c.at(&j), n, e.Margin,
							last[n])
					}
					last[n] = e.Margin
				}
			}
		}
	}
}

// A closed joint that lies flat has nothing that could fall; a filler whose melt is unknown is not judged.
func TestSpotsThatAreNotJudged(t *testing.T) {
	j := usualJoint(t, "lap", "flat")
	j.Gap = 0
	if holds, hangs, err := SpotEdges(&j); err != nil || holds.Margin != Most || hangs.Margin != Most {
		t.Errorf("%+v, %+v, %v", holds, hangs, err)
	}
	j = usualJoint(t, "butt", "overhead")
	j.Liquid = Liquid{}
	if holds, hangs, err := SpotEdges(&j); err != nil || holds.Why == "" || hangs.Why == "" {
		t.Errorf("%+v, %+v, %v", holds, hangs, err)
	}
	j.Gap = -1
	if _, _, err := SpotEdges(&j); err == nil {
		t.Error("a gap below zero went through")
	}
}

// Compares the share of the arc's pressure that bulges a root with the membrane's equation on a grid: a strip
// ten half chords long, its height in the middle under a Gaussian load over that under an even load.
func TestPushAgreesWithTheMembrane(t *testing.T) {
	for _, half := range []float64{0.4, 1, 2, 4.8} {
		o := Opening{Gap: 2 * half, Assumed: Assumed{PressureWidth: 1.2, RootGrows: 0.3}}
		gauss := middle(half, func(x, y float64) float64 { return math.Exp(-(x*x + y*y) / (2 * 1.2 * 1.2)) })
		even := middle(half, func(float64, float64) float64 { return 1 })
		if got, want := o.pushShare(), gauss/even; math.Abs(got/want-1) > 0.07 {
			t.Errorf("half a chord of %g mm: %.4f, the membrane %.4f", half, got, want)
		}
	}
}

// middle is the height of a membrane of unit tension in the middle of a strip, by over-relaxation on a quarter
// of it.
func middle(half float64, load func(x, y float64) float64) float64 {
	const ny, nx = 12, 60
	d := half / ny
	var w [nx + 1][ny + 1]float64
	for range 400 {
		for i := range nx {
			for k := range ny {
				left, below := max(i-1, 1-i), max(k-1, 1-k) // mirrored
				v := (w[left][k] + w[i+1][k] + w[i][below] + w[i][k+1] + d*d*load(float64(i)*d, float64(k)*d)) / 4
				w[i][k] += 1.8 * (v - w[i][k])
			}
		}
	}
	return w[0][0]
}
