package calc

import (
	"fmt"
	"runtime"
	"sync"
	"sync/atomic"

	"brazebooth/calc/effort"
	"brazebooth/calc/limit/grid"
	"brazebooth/internal/crew"
)

// leastDrawing is the work that drawing may always take.
const leastDrawing = effort.Most / 4

// smallest is the smallest window; it is never drawn coarser.
var smallest = WindowSize{12, 6}

// CoarserWords says why a window has fewer points than usual; "" where it has all of them.
func (w *Window) CoarserWords() string {
	if !w.Coarser {
		return ""
	}
	return fmt.Sprintf("drawn coarser: %d by %d points, since this job takes long to compute", len(w.Feeds),
		len(w.Travels))
}

// draw computes the points of the window, in the rounds of grid.Drawing. Before the last round it is known how many
// points are left; where they are too many, the window keeps every second point only.
func (w *survey) draw(b *board, card *Card, size WindowSize, progress func(float64)) error {
	budget := w.room(card)
	for size.large() && w.effort.PerSection()*int64(size.Feeds*size.Travels/4) > budget {
		size, w.Coarser = size.half(), true
	}
	d := b.draws(card, size)
	before, done := w.effort.Work(), 0
	for ; d.Step > 1; d.Halve() {
		done += d.Wanted()
		if err := d.sweep(share(progress, 0.4/float64(d.Step), 0.8/float64(d.Step))); err != nil {
			return err
		}
	}
	spent := w.effort.Work() - before
	if size.large() && spent+spent/int64(done)*int64(d.Wanted()) > budget {
		w.Coarser = true
		d.EverySecond()
	} else if err := d.sweep(share(progress, 0.4, 1)); err != nil {
		return err
	}
	w.describe(&d.Limits)
	return nil
}

// room is the work that drawing may take: the rest, without what the remedies will need.
func (w *survey) room(card *Card) int64 {
	needed := w.effort.Work()
	if !w.Good {
		needed += w.search*int64(len(candidates(&w.Job, card))) + timedWork
	}
	return max(leastDrawing, effort.Most-needed)
}

// large reports whether a window of this size may be drawn coarser.
func (s WindowSize) large() bool {
	return s.Feeds >= 2*smallest.Feeds && s.Travels >= 2*smallest.Travels
}

func (s WindowSize) half() WindowSize { return WindowSize{(s.Feeds + 1) / 2, (s.Travels + 1) / 2} }

// drawing is a grid.Drawing of a job.
type drawing struct {
	grid.Drawing
	field heatField
}

// draws begins a drawing of a job, over a little more than the feeds and travels that arc and hand hold.
func (b *board) draws(card *Card, size WindowSize) drawing {
	low, high := b.steadyFeeds()
	h := b.heatField(card)
	return drawing{grid.Draw(grid.Axis{Low: low * 0.8, High: high * 1.15, N: size.Feeds},
		grid.Axis{Low: h.slow * 0.75, High: h.fast * 1.25, N: size.Travels}), h}
}

// sweep computes the points that this round wants, the rows of each feed in parallel.
func (d *drawing) sweep(progress func(float64)) error {
	var wg crew.Crew
	var next atomic.Int64
	var mu sync.Mutex
	done, rows, ctx := 0, d.Feeds.N, d.field.b.effort.Context()
	take := func() int { return int(next.Add(1)) - 1 }
	tell := func() {
		mu.Lock()
		defer mu.Unlock() // else a progress that panics would leave the other rows waiting for ever
		done++
		if ctx.Err() == nil {
			progress(float64(done) / float64(rows))
		}
	}
	for range effort.Places() {
		wg.Go(func() {
			for r := take(); r < rows && effort.Limited(ctx, func() { d.row(r) }); r = take() {
				tell()
			}
		})
	}
	wg.Wait()
	return ctx.Err()
}

// row computes the wanted points of one feed.
func (d *drawing) row(i int) {
	for j := range d.Travels.N {
		if d.field.b.effort.Over() != nil {
			return
		}
		if d.Wants(i, j) {
			runtime.Gosched() // a pressed key goes first
			d.Put(i, j, d.field.beside(d.Feeds.At(float64(i)), d.Travels.At(float64(j))))
		}
	}
}

// share maps progress from 0 to 1 into the part of the whole between two values.
func share(progress func(float64), from, to float64) func(float64) {
	return func(done float64) { progress(from + (to-from)*done) }
}
