package thinsheet

import "math"

// column returns the last cell whose middle is not ahead of the arc, and the arc's fractional distance to the
// next.
func (s *Sheet) column() (i int, part float64) {
	x := s.g.xc
	i = s.g.fineFrom
	for i < len(x)-2 && x[i+1] <= s.arcX {
		i++
	}
	return i, (s.arcX - x[i]) / (x[i+1] - x[i])
}

// under interpolates a value at the arc by the cubic through the four columns around it. A straight line would
// cut off some kelvin of the peak whenever the arc is between two columns.
func (s *Sheet) under(at func(i int) float64) float64 {
	i, p := s.column()
	return -p*(p-1)*(p-2)/6*at(i-1) + (p+1)*(p-1)*(p-2)/2*at(i) - (p+1)*p*(p-2)/2*at(i+1) + (p+1)*p*(p-1)/6*at(i+2)
}

// Edge is the temperature of an arm's root edge under the arc, C. If the edge is inside a row it is a weighted
// mean of that row's, by its share of base metal, and the next row's, so that nothing jumps as a gap widens.
func (s *Sheet) Edge(arm int) float64 {
	return s.under(func(i int) float64 { return s.edge(arm, i) })
}

func (s *Sheet) edge(arm, i int) float64 {
	g := s.g
	inside := s.toward(arm, g.cut, i, s.in.Gap/2)
	if g.bare == 0 {
		return inside
	}
	return (1-g.bare)*inside + g.bare*s.toward(arm, g.cut+1, i, s.in.Gap/2)
}

// toward is the temperature at a distance from the joint's line, mm, on the parabola through a row and the next
// one whose slope at the row's nearer face matches the heat flow there.
func (s *Sheet) toward(arm, row, i int, y float64) float64 {
	g, c := s.g, s.index(arm, row, i)
	d := g.d
	t1, t2 := s.t[c], s.t[c+g.nx]
	slope := 0.0
	switch {
	case !(s.kh[c] > 0):
	case row > 0:
		slope = s.gy[c-g.nx] * (t1 - s.t[c-g.nx]) / (s.kh[c] * g.dx[i])
	case !s.in.Mirror:
		slope = s.gj[arm*g.nx+i] * (t1 - s.joined(i)) / (s.kh[c] * g.dx[i])
	}
	bend := (t2 - t1 - slope*d) / (2 * d * d)
	from := y - g.yc[row]
	return t1 + (slope+bend*(d+from))*from
}

// Centre is the temperature of the joint's line under the arc, C; the starting temperature while there is no
// metal.
func (s *Sheet) Centre() float64 {
	return s.under(s.middle)
}

func (s *Sheet) middle(i int) float64 {
	if !s.in.Mirror {
		return s.joined(i)
	}
	nx := s.g.nx
	if s.mb[i] == 0 && s.mf[i] == 0 {
		return s.in.Start
	}
	if s.mb[i+nx] == 0 && s.mf[i+nx] == 0 {
		return s.t[i]
	}
	return s.t[i] - (s.t[i+nx]-s.t[i])/8
}

// joined is the temperature of the joint's line in one column: from the conductances to it, with the curvature
// of the temperature behind the first row.
func (s *Sheet) joined(i int) float64 {
	nx, ny := s.g.nx, s.g.ny
	sum, heat := 0.0, 0.0
	for k := range s.in.Arms {
		g := s.gj[k*nx+i]
		c := k*ny*nx + i
		sum += g
		heat += g * s.t[c]
		if s.mb[c+nx] > 0 || s.mf[c+nx] > 0 {
			heat -= g * (s.t[c+nx] - s.t[c]) / 8
		}
	}
	if sum == 0 {
		return s.in.Start
	}
	return heat / sum
}

// Puddle is the length of the liquid around the arc on the joint's line, mm: from where the temperature falls
// to the filler's solidus behind the arc to where it does ahead. 0 if the middle is frozen.
func (s *Sheet) Puddle() float64 {
	solidus := s.in.Filler.Solidus
	i, part := s.column()
	if part > 0.5 {
		i++
	}
	if s.middle(i) < solidus {
		return 0
	}
	return s.reach(i, 1, solidus) + s.reach(i, -1, solidus)
}

// reach walks from a liquid column to where the line is frozen and returns that point's distance from the arc.
func (s *Sheet) reach(i, by int, solidus float64) float64 {
	x := s.g.xc
	t := s.middle(i)
	for {
		n := i + by
		if n < 0 || n >= s.g.nx {
			return math.Abs(x[i] - s.arcX)
		}
		next := s.middle(n)
		if next < solidus {
			at := x[i] + (x[n]-x[i])*(t-solidus)/(t-next)
			return max(0, (at-s.arcX)*float64(by))
		}
		i, t = n, next
	}
}

// wide is how far from an arm's root edge the filler's solidus is reached under the arc, mm.
func (s *Sheet) wide(arm int) float64 {
	g, solidus := s.g, s.in.Filler.Solidus
	i, part := s.column()
	if part > 0.5 {
		i++
	}
	edge := s.in.Gap / 2
	y, t := edge, s.Edge(arm)
	if t < solidus {
		return 0
	}
	for j := g.cut; j < g.ny; j++ {
		if g.yc[j] <= y {
			continue
		}
		next := s.t[s.index(arm, j, i)]
		if next < solidus {
			return y + (g.yc[j]-y)*(t-solidus)/(t-next) - edge
		}
		y, t = g.yc[j], next
	}
	return y - edge
}

// hottest is the highest temperature of an arm's base metal where the arc reaches it, C. The root edge's own
// row, which may be mostly filler, is left to Edge.
func (s *Sheet) hottest(arm int) float64 {
	most := math.Inf(-1)
	for _, r := range s.lit {
		if j := r.row % s.g.ny; r.row/s.g.ny != arm || s.g.share(j) < 1 {
			continue
		}
		c := r.row * s.g.nx
		for i := s.col0; i < s.col1; i++ {
			most = max(most, s.t[c+i])
		}
	}
	return most
}

// Hottest is the highest temperature along the seam in each row of an arm, C, with the rows' distances from the
// joint, mm.
func (s *Sheet) Hottest(arm int) (y, t []float64) {
	g := s.g
	for j := g.cut; j < g.ny; j++ {
		most := math.Inf(-1)
		for i := range g.nx {
			most = max(most, s.t[s.index(arm, j, i)])
		}
		y, t = append(y, g.yc[j]-float64(s.in.Gap)/2), append(t, most)
	}
	return y, t
}

// At is the temperature of an arm at the point x ahead of the arc and y from the joint.
func (s *Sheet) At(arm int, x, y float64) float64 {
	g := s.g
	i := interval(g.xc, x+s.arcX)
	j := interval(g.yc, y)
	px := (x + s.arcX - g.xc[i]) / (g.xc[i+1] - g.xc[i])
	py := (y - g.yc[j]) / (g.yc[j+1] - g.yc[j])
	t := func(j, i int) float64 { return s.t[s.index(arm, j, i)] }
	return (t(j, i)*(1-px)+t(j, i+1)*px)*(1-py) + (t(j+1, i)*(1-px)+t(j+1, i+1)*px)*py
}

func interval(list []float64, v float64) int {
	i := 0
	for i < len(list)-2 && list[i+1] <= v {
		i++
	}
	return i
}
