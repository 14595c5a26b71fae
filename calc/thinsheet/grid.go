package thinsheet

import "math"

// grid is the plane divided into cells: x along the seam with the arc near 0, y from the joint outward, the
// same for every arm.
type grid struct {
	xf, yf   []float64 // faces
	xc, yc   []float64 // middles
	dx, dy   []float64
	ix, iy   []float64 // 1/dx, 1/dy
	nx, ny   int
	cut      int     // row that contains the root edge; those before it have no base metal
	bare     float64 // share of that row's width without base metal, below one
	fineFrom int     // first column of the uniform part
	d        float64 // uniform cell along x
}

const growth = 1.25

// newGrid covers a window of the lengths ahead, behind and aside; within near of the arc cells have side d. A
// root edge need not be on a face: the row that contains it has less base metal. So nothing jumps as a gap
// widens, and no row is so narrow that its temperature runs away from its neighbours in a step.
func newGrid(d, near, gap, ahead, behind, aside float64) *grid {
	g := &grid{d: d}
	n := int(math.Ceil(near/d - 1e-9))
	back := graded(d, float64(n)*d, behind)
	for i := len(back) - 1; i >= 0; i-- {
		g.xf = append(g.xf, -back[i])
	}
	g.fineFrom = len(g.xf)
	for i := -n; i <= n; i++ {
		g.xf = append(g.xf, float64(i)*d)
	}
	g.xf = append(g.xf, graded(d, float64(n)*d, ahead)...)

	half := gap / 2
	g.cut = int(half/d + 1e-9)
	g.bare = max(0, half/d-float64(g.cut))
	n += int(math.Ceil(half/d - 1e-9))
	for j := 0; j <= n; j++ {
		g.yf = append(g.yf, float64(j)*d)
	}
	g.yf = append(g.yf, graded(d, float64(n)*d, aside)...)
	g.xc, g.dx, g.ix = middles(g.xf)
	g.yc, g.dy, g.iy = middles(g.yf)
	g.nx, g.ny = len(g.dx), len(g.dy)
	return g
}

// graded returns faces beyond from, each cell a quarter longer than the one before, to at least end.
func graded(d, from, end float64) []float64 {
	var list []float64
	for x, w := from, d; x < end; {
		w *= growth
		x += w
		list = append(list, x)
	}
	return list
}

func middles(f []float64) (c, d, inv []float64) {
	for i := 1; i < len(f); i++ {
		c, d, inv = append(c, (f[i]+f[i-1])/2), append(d, f[i]-f[i-1]), append(inv, 1/(f[i]-f[i-1]))
	}
	return c, d, inv
}

// share is the share of a row's width that is base metal.
func (g *grid) share(row int) float64 {
	switch {
	case row < g.cut:
		return 0
	case row == g.cut:
		return 1 - g.bare
	}
	return 1
}
