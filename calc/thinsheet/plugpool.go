package thinsheet

import "math"

// pool holds the rings of a plug as they warm up.
type pool struct {
	in         *Plug
	hole       int       // rings inside the hole
	edge, area []float64 // mm, mm2
	arc        []float64 // W on each ring
	below, top layer
	bronze     float64 // height of the bronze in the hole, mm

	last, spare [2][]float64 // heat of both layers one stage ago
}

// layer is a row of rings of one metal; in the hole it carries the bronze.
type layer struct {
	pair
	thick, mass float64   // of the metal, mm and g/mm2
	e, t        []float64 // heat over 20 C, J/mm2, and temperature, C
	kb, kf      []float64 // conductivities of metal and bronze at that temperature, W/mmK
	seg         []int
}

func newPool(in *Plug) *pool {
	p := &pool{in: in, edge: []float64{0}}
	p.hole = max(plugRings, int(math.Ceil(plugFine*in.Hole/2/in.Spread)))
	quick := 0.0 // mm2/s, of the sheets when cold
	for _, m := range [...]*Material{&in.Top, &in.Below} {
		quick = max(quick, m.K[0]*(m.T[1]-m.T[0])/(m.Density*(m.H[1]-m.H[0])))
	}
	far := in.Hole/2 + in.Led + 4*in.Spread + 4*math.Sqrt(2*quick*in.Seconds)
	w := in.Hole / 2 / float64(p.hole)
	for i := 0; p.edge[i] < far || i <= p.hole+2; i++ {
		if i >= p.hole {
			w *= plugWider
		}
		p.edge = append(p.edge, p.edge[i]+w)
		p.area = append(p.area, math.Pi*(p.edge[i+1]*p.edge[i+1]-p.edge[i]*p.edge[i]))
	}
	n := len(p.area)
	p.light()
	p.below = newLayer(&in.Below, &in.Filler, in.Stir, in.Lower, n, in.Start)
	p.top = newLayer(&in.Top, &in.Filler, in.Stir, in.Upper, n, in.Start)
	return p
}

func newLayer(m, filler *Material, stir, thick float64, n int, start float64) layer {
	l := layer{pair: join(m, filler, stir), thick: thick, mass: thick * m.Density, seg: make([]int, n)}
	for _, row := range [...]*[]float64{&l.e, &l.t, &l.kb, &l.kf} {
		*row = make([]float64, n)
	}
	h, _ := m.at(start)
	for i := range l.e {
		l.e[i] = l.mass * h
	}
	return l
}

// light distributes the arc's power, less that for melting the filler: a Gaussian that moves on its circle.
func (p *pool) light() {
	in, sum := p.in, 0.0
	for i, area := range p.area {
		r, q := (p.edge[i]+p.edge[i+1])/2, 0.0
		for k := range plugAround {
			away := r*r + in.Led*in.Led - 2*r*in.Led*math.Cos((float64(k)+0.5)/plugAround*math.Pi)
			q += math.Exp(-away / (2 * in.Spread * in.Spread))
		}
		p.arc = append(p.arc, q*area)
		sum += q * area
	}
	for i := range p.arc {
		p.arc[i] *= (in.Power - in.melting()) / sum
	}
}

// plugSteps is the number of steps in which a hole is filled. s stages of Legendre's polynomials make one step
// as long as (s²+s)/2 plain ones (Meyer, Balsara and Aslam 2014, RKL1, memory high).
const plugSteps = 24

// fill lets the arc burn until the hole is full.
func (p *pool) fill() {
	dt := p.in.Seconds / plugSteps
	stages := max(2, math.Ceil((math.Sqrt(1+8*dt/p.step())-1)/2))
	whole := p.in.Upper + p.in.Crown
	liquid, _ := p.in.Filler.at(p.in.Filler.Liquidus)
	for i := range plugSteps {
		// The bronze is level while it is liquid, and brings this heat along.
		p.bronze = whole * float64(i+1) / plugSteps
		for ring := range p.hole {
			p.below.e[ring] += whole / plugSteps * p.in.Filler.Density * liquid
		}
		p.work(dt, stages)
	}
	p.settle()
}

