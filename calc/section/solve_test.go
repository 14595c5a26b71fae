package section

import (
	"math"
	"testing"
)

func steel() Material {
	return Material{K: SteelMean.K, RhoC: SteelMean.RhoC, Solidus: 1470, Liquidus: 1520, Latent: 250 * 7.85e-3,
		Steel: true}
}

func bronze() Filler {
	return Filler{K: 0.055, Stir: 2, RhoC: 0.43 * 8.53e-3, Latent: 210 * 8.53e-3, Solidus: 970, Liquidus: 1025,
		Toe: 970}
}

// lap is a short-arc lap in 1.5 mm steel: 93 A, 14.8 V, .035 in wire at 250 in/min.
func lap(travel float64) Input {
	return Input{Joint: LapJoint, Thick: [2]float64{1.5, 1.5}, Base: [2]Material{steel(), steel()}, Filler: bronze(),
		Heat: 0.84 * 93 * 14.8 / travel, Bead: math.Pi / 4 * 0.889 * 0.889 * 105.83 * 0.93 / travel, Travel: travel,
		Sigma: 1.8, Loss: 60e-6, Start: 20, Lowest: 419.53}
}

// Figures of this model's prototype on the same lap, with wide limits: a check against another program's
// arithmetic, not a target.
func TestLapAgainstPrototype(t *testing.T) {
	w := new(Workspace)
	for _, c := range []struct{ v, wu, wl, lower, upper, peakU, peakP float64 }{
		{4, 5.21, 5.05, 54, 38, 1503, 1486}, {6, 3.99, 3.70, 64, 42, 1370, 1318}, {8, 3.28, 2.80, 75, 47, 1316, 1172},
		{10, 2.79, 2.30, 83, 50, 1247, 1086},
	} {
		in := lap(c.v)
		r, err := w.Solve(&in)
		if err != nil {
			t.Fatal(err)
		}
		toes, err := Lap(in.Bead, r.Wet[0], r.Wet[1], 1.5, 0, 0)
		if err != nil {
			t.Error(err)
		}
		t.Logf("v %g: wet %.2f/%.2f (%.2f/%.2f) angle %.0f/%.0f (%.0f/%.0f) peak %.0f/%.0f (%.0f/%.0f) core "+
			"%.0f/%.0f melted %.2f/%.2f boiled %.2f/%.2f steps %d",
			c.v, r.Wet[0], r.Wet[1], c.wu, c.wl, toes.Second*57.2958, toes.First*57.2958, c.lower, c.upper, r.Skin[0],
			r.Skin[1], c.peakU, c.peakP,
			r.Core[0], r.Core[1], r.Front[0].Reach(419.53), r.Front[1].Reach(419.53), r.Front[0].Reach(907),
			r.Front[1].Reach(907), r.Steps)
		within := func(what string, got, want, share float64) {
			if math.Abs(got-want) > share*want {
				t.Errorf("v %g: %s %.3g, prototype %.3g", c.v, what, got, want)
			}
		}
		within("upper", r.Wet[0], c.wu, 0.15)
		within("lower", r.Wet[1], c.wl, 0.15)
	}
}

func BenchmarkSection(b *testing.B) {
	thin := lap(6)
	thin.Lowest = 0
	butt := thin
	butt.Joint = ButtJoint
	for _, c := range []struct {
		name string
		in   Input
	}{
		{"lap 1.5 with zinc", lap(6)}, {"lap 1.5", thin}, {"butt 1.5", butt},
		{"lap 6", seam(LapJoint, [2]float64{6, 6}, steel(), 3266, 6, 21.47, 20)},
		{"tee 6", seam(TeeJoint, [2]float64{6, 6}, steel(), 3266, 6, 21.47, 20)},
		{"butt 6", seam(ButtJoint, [2]float64{6, 6}, steel(), 1633, 10, 7.34, 20)},
		{"unequal butt 6 on 8", seam(ButtJoint, [2]float64{6, 8}, steel(), 1633, 10, 7.34, 20)},
		{"copper butt 12", seam(ButtJoint, [2]float64{12, 12}, copper(), 5925, 5, 35.02, 250)},
		{"copper tee 8", seam(TeeJoint, [2]float64{8, 8}, copper(), 5925, 5, 35.02, 250)},
	} {
		b.Run(c.name, func(b *testing.B) {
			w := new(Workspace)
			b.ReportAllocs()
			for b.Loop() {
				if _, err := w.Solve(&c.in); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
