package calc

import (
	"fmt"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"

	"brazebooth/internal/crew"
)

// leastDrawing is the work that drawing may take whatever else a job needs.
const leastDrawing = mostWork / 4

// smallest is the window that is never drawn coarser.
var smallest = WindowSize{12, 6}

// CoarserWords says that a window has fewer points than usual and why; "" where it has them all.
func (w *Window) CoarserWords() string {
	if !w.Coarser {
		return ""
	}
	return fmt.Sprintf("drawn coarser: %d by %d points, since this job takes long to compute", len(w.Feeds),
		len(w.Travels))
}

// draw computes the points of a wide grid first, then those between, except where the limits about one are smooth and
// none of them changes sign near it: there interpolation is enough. A fine window is halved twice, another once. Before
// the last round it is known what is left to compute; where that is too much the window keeps every second point only.
func (w *survey) draw(b *board, card *Card, size WindowSize, progress func(float64)) error {
	h, lm := b.heatField(card), newMargins(b, card)
	d := drawing{e: w.effort, field: &h, margins: &lm}
	budget := w.room(card)
	for size.large() && w.effort.each()*int64(size.Feeds*size.Travels/4) > budget {
		size, w.Coarser = size.half(), true
	}
	d.layOut(b, size)
	before, done := w.effort.work.Load(), 0
	for ; d.step > 1; d.wantBetween() {
		done += d.wantedCount()
		if err := d.sweep(share(progress, 0.4/float64(d.step), 0.8/float64(d.step))); err != nil {
			return err
		}
	}
	spent := w.effort.work.Load() - before
	if size.large() && spent+spent/int64(done)*int64(d.wantedCount()) > budget {
		w.Coarser = true
		d.grid.everySecond()
	} else if err := d.sweep(share(progress, 0.4, 1)); err != nil {
		return err
	}
	w.describe(&d.grid)
	return nil
}

// room is the work that drawing may take: what is left, less what the remedies will need.
func (w *survey) room(card *Card) int64 {
	needed := w.effort.work.Load()
	if !w.Good {
		needed += w.search*int64(len(candidates(&w.Job, card))) + timedWork
	}
	return max(leastDrawing, mostWork-needed)
}

// large reports whether a window of this size may be drawn coarser.
func (s WindowSize) large() bool {
	return s.Feeds >= 2*smallest.Feeds && s.Travels >= 2*smallest.Travels
}

func (s WindowSize) half() WindowSize { return WindowSize{(s.Feeds + 1) / 2, (s.Travels + 1) / 2} }

// drawing is the grid of a job being computed.
type drawing struct {
	e       *effort
	field   *heatField
	margins *margins
	grid    limitGrid
	step    int    // between the points of this round along each axis
	known   []bool // computed or interpolated before this round
	wanted  []bool // the points that the next sweep computes
}

// layOut makes the grid, empty, and wants the points of the first round.
func (d *drawing) layOut(b *board, size WindowSize) {
	m := d.margins
	low, high := b.steadyFeeds(m)
	d.grid = newLimitGrid(axis{low * 0.8, high * 1.15, size.Feeds}, axis{m.slow * 0.75, m.fast * 1.25, size.Travels})
	if d.step = 2; d.grid.fine() {
		d.step = 4
	}
	d.known, d.wanted = make([]bool, len(d.grid.logs)), make([]bool, len(d.grid.logs))
	for k := range d.wanted {
		d.wanted[k] = d.grid.on(k, d.step)
	}
}

// on reports whether a point lies on every so many-th of both axes, or on their last.
func (c *limitGrid) on(k, step int) bool {
	i, j := k/c.travels.n, k%c.travels.n
	return (i%step == 0 || i == c.feeds.n-1) && (j%step == 0 || j == c.travels.n-1)
}

// wantBetween goes on to points half as far apart: it interpolates what is smooth between the known ones and wants the
// others.
func (d *drawing) wantBetween() {
	c, wide := &d.grid, d.step
	d.step /= 2
	for k, computed := range d.wanted {
		d.known[k] = d.known[k] || computed
	}
	first := slices.Clone(d.known)
	for k := range first {
		d.wanted[k] = !first[k] && c.on(k, d.step)
		if d.wanted[k] && c.fill(first, k/c.travels.n, k%c.travels.n, wide) {
			d.known[k], d.wanted[k] = true, false
		}
	}
}

func (d *drawing) wantedCount() (n int) {
	for _, want := range d.wanted {
		if want {
			n++
		}
	}
	return n
}

// sweep computes the points that are wanted, rows of one feed in parallel on all processors.
func (d *drawing) sweep(progress func(float64)) error {
	var wg crew.Crew
	var next atomic.Int64
	var mu sync.Mutex
	done, rows, ctx := 0, d.grid.feeds.n, d.e.ctx
	take := func() int { return int(next.Add(1)) - 1 }
	for range cap(limiter) {
		wg.Go(func() {
			for r := take(); r < rows && limited(ctx, func() { d.row(r) }); r = take() {
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

// row computes the wanted points of one feed.
func (d *drawing) row(i int) {
	c := &d.grid
	for j := range c.travels.n {
		if d.e.over() != nil {
			return
		}
		if d.wanted[i*c.travels.n+j] {
			runtime.Gosched() // let a key that somebody pressed go first
			c.put(d.field, d.margins, i, j)
		}
	}
}

// share maps progress from 0 to 1 into a share of a whole, from one value to another; nil where nobody listens.
func share(progress func(float64), from, to float64) func(float64) {
	if progress == nil {
		return nil
	}
	return func(done float64) { progress(from + (to-from)*done) }
}

// everySecond leaves every second point of the grid both ways.
func (c *limitGrid) everySecond() {
	old := *c
	*c = newLimitGrid(old.feeds.everySecond(), old.travels.everySecond())
	for i := range c.feeds.n {
		for j := range c.travels.n {
			c.logs[i*c.travels.n+j] = old.logs[2*i*old.travels.n+2*j]
		}
	}
}

func (a axis) everySecond() axis {
	n := (a.n + 1) / 2
	return axis{a.low, a.at(float64(2 * (n - 1))), n}
}
