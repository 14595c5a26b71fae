package plate

import "math"

// grid is the grid of a table: count points in a logarithm from low on, step apart.
type grid struct {
	low, step float64
	count     int
}

// The tables' grids. eta is on an even grid of its inverse hyperbolic sine: dense at the line, wide far from
// it.
var (
	gridP     = grid{math.Log(0.01), math.Log(62.0) / (nP - 1), nP}
	gridM     = grid{math.Log(0.5), math.Log(2.6e6) / (nM - 1), nM}
	gridDelta = grid{math.Log(0.2), math.Log(150.0) / (nDelta - 1), nDelta}
	stepEta   = 0.3
)

const (
	nP, nM, nDelta, nEta = 11, 12, 18, 15
	perUnit              = 1e3 // the tables hold logarithms in thousandths
)

// Lift is the ratio by which the peak of a moving source on a plate is above that of a fast source, as a
// function of the distance from the line.
type Lift struct{ log [nEta]float64 }

// NewLift makes the ratio 2p·E/F of the moving source's peaks E to the fast source's F from tables of both: p =
// vσ/2a; m is the variance of the fast source's time over (σ²/a)²; delta = d/σ. For p from 0.01 to 0.6, m from
// 0.5 to 1e6 and delta from 0.2, where a plate is thin already, to 30 it is within 0.6 % of the integrals up to
// eta 5, and within 1.5 % beyond; outside these ranges it uses the nearest value in range.
func NewLift(p, m, delta float64) Lift {
	var l Lift
	ip, wp := gridP.weights(p)
	im, wm := gridM.weights(m)
	id, wd := gridDelta.weights(delta)
	for i := range 4 {
		for j := range 4 {
			e, f := wp[i]*wd[j]/perUnit, wm[i]*wd[j]/perUnit
			rowE, rowF := &tableE[ip+i][id+j], &tableF[im+i][id+j]
			for n := range nEta {
				l.log[n] += e*float64(rowE[n]) - f*float64(rowF[n])
			}
		}
	}
	for n := range l.log {
		l.log[n] += math.Log(2 * p)
	}
	return l
}

// weights are the weights of the four points around a value in a cubic through them, and the first of the four.
func (g grid) weights(v float64) (first int, w [4]float64) {
	x := max(0, min(float64(g.count-1), (math.Log(v)-g.low)/g.step))
	first = max(0, min(g.count-4, int(x)-1))
	f := x - float64(first)
	return first, [4]float64{-(f - 1) * (f - 2) * (f - 3) / 6, f * (f - 2) * (f - 3) / 2,
		-f * (f - 1) * (f - 3) / 2, f * (f - 1) * (f - 2) / 6}
}

// At returns the ratio's logarithm at a distance eta over σ, by a cubic through four points.
func (l *Lift) At(eta float64) float64 {
	x := min(float64(nEta-1), math.Asinh(eta)/stepEta)
	i := max(0, min(nEta-4, int(x)-1))
	f := x - float64(i)
	a, b, c := f-1, f-2, f-3
	return -a*b*c/6*l.log[i] + f*b*c/2*l.log[i+1] - f*a*c/2*l.log[i+2] + f*a*b/6*l.log[i+3]
}
