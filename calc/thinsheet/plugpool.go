package thinsheet

import "math"

// pool holds the rings of a plug as they warm up.
type pool struct {
	in     *Plug
	hole   int       // rings inside the hole
	edge   []float64 // mm
	area   []float64 // mm2
	arc    []float64 // W/mm2 on each ring
	below  layer
	top    layer   // its rings inside the hole are not used
	bronze float64 // its height in the hole, mm

	between []between // each ring and the next
}

// between holds the sizes that the heat flow from a ring to the next depends on: twice the length of their common edge
// and both widths, mm, and one over each area, 1/mm2.
type between struct{ around, inner, outer, here, there float64 }

// layer is a row of rings of one metal; in the hole it carries the bronze.
type layer struct {
	pair
	thick, mass float64 // of the metal, mm and g/mm2
	ring        []ring
}

// ring is one ring of a layer.
type ring struct {
	e, t, k float64 // heat over 20 C, J/mm2, temperature, C, and conductivity times thickness, W/K
	last    float64 // heat one stage ago, J/mm2

	// The segment of the tables, between two of their temperatures, that the heat lies in, for both metals together:
	low, high  float64 // ends of the segment, J/mm2
	e0, t0     float64 // heat, J/mm2, and temperature, C, at its beginning
	per        float64 // K for each J/mm2
	k0, slope  float64 // k at t0, W/K, and its rise for each K
	bronze, at float64 // the bronze's part of k0 and of slope
	seg        int     // number of the segment
}

