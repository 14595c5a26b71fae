package section

// A three-dimensional reference: finite volumes that travel with the arc, explicit in time, run until the field
// is steady. It shares the materials, the arc and the lumped bead with the section, but none of its
// simplifications: fast source, smear, lift, few layers.

// slab is one plate: x along the travel, y across, z from the bead's face down.
type slab struct {
	nx, ny, nz int
	dx         float64
	dy, y, dz  []float64
	base       curve
	share      []float64 // of the source by y
	e, t, k, q []float64 // by cell; q is the heat that flows in, W
	filler     []float64 // height by column, mm
}

// solid is one or two slabs under one arc; the second, if any, lies with its edge on the first at y 0, like a
// lap's upper sheet.
type solid struct {
	in     Input
	w      Workspace // for the filler's conductivity
	slabs  []*slab
	row    int // index of the first slab's first column beyond y 0
	along  []float64
	ahead  float64 // mm from the front of the window to the arc
	moved  float64 // mm since the last shift, less a cell
	filler curve
}

// spaced makes cells that grow from a width by a ratio to a greatest width, until a length is covered.
func spaced(from, ratio, most, length float64) (d []float64) {
	for sum := 0.0; sum < length; {
		d = append(d, from)
		sum += from
		from = min(most, from*ratio)
	}
	return d
}

// newSolid lays out a case; fine scales every cell.
func newSolid(in Input, fine, behind, ahead, aside float64) *solid {
	s := &solid{in: in, filler: in.Filler.curve(), ahead: ahead}
	s.w.filler, s.w.stir = s.filler, in.Filler.Stir
	dx := 0.9 * fine
	nx := int((behind + ahead) / dx)
	across := spaced(0.45*fine, 1.12, 4, aside)
	depth := func(thick float64) []float64 {
		d := spaced(0.22*fine, 1.35, 1.6, thick)
		sum := 0.0
		for _, v := range d {
			sum += v
		}
		for i := range d {
			d[i] *= thick / sum
		}
		return d
	}
	gauss := func(y, dy, centre float64) float64 {
		return normal((y+dy/2-centre)/in.Sigma) - normal((y-dy/2-centre)/in.Sigma)
	}
	add := func(member int, dy []float64, from float64, lit func(y float64) bool, centre float64) *slab {
		p := &slab{nx: nx, ny: len(dy), dx: dx, dy: dy, dz: depth(in.Thick[member]), base: in.Base[member].curve()}
		p.nz = len(p.dz)
		edge := from
		for _, d := range dy {
			p.y = append(p.y, edge+d/2)
			p.share = append(p.share, 0)
			if lit(edge + d/2) {
				p.share[len(p.share)-1] = gauss(edge+d/2, d, centre)
			}
			edge += d
		}
		cells := nx * p.ny * p.nz
		p.e, p.t, p.k, p.q = make([]float64, cells), make([]float64, cells), make([]float64, cells), make([]float64,
			cells)
		p.filler = make([]float64, nx*p.ny)
		for c := range cells {
			p.start(c, in.Start)
		}
		s.slabs = append(s.slabs, p)
		return p
	}
	all := func(float64) bool { return true }
	if in.Joint == LapJoint {
		two := make([]float64, 0, 2*len(across))
		length := 0.0
		for i := len(across) - 1; i >= 0; i-- {
			two = append(two, across[i])
			length += across[i]
		}
		s.row = len(two)
		two = append(two, across...)
		add(1, two, -length, func(y float64) bool { return y > 0 }, in.Aim)
		add(0, across, 0, all, -in.Aim)
		s.normal()
	} else {
		add(0, across, 0, all, 0)
		s.normal()
		for i := range s.slabs[0].share {
			s.slabs[0].share[i] /= 2 // the other half is its mirror
		}
	}
	s.along = make([]float64, nx)
	return s
}

func (s *solid) normal() {
	sum := 0.0
	for _, p := range s.slabs {
		for _, v := range p.share {
			sum += v
		}
	}
	for _, p := range s.slabs {
		for i := range p.share {
			p.share[i] /= sum
		}
	}
}

func (p *slab) volume(c int) float64 {
	return p.dx * p.dy[c/p.nz%p.ny] * p.dz[c%p.nz]
}

func (p *slab) start(c int, t float64) {
	h, _ := p.base.heat(t)
	p.t[c], p.e[c] = t, h*p.volume(c)
}
