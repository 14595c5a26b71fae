package thinsheet

import (
	"errors"
	"math"
	"runtime"
)

// driver runs one sheet through cycles of on, off and step. Events end them; each is met within a macro step by
// going back and repeating the needed part of the step.
type driver struct {
	r      *Rhythm
	s      *Sheet
	stop   func() bool
	dt     float64
	delta  []float64 // mean temperature less the back face's at each arm's edge while the arc burns, K
	e, m   []float64 // state before the last macro step
	mark   moment
	molten float64 // s, when the edge first melted in this burn; 0: not yet
	began  float64 // s, when the arc was last struck or put out
	record bool
	trace  []Point
	steps  int
	work   int // cells times stages so far
}

// moment is what a step back restores besides the fields.
type moment struct{ now, added, lost, laid float64 }

// until is the distance of a criterion from being met, which is at zero and above.
type until func() float64

func newDriver(r *Rhythm, s *Sheet, stop func() bool) *driver {
	d := &driver{r: r, s: s, stop: stop, dt: r.Step}
	if d.dt == 0 {
		d.dt = 0.008
	}
	n := len(s.e)
	d.e, d.m = make([]float64, n), make([]float64, n)
	arc := r.Power - r.Feed*r.Droplet
	for i := range r.Arms {
		a := &r.Arms[i]
		q := 0.0
		if a.Lit && !r.Surface {
			off := r.Gap/2 - a.Aim
			q = arc / (2 * math.Pi * r.Sigma * a.Sigma) * math.Exp(-off*off/(2*a.Sigma*a.Sigma))
		}
		_, k := a.Base.at(r.Filler.Liquidus)
		d.delta = append(d.delta, q*a.Thick/(6*k))
	}
	return d
}

// wetThrough is met when the back face of every lit arm's root edge has reached the filler's liquidus. If
// wetting the face is enough, delta is zero: it is met when the edge's mean has, which is below its face.
func (d *driver) wetThrough() float64 {
	least := math.Inf(1)
	for k := range d.r.Arms {
		if d.r.Arms[k].Lit {
			least = min(least, d.s.Edge(k)-d.delta[k]-d.r.Filler.Liquidus)
		}
	}
	return least
}

// melts is met when the allowed share of base metal is molten at a lit root edge or anywhere that the arc
// reaches.
func (d *driver) melts() float64 {
	most := math.Inf(-1)
	for k := range d.r.Arms {
		if a := &d.r.Arms[k]; a.Lit {
			limit := a.Base.Solidus + d.r.MeltDepth*(a.Base.Liquidus-a.Base.Solidus)
			most = max(most, d.s.Edge(k)-limit, d.s.hottest(k)-limit)
		}
	}
	return most
}

// timed is met a time, s, after the arc was struck or put out.
func (d *driver) timed(on float64) until {
	return func() float64 { return d.s.Now() - d.began - on }
}

// centre is met when the joint's line under the arc has cooled to a temperature, C.
func (d *driver) centre(to float64) until {
	if d.r.FixedOff > 0 {
		return d.timed(d.r.FixedOff)
	}
	return func() float64 { return to - d.s.Centre() }
}

// burn keeps the arc on until its criterion is met, at most for longest; it returns the time and whether it was
// met.
func (d *driver) burn(done until, longest float64) (float64, bool, error) {
	return d.pass(true, max(d.dt, slowPace(d.r.FixedOn)), done, longest)
}

// cool does the same with the arc off.
func (d *driver) cool(done until, longest float64) (float64, bool, error) {
	return d.pass(false, max(2*d.dt, slowPace(d.r.FixedOff)), done, longest)
}

// slowTime is longer than any on or off time of the trade, s.
const slowTime = 3

// slowPace is the least macro step for a given time, s: a time of many seconds needs no steps of hundredths.
func slowPace(given float64) float64 { return max(0, given-slowTime) / 40 }

// spent reports whether a run has done its maximum of work.
func (d *driver) spent() bool {
	if max(d.r.FixedOn, d.r.FixedOff) > slowTime {
		return d.work > mostSlow
	}
	return d.work > mostWork
}

func (d *driver) pass(on bool, dt float64, done until, longest float64) (float64, bool, error) {
	s := d.s
	d.began, d.molten = s.now, 0
	before := done()
	if before >= 0 {
		return 0, true, nil
	}
	for s.now-d.began < longest {
		if d.steps++; d.steps%64 == 0 {
			runtime.Gosched() // let a pressed key be handled first
		}
		if d.stop != nil && d.steps%8 == 0 && d.stop() {
			return 0, false, ErrStopped
		}
		d.keep()
		s.Step(dt, on)
		d.work += len(s.e) * s.stages
		after := done()
		if math.IsNaN(after) {
			return 0, false, errors.Join(ErrRange, errors.New("the heat flow lost its way"))
		}
		if after >= 0 {
			d.back()
			s.Step(dt*before/(before-after), on)
			d.note(on)
			return s.now - d.began, true, nil
		}
		before = after
		if on && d.molten == 0 && d.melts() >= 0 {
			d.molten = s.now - d.began
		}
		d.note(on)
	}
	return s.now - d.began, false, nil
}

func (d *driver) keep() {
	s := d.s
	copy(d.e, s.e)
	copy(d.m, s.mf)
	d.mark = moment{s.now, s.added, s.lost, s.laid}
}

func (d *driver) back() {
	s := d.s
	copy(s.e, d.e)
	copy(s.mf, d.m)
	s.now, s.added, s.lost, s.laid = d.mark.now, d.mark.added, d.mark.lost, d.mark.laid
	s.settle(0, len(s.e))
}

func (d *driver) note(on bool) {
	if !d.record {
		return
	}
	p := Point{Time: d.s.now, On: on, Edge: math.Inf(1), Centre: d.s.Centre()}
	for k := range d.r.Arms {
		if !d.r.Arms[k].Lit {
			continue
		}
		if t := d.s.Edge(k); t < p.Edge {
			p.Edge, p.Back = t, t
			if on {
				p.Back = t - d.delta[k]
			}
		}
	}
	d.trace = append(d.trace, p)
}

const (
	leastCycles = 6 // no cycle repeats earlier; two may agree by chance while the sheet still warms up
	mostCycles  = 14
	freezeCold  = 5    // cycles after which the step is fixed: while it changes the cycle may not settle
	freezeWarm  = 2    // the same for a sheet that is already cycling
	sameCycle   = 0.01 // relative change of on from one cycle to the next
	samePairs   = 0.02 // the same for off, between the last two cycles and the two before: one may agree by chance

	// mostWork ends a run whose cycles are long and do not repeat; mostSlow one with times over slowTime. They
	// count cells times stages, not seconds, so that a joint has the same times on every machine: 100 million
	// take an idle core half a second.
	mostWork, mostSlow = 100e6, 30e6
)
