package calc

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
)

func TestZZ4(t *testing.T) {
	h := uint64(1)
	for _, c := range []byte("TestBorders") {
		h = h*1099511628211 + uint64(c)
	}
	for _, seed := range []uint64{11, 12} {
		r := rand.New(rand.NewPCG(seed, h))
		for range 2000 {
			j := borderJob(r)
			is := func(m string, t float64) bool { return j.Metal == m && math.Abs(j.Thickness.V-t) < 0.006*math.Max(1, t) }
			if !(is("grey-iron", 2.04) && j.Joint == "corner" || is("grey-iron", .66) && j.Joint == "butt" || is("electro-zinc", 1.16) && j.Joint == "butt" && j.Metal2 == "ductile-iron" || is("grey-iron", 4.32) && j.Joint == "butt" || is("grey-iron", 5.76) && j.Joint == "tee") {
				continue
			}
			fmt.Println(j.Metal, j.Thickness.V, j.Metal2, j.Thickness2.V, j.Joint, j.Gap.V, j.Backing, j.Wire.V, j.Mode, j.Feed.V, j.Travel.V, j.Position)
			for k := range 13 {
				w := j
				w.Feed.V *= 1 + 0.005*float64(k-5)
				c, err := Solve(w)
				if err != nil {
					fmt.Println(err)
					continue
				}
				laid := Laid(&c)
				p, err := ProbeOf(t.Context(), &laid)
				if err != nil {
					fmt.Println(err)
					continue
				}
				s, _ := p.state(0, false)
				fmt.Printf("   %.3f %s skin %.1f core %.1f solid %.0f melt %.0f wet %.2f\n", w.Feed.V, c.Zone, s.skin, s.core, p.margins.solid, p.margins.melt, s.wet)
			}
		}
	}
}
