package section

import (
	"math"
	"slices"
	"testing"

	"brazebooth/calc/section/plate"
	"brazebooth/internal/deep"
)

// The reference agrees with the exact plate: no metal, no melting, no loss. Its peaks are at the middles of the
// topmost cells; a line through two of them extrapolates to the face.
func TestReferenceOnPlate(t *testing.T) {
	deep.Turn(t)
	cases := []struct {
		metal        Material
		d, v, power  float64
		fine, within float64
	}{{linear(0.030, 0.0056), 6, 7.5, 800, 1.3, 0.03}, {linear(0.021, 0.0042), 3, 9, 600, 0.8, 0.02}, {linear(0.35,
		0.0038), 8, 8, 3000, 1.5, 0.02}}
	for _, c := range someCases(cases) {
		in := seam(OverlayJoint, [2]float64{c.d, c.d}, c.metal, c.power, c.v, 0, 0)
		in.Loss = 0
		p := steadySolid(in, c.fine).slabs[0]
		top, below := p.peaks(0), p.peaks(1)
		for _, j := range []int{1, 3, 5} {
			y, got := p.y[j], top[j]+(top[j]-below[j])*p.dz[0]/(p.dz[0]+p.dz[1])
			want := plate.Rise(c.power, 1.8, c.metal.K, c.metal.RhoC, c.v, c.d, y)
			t.Logf("%g mm, y %g: %.1f, plate %.1f", c.d, y, got, want)
			near(t, "rise", got, want, c.within)
		}
	}
}

// someCases are the first of some cases, or all in a deep run: the reference takes half a minute each.
func someCases[T any](all []T) []T {
	if deep.Run() {
		return all
	}
	return all[:1]
}

// steadySolid runs a case until its field is steady.
func steadySolid(in Input, fine float64) *solid {
	a := in.Base[0].diffusivity()
	behind, ahead, aside := 30+60*a/in.Travel/10, 10+3*a/in.Travel, 20+3*math.Sqrt(4*a*3/in.Travel)
	s := newSolid(in, fine, min(behind, 110), ahead, min(aside, 70))
	p := s.slabs[0]
	cold := a
	if in.Base[0].Steel { // steel conducts best when cold
		cold = 15
	}
	dt := 0.32 / (cold * (1/(p.dx*p.dx) + 1/(p.dy[s.row]*p.dy[s.row]) + 1/(p.dz[0]*p.dz[0])))
	s.run(max(4, 12*a/(in.Travel*in.Travel))+30/in.Travel, dt)
	return s
}

// The section is compared with the reference: widths and the peak's rise. The limits are the model's stated
// errors; the first case has coarse cells, which cost it 3 % of width and 5 % of rise. Butts of 2 to 4 mm are
// where the section's two ways to divide a thickness meet.
func TestSectionAgainstReference(t *testing.T) {
	type limits struct{ wetLow, wetHigh, riseLow, riseHigh float64 }
	steels, coppers := limits{-0.07, 0.07, -0.08, 0.08}, limits{-0.15, 0.09, 0.0, 0.31}
	cases := []struct {
		name string
		in   Input
		fine float64
		limits
	}{
		{"steel butt 3, coarse", seam(ButtJoint, [2]float64{3, 3}, steel(), 1777, 11.6, 6.74, 20), 1.7, limits{-0.04,
			0.10, -0.03, 0.13}},
		{"steel butt 6", seam(ButtJoint, [2]float64{6, 6}, steel(), 1633, 10, 7.34, 20), 1, steels},
		{"steel butt 2", seam(ButtJoint, [2]float64{2, 2}, steel(), 1300, 10, 7, 20), 0.8, steels},
		{"steel butt 3", seam(ButtJoint, [2]float64{3, 3}, steel(), 1777, 11.6, 6.74, 20), 0.8, steels},
		{"steel butt 4", seam(ButtJoint, [2]float64{4, 4}, steel(), 1777, 10, 7, 20), 0.8, steels},
		{"steel butt 12", seam(ButtJoint, [2]float64{12, 12}, steel(), 1633, 9, 8.15, 20), 1, steels},
		{"stainless butt 6", seam(ButtJoint, [2]float64{6, 6}, stainless(), 2000, 9, 9.59, 20), 1, steels},
		{"iron butt 8", seam(ButtJoint, [2]float64{8, 8}, iron(), 2602, 7.5, 14.29, 150), 1, steels},
		{"steel lap 6", seam(LapJoint, [2]float64{6, 6}, steel(), 2600, 6, 18, 20), 1, steels},
		{"steel lap 2", seam(LapJoint, [2]float64{2, 2}, steel(), 1545, 8, 9, 20), 0.8, steels},
		{"copper butt 5", seam(ButtJoint, [2]float64{5, 5}, copper(), 5287, 8, 20.1, 100), 1.4, coppers},
		{"copper butt 12", seam(ButtJoint, [2]float64{12, 12}, copper(), 5925, 5, 35.02, 250), 1.6, coppers},
	}
	for _, c := range someCases(cases) {
		s := steadySolid(c.in, c.fine)
		r := solved(t, c.in)
		for i, p := range s.slabs {
			member := i
			if len(s.slabs) == 2 {
				member = 1 - i
			}
			peak := p.peaks(0)
			from := 0
			if i == 0 {
				from = s.row
			}
			wet, top := reach(p.y, peak, from, c.in.Filler.Toe), slices.Max(peak)
			dw, dr := r.Wet[member]/wet-1, (r.Skin[member]-c.in.Start)/(top-c.in.Start)-1
			t.Logf("%s, member %d: wet %.3f, reference %.3f, %+.1f %%; peak %.0f, %.0f, %+.1f %% of rise", c.name,
				member, r.Wet[member], wet, 100*dw, r.Skin[member], top, 100*dr)
			if dw < c.wetLow || dw > c.wetHigh || dr < c.riseLow || dr > c.riseHigh {
				t.Errorf("%s, member %d", c.name, member)
			}
		}
	}
}
