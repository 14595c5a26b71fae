package thinsheet

import "math"

// periodic repeats on, off and step until the cycle repeats itself.
func (d *driver) periodic(onDone, offDone until, freeze int) (OnOff, error) {
	var b, last OnOff
	var off [4]float64 // of the last cycles, newest first
	for n := 1; n <= mostCycles; n++ {
		var err error
		if b.On, b.Reached, err = d.burn(onDone, d.r.LongestOn); err != nil {
			return b, err
		}
		b.Puddle = d.s.Puddle()
		b.EdgePeak, b.HotPeak = d.edges()
		b.Wide = d.wide()
		b.Wet = d.wetThrough()
		step, by := d.step(b.On, b.Puddle)
		b.StepMost, b.StepBy = step, by
		switch {
		case d.r.FixedStep > 0:
			b.Step = d.r.FixedStep
		case n == 1:
			b.Step = step
		case n <= freeze: // a longer step shortens the next puddle: go halfway, or both would oscillate
			b.Step = (step + b.Step) / 2
		}
		if b.Off, b.Cooled, err = d.cool(offDone, d.r.Longest); err != nil {
			return b, err
		}
		off = [4]float64{b.Off, off[0], off[1], off[2]}
		b.DriftOn, b.DriftOff = change(b.On, last.On), change(off[0]+off[1], off[2]+off[3])
		if n >= leastCycles && b.DriftOn <= sameCycle && b.DriftOff <= samePairs {
			b.Converged = true
			break
		}
		if n > 1 && d.spent() {
			break
		}
		last = b
		d.s.Advance(b.Step)
		d.s.faces()
	}
	if off[1] > 0 {
		b.Off = (off[0] + off[1]) / 2 // the arc's place between two columns changes single ones by a per cent or two
	}
	return b, nil
}

func change(a, b float64) float64 { return math.Abs(a-b) / max(a, 1e-9) }

// step is how far the gun may move on: the length that the spot fills, and at most half of the puddle.
func (d *driver) step(on, puddle float64) (float64, Reason) {
	by, reason := puddle/2, StepOverlap
	if d.r.Section > 0 {
		if fill := d.r.Feed * on / d.r.Filler.Density / d.r.Section; fill < by {
			by, reason = fill, StepFill
		}
	}
	return max(by, d.s.g.d/10), reason
}

// edges are the temperatures of the cooler and the hotter root edge, C.
func (d *driver) edges() (cool, hot float64) {
	cool, hot = math.Inf(1), math.Inf(-1)
	for k := range d.r.Arms {
		if d.r.Arms[k].Lit {
			t := d.s.Edge(k)
			cool, hot = min(cool, t), max(hot, t)
		}
	}
	return cool, hot
}

// wide is how far liquid reaches from the root edges of the lit arms; a mirrored arm counts for both.
func (d *driver) wide() (w [2]float64) {
	n := 0
	for k := range d.r.Arms {
		if d.r.Arms[k].Lit && n < len(w) {
			w[n] = d.s.wide(k)
			n++
		}
	}
	if d.r.Mirror {
		w[1] = w[0]
	}
	return w
}

// warm moves the sheet of the first spot on, for the spots after it.
func (d *driver) warm() *Sheet {
	by, _ := d.step(d.s.now, d.s.Puddle())
	c := d.s.Clone()
	c.Advance(by)
	c.faces()
	return c
}