func newPool(in *Plug) *pool {
	p := &pool{in: in, edge: []float64{0}}
	p.hole = max(plugRings, int(math.Ceil(plugFine*in.Hole/2/in.Spread)))
	quick := 0.0 // mm2/s, of the sheets when cold
	for _, m := range [...]*Material{&in.Top, &in.Below} {
		quick = max(quick, m.Diffusivity())
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
	for i := range len(p.area) - 1 {
		e := p.edge[i:]
		p.between = append(p.between, between{around: 4 * math.Pi * e[1], inner: e[1] - e[0], outer: e[2] - e[1],
			here: 1 / p.area[i], there: 1 / p.area[i+1]})
	}
	n := len(p.area)
	p.light()
	p.below = newLayer(&in.Below, &in.Filler, in.Stir, in.Lower, n, in.Start)
	p.top = newLayer(&in.Top, &in.Filler, in.Stir, in.Upper, n, in.Start)
	return p
}

func newLayer(m, filler *Material, stir, thick float64, n int, start float64) layer {
	l := layer{pair: join(m, filler, stir), thick: thick, mass: thick * m.Density, ring: make([]ring, n)}
	h, _ := m.at(start)
	for i := range l.ring {
		l.ring[i] = ring{e: l.mass * h, low: math.Inf(1)}
	}
	return l
}

// light distributes the arc's power, less that for melting the filler: a Gaussian that moves on its circle.
func (p *pool) light() {
	in, sum := p.in, 0.0
	var turn [plugAround]float64
	for k := range turn {
		turn[k] = math.Cos((float64(k) + 0.5) / plugAround * math.Pi)
	}
	for i, area := range p.area {
		r, q := (p.edge[i]+p.edge[i+1])/2, 0.0
		for _, cos := range turn {
			away := r*r + in.Led*in.Led - 2*r*in.Led*cos
			q += math.Exp(-away / (2 * in.Spread * in.Spread))
		}
		p.arc = append(p.arc, q)
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
		for r := range p.below.ring[:p.hole] {
			p.below.ring[r].e += whole / plugSteps * p.in.Filler.Density * liquid
			p.below.ring[r].low = math.Inf(1) // another metal: its segment must be found again
		}
		p.work(dt, stages)
	}
	p.settle()
}

// work lets arc and conduction act for dt, s.
func (p *pool) work(dt, stages float64) {
	share := 2 / (stages * (stages + 1))
	p.settle()
	p.advance(1, 0, share*dt)
	for j := 2.0; j <= stages; j++ {
		mu, nu := (2*j-1)/j, (1-j)/j
		p.settle()
		p.advance(mu, nu, mu*share*dt)
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
	p.below.settle(0, p.hole, p.bronze, p.in.Filler.Density)
	p.below.settle(p.hole, len(p.area), 0, 0)
	p.top.settle(p.hole, len(p.area), 0, 0)
}

// settle does this for some of a layer's rings, which carry bronze of this height, mm, and density, g/mm3.
func (l *layer) settle(from, to int, bronze, density float64) {
	rings := l.ring[from:to]
	for i := range rings {
		r := &rings[i]
		if r.e < r.low || r.e >= r.high {
			l.find(r, bronze, density)
		}
		d := (r.e - r.e0) * r.per
		r.t = r.t0 + d
		r.k = r.k0 + r.slope*max(d, 0)
	}
}

// find stores the segment of a ring's heat.
func (l *layer) find(r *ring, bronze, density float64) {
	p, filler := l.points, bronze*density
	for r.seg < len(p)-2 && r.e >= l.mass*p[r.seg+1].hb+filler*p[r.seg+1].hf {
		r.seg++
	}
	for r.seg > 0 && r.e < l.mass*p[r.seg].hb+filler*p[r.seg].hf {
		r.seg--
	}
	at, above := &p[r.seg], &p[r.seg+1]
	r.e0, r.high = l.mass*at.hb+filler*at.hf, l.mass*above.hb+filler*above.hf
	r.low = r.e0
	if r.seg == 0 {
		r.low = math.Inf(-1)
	}
	if r.seg == len(p)-2 {
		r.high = math.Inf(1)
	}
	r.t0, r.per = at.t, 1/(l.mass*at.cb+filler*at.cf)
	r.bronze, r.at = bronze*at.kf, bronze*at.sf
	r.k0, r.slope = l.thick*at.kb+r.bronze, l.thick*at.sb+r.at
}

// advance is one stage: the heat becomes mu times the present heat plus nu times that of one stage ago, plus the heat
// that arc and conduction bring in dt, s, at the temperatures of the last settle.
func (p *pool) advance(mu, nu, dt float64) {
	b, t := p.below.ring, p.top.ring
	for i := range b[:p.hole] {
		b[i].mix(mu, nu, p.arc[i]*dt)
	}
	for i := p.hole; i < len(b); i++ {
		down := p.in.Contact * (t[i].t - b[i].t) * dt
		t[i].mix(mu, nu, p.arc[i]*dt-down)
		b[i].mix(mu, nu, down)
	}
	p.flow(b[:p.hole], 0, dt)
	p.flow(b[p.hole:], p.hole, dt)
	p.flow(t[p.hole:], p.hole, dt)
	// At the rim the lower sheet conducts into the lower sheet around the hole, and the bronze into the upper sheet.
	i, rim := p.hole-1, &b[p.hole-1]
	bronze := rim.bronze + rim.at*max(rim.t-rim.t0, 0)
	p.pass(rim, &b[i+1], i, dt, rim.k-bronze)
	p.pass(rim, &t[i+1], i, dt, bronze)
}

// mix combines a ring's present heat and that of one stage ago, and adds more, J/mm2.
func (r *ring) mix(mu, nu, more float64) {
	r.e, r.last = mu*r.e+nu*r.last+more, r.e
}

// flow moves heat between neighbouring rings for dt, s. rings begins with the pool's ring number first.
func (p *pool) flow(rings []ring, first int, dt float64) {
	for i := 1; i < len(rings); i++ {
		p.pass(&rings[i-1], &rings[i], first+i-1, dt, rings[i-1].k)
	}
}

// pass moves heat from ring number i to the next for dt, s. k is the conductivity times thickness, W/K, with which the
// first one conducts to the second.
func (p *pool) pass(from, to *ring, i int, dt, k float64) {
	at := &p.between[i]
	heat := at.around * k * to.k / (at.inner*to.k + at.outer*k) * (from.t - to.t) * dt
	from.e -= heat * at.here
	to.e += heat * at.there
}
