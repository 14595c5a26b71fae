package section

import "math"

// residual is the error of an audited workspace's energy balance, relative.
func (w *Workspace) residual() float64 {
	held := 0.0
	for i := range w.n {
		a := &w.arms[i]
		for j := range a.in() {
			p := &a.col[j]
			for l := range a.layers {
				held += p.cell[l].e + p.cell[l].cap*(p.cell[l].next-p.cell[l].t)
			}
		}
	}
	return (held - w.original - w.energy + w.lost) / (w.energy + math.Abs(w.original))
}
