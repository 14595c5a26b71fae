package section

import "math"

// residual is what the energy balance of an audited workspace misses, relative.
func (w *Workspace) residual() float64 {
	held := 0.0
	for i := range w.n {
		a := &w.arms[i]
		for j := range a.in() {
			p := &a.col[j]
			for l := range a.layers {
				held += p.e[l] + p.cap[l]*(p.next[l]-p.t[l])
			}
		}
	}
	return (held - w.original - w.energy + w.lost) / (w.energy + math.Abs(w.original))
}
