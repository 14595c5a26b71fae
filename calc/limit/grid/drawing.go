package grid

import "slices"

// Drawing is a grid while it is computed, in rounds: first points that are far apart, then those between them.
type Drawing struct {
	Limits
	Step   int    // between the points of this round along each axis; 1 in the last round
	known  []bool // computed or interpolated before this round
	wanted []bool // to be computed in this round
}

// Draw begins a drawing. Halve must be called twice for a fine grid, once for a coarse one, until Step is 1.
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

// Wants reports whether the caller must compute a point in this round, and Put it.
func (d *Drawing) Wants(i, j int) bool { return d.wanted[i*d.Travels.N+j] }

// Wanted is the number of points that the caller must compute in this round.
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

// Halve begins the next round, with points half as far apart, when the wanted points have been computed: it
// interpolates the new points where that is safe and wants the others.
func (d *Drawing) Halve() {
	wide := d.Step
	d.Step /= 2
	for k, computed := range d.wanted {
		d.known[k] = d.known[k] || computed
	}
	first := slices.Clone(d.known)
	for k := range first {
		if first[k] || !d.on(k, d.Step) {
			d.wanted[k] = false
			continue
		}
		i, j := k/d.Travels.N, k%d.Travels.N
		safe := d.Fine() && d.smooth(first, i, j, wide) || !d.Fine() && d.flat(first, i, j)
		d.known[k], d.wanted[k] = safe, !safe
	}
}
