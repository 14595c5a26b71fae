package thinsheet

import "math"

// Sheet is a joint at one moment. Cells are stored row by row, x fastest, the rows of one arm after another.
type Sheet struct {
	in   Input
	g    *grid
	pair []pair // of each arm
	rows int
	cell []float64 // area, mm2

	e      []float64 // areal enthalpy over 20 C, J/mm2
	mb, mf []float64 // g/mm2
	t      []float64 // C
	seg    []int32   // segment of the arm's table
	a, b   []float64 // t = a + b·e while lo <= e < hi
	lo, hi []float64
	kh     []float64 // W/K
	gx, gy []float64 // face toward the next column and row, W/K
	gj     []float64 // toward the joint, first row of each arm

	rate, rate0    []float64 // W/mm2
	old, e0, spare []float64
	flux, jt       []float64 // one row
	stable         float64   // longest explicit step, s
	stages         int       // of the last step

	arcX   float64 // position of the arc in the grid's window, mm
	lit    []litRow
	col0   int // columns that the arc reaches
	col1   int
	fx     []float64
	arcFor float64 // position for which fx was computed

	moved float64 // distance that the window has moved, mm
	now   float64 // s
	added float64 // J, heat that was added
	lost  float64 // J, heat lost from the faces
	left  float64 // J, heat that left at the window's rear end, less that of the cells that entered
	laid  float64 // g, filler
	gone  float64 // g, filler that left the window
	began float64 // J, at the start
}

// litRow is a row that the arc reaches, with its share of the Gaussian.
type litRow struct {
	row   int
	share float64
}

// New lays a joint out at its starting temperature.
func New(in Input) (*Sheet, error) {
	if err := in.check(); err != nil {
		return nil, err
	}
	in = in.sized()
	return lay(in, newGrid(in.Cell, in.Near, in.Gap, in.Ahead, in.Behind, in.Aside)), nil
}

// lay puts a joint on a grid.
func lay(in Input, g *grid) *Sheet {
	s := &Sheet{in: in, g: g}
	s.rows = g.ny * len(in.Arms)
	n := s.rows * g.nx
	for _, f := range []*[]float64{&s.cell, &s.e, &s.mb, &s.mf, &s.t, &s.a, &s.b, &s.lo, &s.hi, &s.kh, &s.gx, &s.gy,
		&s.rate, &s.rate0, &s.old, &s.e0, &s.spare} {
		*f = make([]float64, n)
	}
	s.seg = make([]int32, n)
	s.gj = make([]float64, len(in.Arms)*g.nx)
	s.flux, s.jt, s.fx = make([]float64, g.nx), make([]float64, g.nx), make([]float64, g.nx)
	for k := range in.Arms {
		arm := &in.Arms[k]
		s.pair = append(s.pair, join(&arm.Base, &in.Filler, in.Stir))
		h0, _ := arm.Base.at(in.Start)
		for j := range g.ny {
			for i := range g.nx {
				c := s.index(k, j, i)
				s.cell[c] = g.dx[i] * g.dy[j]
				s.mb[c] = arm.Thick * arm.Base.Density * g.share(j)
				s.e[c] = s.mb[c] * h0
			}
		}
	}
	s.light()
	s.settle(0, n)
	s.began = s.Energy()
	return s
}

func (s *Sheet) index(arm, j, i int) int { return (arm*s.g.ny+j)*s.g.nx + i }

// light finds the rows that the arc reaches and their shares, which add up to one.
func (s *Sheet) light() {
	g := s.g
	sum := 0.0
	for k := range s.in.Arms {
		a := &s.in.Arms[k]
		if !a.Lit {
			continue
		}
		for j := range g.ny {
			if g.yf[j]-a.Aim > 4.5*a.Sigma {
				break
			}
			share := normal(g.yf[j]-a.Aim, g.yf[j+1]-a.Aim, a.Sigma)
			s.lit = append(s.lit, litRow{k*g.ny + j, share})
			sum += share
		}
	}
	for i := range s.lit {
		s.lit[i].share /= sum
	}
	s.arcFor = math.NaN()
}

// normal is the share of a Gaussian between two distances from its middle.
func normal(from, to, sigma float64) float64 {
	r := 1 / (sigma * math.Sqrt2)
	return (math.Erf(to*r) - math.Erf(from*r)) / 2
}

// sides is the number of equal halves that the sheet represents.
func (s *Sheet) sides() float64 {
	if s.in.Mirror {
		return 2
	}
	return 1
}

// Energy is the heat in the whole joint over 20 C, J.
func (s *Sheet) Energy() float64 {
	var sum, c float64 // compensated: the balance is checked to round-off
	for i, e := range s.e {
		y := e*s.cell[i] - c
		t := sum + y
		c = (t - sum) - y
		sum = t
	}
	return sum * s.sides()
}

// Filler is the filler in the window, g.
func (s *Sheet) Filler() float64 {
	sum := 0.0
	for i, m := range s.mf {
		sum += m * s.cell[i]
	}
	return sum * s.sides()
}

// Residual is the error of the energy balance, relative to the heat that was added.
func (s *Sheet) Residual() float64 {
	return (s.Energy() - s.began - s.added + s.lost + s.left) / max(s.added, math.Abs(s.began), 1e-300)
}

// Now is the time since the start, s.
func (s *Sheet) Now() float64 { return s.now }
