package grid

import "slices"

// Drawing is a grid being computed, in rounds: first points that lie far apart, then those between them.
type Drawing struct {
	Limits
	Step   int    // between the points of this round along each axis; 1 in the last round
	known  []bool // computed or interpolated before this round
	wanted []bool // to be computed in this round
}

// Draw begins a drawing. A fine one is halved twice, another once.
func Draw(feeds, travels Axis) Drawing {
	d := Drawing{Limits: New(feeds, travels), Step: 2}
	if d.Fine() {
		d.Step = 4
	}
	d.known, d.wanted = make([]bool, len(d.Points)), make([]bool, len(d.Points))
	for k := range d.wanted {
		d.wanted[k] = d.on(k, d.Step)
	}
	return d
}

// Wants reports whether a point is to be computed in this round.
func (d *Drawing) Wants(i, j int) bool { return d.wanted[i*d.Travels.N+j] }

// Wanted is how many points are to be computed in this round.
func (d *Drawing) Wanted() (n int) {
	for _, want := range d.wanted {
		if want {
			n++
		}
	}
	return n
}

// on reports whether a point lies on every step-th point of both axes, or on their last.
func (c *Limits) on(k, step int) bool {
	i, j := k/c.Travels.N, k%c.Travels.N
	return (i%step == 0 || i == c.Feeds.N-1) && (j%step == 0 || j == c.Travels.N-1)
}

// Halve begins the next round, once the wanted points are computed, with points half as far apart: it interpolates what
// is smooth between the known points and wants the others.
func (d *Drawing) Halve() {
	wide := d.Step
	d.Step /= 2
	for k, computed := range d.wanted {
		d.known[k] = d.known[k] || computed
	}
	first := slices.Clone(d.known)
	for k := range first {
		d.wanted[k] = !first[k] && d.on(k, d.Step)
		if d.wanted[k] && d.fill(first, k/d.Travels.N, k%d.Travels.N, wide) {
			d.known[k], d.wanted[k] = true, false
		}
	}
}
