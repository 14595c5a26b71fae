package section

import "math"

// trough is a shape with a length along the travel.
type trough struct {
	*shape
	in            Input
	w             Workspace // for the filler's conductivity
	nx, n         int
	dx            float64
	base          [2]curve
	filler        curve
	e, t, k, q    []float64
	laid          []float64 // share of the metal that is laid, by slice
	along         []float64
	ahead, moved  float64
	volume, fills []float64 // of a cell with base, and with filler when all is laid, mm3
}

func newTrough(in Input, s *shape, behind, ahead, fine float64) *trough {
	g := &trough{shape: s, in: in, ahead: ahead, dx: 0.9 * fine, n: len(s.cell), filler: in.Filler.curve()}
	g.w.filler, g.w.stir = g.filler, in.Filler.Stir
	g.nx = int((behind + ahead) / g.dx)
	g.base = [2]curve{in.Base[0].curve(), in.Base[1].curve()}
	size := g.nx * g.n
	g.e, g.t, g.k, g.q = make([]float64, size), make([]float64, size), make([]float64, size), make([]float64, size)
	g.laid, g.along = make([]float64, g.nx), make([]float64, g.nx)
	g.volume, g.fills = make([]float64, g.n), make([]float64, g.n)
	for c, at := range s.cell {
		if s.kind[c] == fillerCell {
			g.fills[c] = s.metal[c] * g.dx
		} else {
			g.volume[c] = g.dx * s.dy[at[0]] * s.dz[at[1]]
		}
	}
	for i := range g.nx {
		g.start(i)
	}
	return g
}

func (g *trough) curve(c int) *curve {
	if g.kind[c] == blockCell {
		return &g.base[0]
	}
	return &g.base[1]
}

func (g *trough) start(i int) {
	g.laid[i] = 0
	for c := range g.n {
		h, _ := g.curve(c).heat(g.in.Start)
		g.t[i*g.n+c], g.e[i*g.n+c] = g.in.Start, h*g.volume[c]
	}
}

// run lets the arc travel for some seconds in steps of dt.
func (g *trough) run(seconds, dt float64) {
	for range int(seconds / dt) {
		for g.moved >= 0 {
			g.moved -= g.dx
			copy(g.e[g.n:], g.e)
			copy(g.t[g.n:], g.t)
			copy(g.laid[1:], g.laid)
			g.start(0)
		}
		total := 0.0
		for i := range g.along {
			x := (float64(i)+1.5)*g.dx - g.ahead + g.moved
			g.along[i] = math.Exp(-x * x / (2 * g.in.Sigma * g.in.Sigma))
			total += g.along[i]
		}
		g.temperatures()
		g.conduct()
		for i := range g.along {
			g.slice(i, g.along[i]/total, dt)
		}
		g.moved += g.in.Travel * dt
	}
	g.temperatures()
}

func (g *trough) temperatures() {
	for i := range g.nx {
		for c := range g.n {
			a := i*g.n + c
			g.q[a] = 0
			metal := g.fills[c] * g.laid[i]
			if g.kind[c] == fillerCell && metal < 1e-6*g.fills[c] {
				g.t[a], g.k[a] = g.in.Start, 0
				continue
			}
			g.t[a], _ = invert(g.e[a], g.t[a], g.volume[c], metal, g.curve(c), &g.filler)
			if g.kind[c] == fillerCell {
				g.k[a] = g.w.fillerConductivity(g.t[a]) * min(1, g.laid[i])
			} else {
				g.k[a] = g.curve(c).conductivity(g.t[a])
			}
		}
	}
}

func (g *trough) conduct() {
	for i := range g.nx {
		o := i * g.n
		for _, l := range g.links {
			a, b := o+l.a, o+l.b
			if g.k[a] == 0 || g.k[b] == 0 {
				continue
			}
			f := g.dx * l.long / (l.x/g.k[a] + l.y/g.k[b]) * (g.t[a] - g.t[b])
			g.q[a] -= f
			g.q[b] += f
		}
		for c, at := range g.cell {
			if g.air[c] > 0 {
				g.q[o+c] -= g.in.Loss * g.dx * g.air[c] * (g.t[o+c] - g.in.Start)
			}
			if i+1 < g.nx {
				a, b := o+c, o+g.n+c
				f := (g.k[a] + g.k[b]) / 2 * g.dy[at[0]] * g.dz[at[1]] / g.dx * (g.t[a] - g.t[b])
				if g.k[a] == 0 || g.k[b] == 0 {
					f = 0
				}
				g.q[a] -= f
				g.q[b] += f
			}
		}
	}
}

// slice lays the metal and the heat of one step.
func (g *trough) slice(i int, along, dt float64) {
	o := i * g.n
	if along > 1e-9 {
		g.laid[i] += along * g.in.Travel * dt / g.dx
		f := min(1, g.laid[i])
		for c, share := range g.share {
			g.q[o+c] += g.in.Heat * g.in.Travel * along * ((1-f)*share + f*g.over[c])
		}
	}
	for c := range g.n {
		g.e[o+c] += g.q[o+c] * dt
	}
}

// peaks are the highest temperatures along x of some cells.
func (g *trough) peaks(cells []int) (list []float64) {
	for _, c := range cells {
		hot := 1
		for i := 1; i < g.nx-1; i++ {
			if g.t[i*g.n+c] > g.t[hot*g.n+c] {
				hot = i
			}
		}
		before, here, after := g.t[(hot-1)*g.n+c], g.t[hot*g.n+c], g.t[(hot+1)*g.n+c]
		if bend := after - 2*here + before; bend < 0 {
			here -= (after - before) * (after - before) / (8 * bend)
		}
		list = append(list, here)
	}
	return list
}

// from is the distance of some cells' middles from the corner, mm.
func (s *shape) from(cells []int, up bool) (list []float64) {
	for _, c := range cells {
		if up {
			list = append(list, s.z[s.cell[c][1]])
		} else {
			list = append(list, s.y[s.cell[c][0]])
		}
	}
	return list
}
