package section

// meet2 is meet for the lap and the tee of sheets with two layers each: the same sums in the same order. It is
// written out because only then do the numbers stay in registers. A lap's first arm is linked to the corner
// alone, a tee's to the second arm's skin.
func (w *Workspace) meet2() {
	u, p, m := &w.arms[0], &w.arms[1], &w.arms[2]
	l := &w.links
	lap, end := w.joint == LapJoint, 0
	if lap {
		end = corner
	}
	a00, a01, a11, r0, r1 := p.inner.a[0], p.inner.a[1], p.inner.a[2], p.inner.r[0], p.inner.r[1]
	ac1, acc, rc := 0.0, 0.0, 0.0 // the corner's entries

	g0, g1 := l.through[0], l.through[1]
	t0, t1, t2 := invert2(m.inner.a[0]+g0, m.inner.a[1], m.inner.a[2]+g1)
	y0, y1 := t0*m.inner.r[0]+t1*m.inner.r[1], t1*m.inner.r[0]+t2*m.inner.r[1]
	if lap {
		acc, rc, ac1 = acc+g0-g0*g0*t0, rc+g0*y0, ac1-g0*g1*t1
	} else {
		a00, r0, a01 = a00+g0-g0*g0*t0, r0+g0*y0, a01-g0*g1*t1
	}
	a11, r1 = a11+g1-g1*g1*t2, r1+g1*y1

	linked, h0, h1 := l.ends[end], l.across[0][end], l.across[1][end]
	f00, f11 := u.inner.a[0], u.inner.a[2]
	if linked {
		f00, f11 = f00+h0, f11+h1
	}
	f0, f1, f2 := invert2(f00, u.inner.a[1], f11)
	if linked {
		y0, y1 = f0*u.inner.r[0]+f1*u.inner.r[1], f1*u.inner.r[0]+f2*u.inner.r[1]
		z0, z1 := f0*h0+f1*h1, f1*h0+f2*h1
		if lap {
			acc, rc = acc+h0+h1-h0*z0-h1*z1, rc+h0*y0+h1*y1
		} else {
			a00, r0 = a00+h0+h1-h0*z0-h1*z1, r0+h0*y0+h1*y1
		}
	}

	skin := l.skin
	if lap {
		a00, acc = a00+skin, acc+skin
		f := -skin / acc
		r0, a00, a01 = r0-f*rc, a00+f*skin, a01-f*ac1
		f = ac1 / acc
		r1, a11 = r1-f*rc, a11-f*ac1
	}
	c0, c1, c2 := invert2(a00, a01, a11)
	x0, x1 := c0*r0+c1*r1, c1*r0+c2*r1
	met := x0
	if lap {
		met = (rc + skin*x0 - ac1*x1) / acc
	}
	p.set2(x0, x1)
	r0, r1 = u.inner.r[0], u.inner.r[1]
	if linked {
		r0, r1 = r0+h0*met, r1+h1*met
	}
	u.set2(f0*r0+f1*r1, f1*r0+f2*r1)
	r0, r1 = m.inner.r[0]+g0*met, m.inner.r[1]+g1*x1
	m.set2(t0*r0+t1*r1, t1*r0+t2*r1)
}

// invert2 inverts a symmetric matrix of two rows.
func invert2(a, b, c float64) (x, y, z float64) {
	d := 1 / (a*c - b*b)
	return c * d, -b * d, a * d
}

// set2 stores the innermost column's temperatures.
func (a *arm) set2(skin, core float64) { a.col[0].cell[0].next, a.col[0].cell[1].next = skin, core }
