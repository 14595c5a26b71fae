package section

import (
	"math"
	"testing"
)

func bronzeWet() Filler {
	f := bronze()
	f.Toe = 970
	return f
}

func TestRegress(t *testing.T) {
	st := steel()
	copper := Material{K: 0.35, RhoC: 0.0038, Solidus: 1083, Liquidus: 1084, Latent: 205 * 8.94e-3}
	iron := Material{K: 0.040, RhoC: 0.0043, Solidus: 1150, Liquidus: 1200, Latent: 1.6}
	ss := Material{K: 0.021, RhoC: 0.0042, Solidus: 1400, Liquidus: 1450, Latent: 2}
	for _, c := range []struct {
		name       string
		joint      Joint
		t1, t2     float64
		m          Material
		p, v, a, s float64
		wet, skin  [2]float64
	}{
		{"steel butt 3", ButtJoint, 3, 3, st, 1777, 11.6, 6.74, 20, [2]float64{3.232, 3.232}, [2]float64{1567, 1567}},
		{"steel butt 3.01", ButtJoint, 3.01, 3.01, st, 1777, 11.6, 6.74, 20, [2]float64{3.232, 3.232}, [2]float64{1567, 1567}},
		{"steel butt 2.99", ButtJoint, 2.99, 2.99, st, 1777, 11.6, 6.74, 20, [2]float64{3.232, 3.232}, [2]float64{1567, 1567}},
		{"steel butt 6", ButtJoint, 6, 6, st, 1633, 10, 7.34, 20, [2]float64{2.979, 2.979}, [2]float64{1469, 1469}},
		{"steel butt 12", ButtJoint, 12, 12, st, 1633, 9, 8.15, 20, [2]float64{3.046, 3.046}, [2]float64{1467, 1467}},
		{"tee 6", TeeJoint, 6, 6, st, 3266, 6, 21.47, 20, [2]float64{5.850, 5.808}, [2]float64{2072, 2040}},
		{"lap .8 on 6", LapJoint, .8, 6, st, 1545, 8, 9.29, 20, [2]float64{5.013, 3.100}, [2]float64{1664, 1491}},
		{"iron 8", ButtJoint, 8, 8, iron, 2602, 7.5, 14.29, 150, [2]float64{4.626, 4.626}, [2]float64{1978, 1978}},
		{"stainless 6", ButtJoint, 6, 6, ss, 2000, 9, 9.59, 20, [2]float64{4.329, 4.329}, [2]float64{2042, 2042}},
		{"copper 5", ButtJoint, 5, 5, copper, 5287, 8, 20.1, 100, [2]float64{4.206, 4.206}, [2]float64{1753, 1753}},
		{"copper 12", ButtJoint, 12, 12, copper, 5925, 5, 35.02, 250, [2]float64{4.491, 4.491}, [2]float64{1917, 1917}},
	} {
		in := Input{Joint: c.joint, Thick: [2]float64{c.t1, c.t2}, Base: [2]Material{c.m, c.m}, Filler: bronzeWet(), Heat: c.p / c.v, Bead: c.a, Travel: c.v, Sigma: 1.8, Loss: 60e-6, Start: c.s}
		for _, f := range []float64{1, 3} {
			w := Workspace{finer: [2]float64{f, f}}
			r, err := w.Solve(&in)
			if err != nil {
				t.Fatal(err)
			}
			t.Logf("%s: wet %.3f %.3f (%.3f %.3f) skin %.0f %.0f (%.0f %.0f) %+.2f %% %+.2f %%; pool %.1f front %.2f steps %d", c.name, r.Wet[0], r.Wet[1], c.wet[0], c.wet[1], r.Skin[0], r.Skin[1], c.skin[0], c.skin[1],
				100*(r.Wet[0]/c.wet[0]-1), 100*(r.Skin[0]/c.skin[0]-1), r.PoolLength, r.PoolFront, r.Steps)
			_ = math.Pi
		}
	}
}
