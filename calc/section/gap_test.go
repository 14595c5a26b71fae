package section

import (
	"math"
	"testing"

	"brazebooth/calc/section/plate"
)

// A butt's arms begin at the edges of its root. The wider the root, the more of the arc falls on the filler
// beside the edges and the hotter they get, while their wetted width hardly changes. The rises, K, come from an
// independent program of the same model, for 0.8 mm under 63 J/mm; its bead and travel are unknown, and they
// can change a rise by a third.
func TestRootOpeningHeatsTheEdges(t *testing.T) {
	in := lap(6)
	in.Joint, in.Thick, in.Heat, in.Travel, in.Bead, in.Lowest = ButtJoint, [2]float64{0.8, 0.8}, 63, 10, 4, 0
	shut := solved(t, in)
	for _, c := range []struct{ gap, rise float64 }{{0.5, 24}, {1, 48}, {2, 90}, {3, 127}} {
		in.Gap = c.gap
		r := solved(t, in)
		if d := r.Skin[0] - shut.Skin[0]; math.Abs(d-c.rise) > 0.35*c.rise {
			t.Errorf("gap %g mm: %.0f K hotter, want about %.0f", c.gap, d, c.rise)
		}
		if w := r.Wet[0]/shut.Wet[0] - 1; w < -0.06 || w > 0.03 {
			t.Errorf("gap %g mm: wets %+.1f %%", c.gap, 100*w)
		}
	}
}

// An open gap under a lap's upper sheet must fill before that sheet's edge gives heat away; a gap higher than
// the filler passes no heat.
func TestGapUnderALapHeatsItsEdge(t *testing.T) {
	in := lap(8)
	in.Thick, in.Heat, in.Bead, in.Lowest = [2]float64{0.8, 0.8}, 85, 4, 0
	last := solved(t, in)
	for _, gap := range []float64{0.25, 0.5, 1} {
		in.Gap = gap
		r := solved(t, in)
		if r.Skin[0] <= last.Skin[0]+5 || r.Skin[1] > last.Skin[1]+1 {
			t.Errorf("gap %g mm: edge %.0f after %.0f, lower sheet %.0f after %.0f", gap, r.Skin[0], last.Skin[0],
				r.Skin[1], last.Skin[1])
		}
		last = r
	}
	in.Gap = 20
	apart := solved(t, in)
	in.Gap = 40
	if further := solved(t, in); further.Skin != apart.Skin {
		t.Errorf("%v and %v: sheets that do not touch", apart.Skin, further.Skin)
	}
	tee := in
	tee.Joint, tee.Gap = TeeJoint, 0
	whole := solved(t, tee)
	tee.Gap = 40
	if open := solved(t, tee); open.Skin == whole.Skin {
		t.Error("a tee's gap changes nothing")
	}
}

// Where the joint reaches the toe's temperature ahead of the arc's middle: the mean through a thin plate under
// a moving Gaussian, with the arc's heat less the filler's, agrees within 0.8 mm in sheet.
func TestPoolFront(t *testing.T) {
	for _, c := range []struct{ thick, heat, v float64 }{{1, 90, 8}, {1.5, 150, 6}, {2, 210, 6}, {1.5, 130, 9}} {
		in := lap(c.v)
		in.Joint, in.Thick, in.Heat, in.Lowest = ButtJoint, [2]float64{c.thick, c.thick}, c.heat, 0
		in.Bead = 40 / c.v
		r := solved(t, in)
		f := bronze()
		h, _ := (&curve{k: f.K, c: f.RhoC, solidus: f.Solidus, liquidus: f.Liquidus, latent: f.Latent,
			melt: f.Latent / (f.Liquidus - f.Solidus)}).heat(1100)
		const k, rhoC = 0.038, 0.0056
		q := c.v * (c.heat - in.Bead*h)
		p := c.v * in.Sigma * rhoC / (2 * k)
		rise := func(x float64) float64 {
			const thin = 0.02
			return q / (k * in.Sigma) * plate.Moving(p, thin, x/in.Sigma, 0, plate.Front) * thin / (c.thick / in.Sigma)
		}
		low, high := -5.0, 8.0
		for range 40 {
			if mid := (low + high) / 2; rise(mid) > f.Toe-20 {
				low = mid
			} else {
				high = mid
			}
		}
		t.Logf("%g mm %g J/mm at %g: front %.2f, plate %.2f; length %.1f", c.thick, c.heat, c.v, r.PoolFront, low,
			r.PoolLength)
		if d := r.PoolFront - low; math.Abs(d) > 0.8 {
			t.Errorf("%g mm: front %.2f, plate %.2f", c.thick, r.PoolFront, low)
		}
		if !(r.PoolLength > r.PoolFront) {
			t.Errorf("pool of %.1f mm with its front at %.2f", r.PoolLength, r.PoolFront)
		}
	}
	cold := lap(20)
	cold.Heat /= 4
	if r := solved(t, cold); r.PoolLength != 0 || !math.IsNaN(r.PoolFront) {
		t.Errorf("no pool, but %g and %g mm", r.PoolLength, r.PoolFront)
	}
}

// More heat makes the pool longer.
func TestPoolGrows(t *testing.T) {
	last := 0.0
	for _, heat := range []float64{150, 180, 220, 270} {
		in := lap(7)
		in.Heat = heat
		if r := solved(t, in); r.PoolLength <= last {
			t.Errorf("%g J/mm: %.2f mm after %.2f", heat, r.PoolLength, last)
		} else {
			last = r.PoolLength
		}
	}
}
