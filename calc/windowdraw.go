package calc

import (
	"fmt"
	"runtime"
	"sync"
	"sync/atomic"

	"brazebooth/internal/crew"
)

// leastMap is what drawing may take whatever else a job asks for.
const leastMap = mostWork / 4

// smallest is the map that is never drawn coarser.
var smallest = WindowSize{12, 6}

// CoarserWords says that a map has fewer points than usual and why; "" where it has them all.
func (m *Window) CoarserWords() string {
	if !m.Coarser {
		return ""
	}
	return fmt.Sprintf("drawn coarser: %d by %d points, since this job takes long to compute", len(m.Feeds), len(m.Travels))
}

// draw computes the map: first every second point both ways, then those between, save where the points about one agree and
// are far from every edge of the heat: there the map is flat and interpolation will do. What is still to be computed is
// known by then; where that is too much the map keeps to every second point.
func (m *survey) draw(b *board, card *Card, size WindowSize, progress func(float64)) error {
	h, lm := b.heatField(card), newMargins(b, card)
	d := drawing{e: m.effort, fields: h.each(), margins: &lm}
	budget := m.room(card)
	for size.large() && m.effort.each()*int64(size.Feeds*size.Travels*len(d.fields)/4) > budget {
		size, m.Coarser = size.half(), true
	}
	d.layOut(b, size)
	before := m.effort.work.Load()
	if err := d.sweep(share(progress, 0, 0.4)); err != nil {
		return err
	}
	spent, done := m.effort.work.Load()-before, d.wantedCount()
	d.wantRest()
	if size.large() && spent+spent/int64(done)*int64(d.wantedCount()) > budget {
		m.Coarser = true
		d.maps.everySecond()
	} else if err := d.sweep(share(progress, 0.4, 1)); err != nil {
		return err
	}
	m.describe(d.maps)
	m.Aims = h.aims
	return nil
}

// room is what drawing may take: what is left by then, without what the chance and the remedies will need.
func (m *survey) room(card *Card) int64 {
	needed := m.effort.work.Load() + chanceSamples*m.effort.each()
	if !m.Good {
		needed += m.search*int64(len(candidates(&m.Job, card))) + timedWork
	}
	return max(leastMap, mostWork-needed)
}

// large reports whether a map of this size may be drawn coarser; half is every second point both ways.
func (s WindowSize) large() bool {
	return s.Feeds >= 2*smallest.Feeds && s.Travels >= 2*smallest.Travels
}

func (s WindowSize) half() WindowSize { return WindowSize{(s.Feeds + 1) / 2, (s.Travels + 1) / 2} }

// drawing is the maps of a job's aims on their way.
type drawing struct {
	e       *effort
	fields  []heatField
	margins *margins
	maps    coarse
	wanted  [][]bool // of each map, the points that the next sweep computes
}

// layOut makes the maps, empty, and wants every second point both ways, and the last ones.
func (d *drawing) layOut(b *board, size WindowSize) {
	m := d.margins
	low, high := b.steadyFeeds(m)
	d.maps, d.wanted = make(coarse, len(d.fields)), make([][]bool, len(d.fields))
	for n := range d.maps {
		c := newLimitMap(axis{low * 0.8, high * 1.15, size.Feeds}, axis{m.slow * 0.75, m.fast * 1.25, size.Travels})
		d.maps[n], d.wanted[n] = c, make([]bool, len(c.logs))
		for k := range d.wanted[n] {
			i, j := k/size.Travels, k%size.Travels
			d.wanted[n][k] = (i%2 == 0 || i == size.Feeds-1) && (j%2 == 0 || j == size.Travels-1)
		}
	}
}

// wantRest fills what is flat between the points that were computed and wants the others.
func (d *drawing) wantRest() {
	for n := range d.maps {
		c, first := &d.maps[n], d.wanted[n]
		d.wanted[n] = make([]bool, len(first))
		for k := range first {
			d.wanted[n][k] = !first[k] && !c.flat(first, k/c.travels.n, k%c.travels.n)
		}
	}
}

func (d *drawing) wantedCount() (n int) {
	for _, list := range d.wanted {
		for _, want := range list {
			if want {
				n++
			}
		}
	}
	return n
}

// sweep computes the points that are wanted, rows of one feed side by side on all processors.
func (d *drawing) sweep(progress func(float64)) error {
	var wg crew.Crew
	var next atomic.Int64
	var mu sync.Mutex
	done, feeds, ctx := 0, d.maps[0].feeds.n, d.e.ctx
	rows := feeds * len(d.maps)
	take := func() int { return int(next.Add(1)) - 1 }
	for range cap(limiter) {
		wg.Go(func() {
			for r := take(); r < rows && limited(ctx, func() { d.row(r/feeds, r%feeds) }); r = take() {
				mu.Lock()
				done++
				if progress != nil && ctx.Err() == nil {
					progress(float64(done) / float64(rows))
				}
				mu.Unlock()
			}
		})
	}
	wg.Wait()
	return ctx.Err()
}

// row computes the points of one feed that are wanted.
func (d *drawing) row(n, i int) {
	c := &d.maps[n]
	for j := range c.travels.n {
		if d.e.over() != nil {
			return
		}
		if d.wanted[n][i*c.travels.n+j] {
			runtime.Gosched() // a key that somebody pressed goes first
			c.put(&d.fields[n], d.margins, i, j)
		}
	}
}

// share is the progress of what lies from one share of a whole to another; nil where nobody listens.
func share(progress func(float64), from, to float64) func(float64) {
	if progress == nil {
		return nil
	}
	return func(done float64) { progress(from + (to-from)*done) }
}

// everySecond leaves of each map every second point both ways.
func (c coarse) everySecond() {
	for n := range c {
		old := c[n]
		feeds, travels := old.feeds.everySecond(), old.travels.everySecond()
		c[n] = newLimitMap(feeds, travels)
		for i := range feeds.n {
			for j := range travels.n {
				c[n].logs[i*travels.n+j] = old.logs[2*i*old.travels.n+2*j]
			}
		}
	}
}

func (a axis) everySecond() axis {
	n := (a.n + 1) / 2
	return axis{a.low, a.at(float64(2 * (n - 1))), n}
}
