package section

// readTemperatures adds the heat of the last step to each cell's enthalpy, finds the cell's temperature and keeps
// the highest.
func (a *arm) readTemperatures(filler *curve) {
	if a.base.steel {
		a.readSteelTemperatures(filler)
		return
	}
	n := min(a.layers, maxLayers)
	a.hot = -1
	for j := range a.in() {
		p := &a.col[j]
		metal := p.filler * p.dy
		for l := range n {
			x := &p.cell[l]
			t := x.next
			x.e += x.cap * (t - x.t)
			if !(t < a.first) {
				x.stretch = -1
				t, x.cap = invert(x.e, t, x.body, metal, &a.base, filler)
			} else if x.stretch != 0 {
				x.stretch = 0
				t, x.cap = invert(x.e, t, x.body, metal, &a.base, filler)
			}
			x.t = t
			if t > a.first {
				a.hot = j
			}
			if t > x.peak {
				x.peak = t
			}
			metal = 0
		}
	}
}

// readSteelTemperatures is readTemperatures for steel. A cell that is still on the same straight piece of its enthalpy
// keeps the temperature of the linear system; a cell on another piece does the first step of invert here, which
// is usually the last.
func (a *arm) readSteelTemperatures(filler *curve) {
	base := &a.base
	n, first, c, cf, hottest := min(a.layers, maxLayers), a.first, base.c, filler.c, -1
	columns := a.in()
	for j := range columns {
		p := &columns[j]
		metal := p.filler * p.dy
		for l := range p.cell[:n] {
			x := &p.cell[l]
			t := x.next
			e := x.e + x.cap*(t-x.t)
			x.e = e
			if !(t < first) {
				x.stretch = -1
				t, x.cap = invert(e, t, x.body, metal, base, filler)
			} else if i := steelStretch(t); i != x.stretch {
				x.stretch = i
				s := &steelTable[i]
				h, slope := s.at(t)*c*x.body, s.slope*c*x.body
				if metal > 0 {
					h += cf * (t - 20) * metal
					slope += cf * metal
				}
				off := h - e
				if near := 0.5 * slope; off < near && off > -near { // without a division before the branch
					t, x.cap = t-off/slope, slope
				} else {
					t, x.cap = invert(e, t, x.body, metal, base, filler)
				}
			}
			x.t = t
			if t > first {
				hottest = j
			}
			if t > x.peak {
				x.peak = t
			}
			x.k = SteelConductivity(t, base.k)
			metal = 0
		}
	}
	a.hot = hottest
}

// invert solves base·h_base(t) + metal·h_filler(t) = e from a first estimate, and returns the temperature with
// the heat capacity there, J/mmK.
//
// The enthalpy of two metals that melt over ranges is piecewise smooth and always grows: Newton's rule from the
// last temperature needs two or three steps, and bisection helps if it would oscillate.
func invert(e, t, base, metal float64, b, f *curve) (temperature, capacity float64) {
	low, high := -1e4, 1e6
	for range 60 {
		h, slope := b.c*(t-20), b.c
		if b.steel {
			s := &steelTable[steelStretch(t)]
			h, slope = s.at(t)*b.c, s.slope*b.c
		}
		if t > b.solidus {
			h, slope = b.melting(t, h, slope)
		}
		h, slope = h*base, slope*base
		if metal > 0 {
			hf, sf := f.c*(t-20), f.c
			if t > f.solidus {
				hf, sf = f.melting(t, hf, sf)
			}
			h += hf * metal
			slope += sf * metal
		}
		off := h - e
		step := off / slope
		// Beyond a melting or freezing point the capacity is different: a liquid cell with the capacity of a
		// melting one would take up heat for hundreds of K in the next step.
		if near := 0.5 * slope; off < near && off > -near && b.phase(t-step) == b.phase(t) &&
			(metal == 0 || f.phase(t-step) == f.phase(t)) {
			return t - step, slope
		}
		if off > 0 {
			high = t
		} else {
			low = t
		}
		t -= step
		if t <= low || t >= high {
			t = (max(low, -300) + min(high, 8000)) / 2
		}
		capacity = slope
	}
	return t, capacity
}