// work lets arc and conduction act for dt, s.
func (p *pool) work(dt, stages float64) {
	layers := [...]*layer{&p.below, &p.top}
	share := 2 / (stages * (stages + 1))
	for i, l := range layers {
		p.last[i] = append(p.last[i][:0], l.e...)
	}
	p.settle()
	p.advance(share * dt)
	for j := 2.0; j <= stages; j++ {
		mu, nu := (2*j-1)/j, (1-j)/j
		p.settle()
		for i, l := range layers {
			p.spare[i] = append(p.spare[i][:0], l.e...)
			for c := range l.e {
				l.e[c] = mu*l.e[c] + nu*p.last[i][c]
			}
			p.last[i], p.spare[i] = p.spare[i], p.last[i]
		}
		p.advance(mu * share * dt)
	}
}

// step is a plain step, s, in which no ring gives off more than half of what would level it with its
// neighbours.
func (p *pool) step() float64 {
	fast, contact := 0.0, 0.0 // mm2/s, 1/s
	for _, l := range [...]*layer{&p.below, &p.top} {
		least := &l.points[0]
		base, filler := l.mass/l.thick*least.lb, p.in.Filler.Density*least.lf
		for _, at := range l.points {
			fast = max(fast, at.kb/base, at.kf/filler)
		}
		contact = max(contact, p.in.Contact/(l.thick*base))
	}
	return 0.5 / (2*fast/(p.edge[1]*p.edge[1]) + contact)
}

// settle finds the temperatures and conductivities that belong to the heat.
func (p *pool) settle() {
	filler := p.bronze * p.in.Filler.Density
	for i := range p.area {
		if i < p.hole {
			p.below.settle(i, filler)
			continue
		}
		p.below.settle(i, 0)
		p.top.settle(i, 0)
	}
}

func (l *layer) settle(i int, filler float64) {
	p, q, e := l.points, l.seg[i], l.e[i]
	for q < len(p)-2 && e >= l.mass*p[q+1].hb+filler*p[q+1].hf {
		q++
	}
	for q > 0 && e < l.mass*p[q].hb+filler*p[q].hf {
		q--
	}
	at := &p[q]
	d := (e - l.mass*at.hb - filler*at.hf) / (l.mass*at.cb + filler*at.cf)
	l.seg[i], l.t[i] = q, at.t+d
	d = max(d, 0)
	l.kb[i], l.kf[i] = at.kb+at.sb*d, at.kf+at.sf*d
}

// advance adds the heat of arc and conduction in dt, s, at the temperatures as settled.
func (p *pool) advance(dt float64) {
	b, t := &p.below, &p.top
	for i := range p.area {
		if i < p.hole {
			b.e[i] += p.arc[i] * dt / p.area[i]
			continue
		}
		down := p.in.Contact * (t.t[i] - b.t[i]) * dt
		t.e[i] += p.arc[i]*dt/p.area[i] - down
		b.e[i] += down
	}
	for i := range len(p.area) - 1 {
		switch {
		case i+1 < p.hole:
			p.flow(b, b, i, dt, b.thick*b.kb[i]+p.bronze*b.kf[i], b.thick*b.kb[i+1]+p.bronze*b.kf[i+1])
		case i+1 == p.hole:
			// Only the lower sheet conducts into the sheet around the hole; the bronze conducts into the upper
			// one.
			bronze := p.bronze * b.kf[i]
			p.flow(b, b, i, dt, b.thick*b.kb[i], b.thick*b.kb[i+1])
			p.flow(b, t, i, dt, bronze, t.thick*t.kb[i+1])
		default:
			p.flow(b, b, i, dt, b.thick*b.kb[i], b.thick*b.kb[i+1])
			p.flow(t, t, i, dt, t.thick*t.kb[i], t.thick*t.kb[i+1])
		}
	}
}

// flow moves heat from the middle of a ring to that of the next; here and there are conductivity times
// thickness, W/K.
func (p *pool) flow(from, to *layer, i int, dt, here, there float64) {
	inner, outer := p.edge[i+1]-p.edge[i], p.edge[i+2]-p.edge[i+1]
	lead := 4 * math.Pi * p.edge[i+1] / (inner/here + outer/there)
	heat := lead * (from.t[i] - to.t[i+1]) * dt
	from.e[i] -= heat / p.area[i]
	to.e[i+1] += heat / p.area[i+1]
}
