package section

import (
	"math"
	"slices"
	"testing"
)

// steadyCorner runs a corner until its field is steady.
func steadyCorner(in Input, deep, high, fine float64) *trough {
	a := in.Base[0].diffusivity()
	behind, ahead, aside := 30+60*a/in.Travel/10, 10+3*a/in.Travel, 16+3*math.Sqrt(4*a*3/in.Travel)
	s := cornerOf(&in, min(deep, aside), min(high, aside), aside, fine)
	g := newTrough(in, s, min(behind, 110), ahead, fine)
	fastest := max(a, in.Filler.K*in.Filler.Stir/in.Filler.RhoC)
	if in.Base[0].Steel { // steel conducts best when cold
		fastest = max(fastest, 15)
	}
	y, z := slices.Min(s.dy), slices.Min(s.dz)
	g.run(max(4, 12*a/(in.Travel*in.Travel))+30/in.Travel, 0.32/(fastest*(1/(g.dx*g.dx)+1/(y*y)+1/(z*z))))
	return g
}

// A lap whose upper sheet is higher than its bead, computed as a tee whose standing member ends there, is
// compared with the reference of that corner; a tee with its own. Coarse cells cost the reference 6 % of width
// and 8 % of rise, cells of 1.6 half of that, so their limits are wider. The edge may be 60 K colder or 140 K
// hotter.
func TestLapAsTeeAgainstReference(t *testing.T) {
	const sideways, upward = 1e3, 1e3 // further than the heat reaches
	for _, c := range someCases([]struct {
		name              string
		thick             [2]float64
		metal             Material
		power             float64
		tee               bool
		fine              float64
		wetHigh, riseHigh float64
	}{
		{"steel lap 8, coarse", [2]float64{8, 8}, steel(), 2600, false, 2.4, 0.16, 0.28},
		{"steel lap 5", [2]float64{5, 5}, steel(), 2600, false, 1.6, 0.12, 0.24},
		{"steel lap 6", [2]float64{6, 6}, steel(), 2600, false, 1.6, 0.12, 0.24},
		{"steel lap 8", [2]float64{8, 8}, steel(), 2600, false, 1.1, 0.08, 0.18},
		{"steel lap 12 on 8", [2]float64{12, 8}, steel(), 2600, false, 1.6, 0.12, 0.24},
		{"stainless lap 6", [2]float64{6, 6}, stainless(), 2200, false, 1.6, 0.13, 0.24},
		{"steel tee 8", [2]float64{8, 8}, steel(), 2600, true, 1.6, 0.12, 0.24},
	}) {
		in := seam(TeeJoint, c.thick, c.metal, c.power, 7, 11, 20)
		deep, high := sideways, c.thick[0]
		if c.tee {
			deep, high = c.thick[0], upward
		} else {
			in.High = c.thick[0]
		}
		g, r := steadyCorner(in, deep, high, c.fine), solved(t, in)
		wall, floor := g.peaks(g.wall), g.peaks(g.floor)
		for member, peak := range [2][]float64{wall, floor} {
			at := g.from([2][]int{g.wall, g.floor}[member], member == 0)
			wet := reach(at, peak, 0, in.Filler.Toe)
			if member == 0 && !c.tee {
				wet = min(wet, high)
			}
			dw, dr := r.Wet[member]/wet-1, (r.Skin[member]-in.Start)/(slices.Max(peak)-in.Start)-1
			t.Logf("%s, member %d: wet %.2f, reference %.2f, %+.1f %%; peak %.0f, %.0f, %+.1f %% of rise", c.name,
				member,
				r.Wet[member], wet, 100*dw, r.Skin[member], slices.Max(peak), 100*dr)
			if dw < -0.02 || dw > c.wetHigh || dr < -0.08 || dr > c.riseHigh {
				t.Errorf("%s, member %d", c.name, member)
			}
		}
		if c.tee {
			continue
		}
		f := &r.Front[0]
		edge, top := float64(f.peak[f.n-1]), wall[len(wall)-1]
		t.Logf("%s, at the edge: %.0f, reference %.0f", c.name, edge, top)
		if d := edge - top; d < -60 || d > 140 {
			t.Errorf("%s: the edge differs by %+.0f K", c.name, d)
		}
	}
}
