package calc

import (
	"context"
	"math"
	"slices"
	"sync"

	"brazebooth/internal/crew"
)

// Chart is an operating window as fields to draw: every edge and the chance at each feed and travel.
type Chart struct {
	Feeds, Travels []float64 // m/min and mm/s, rising in equal ratios
	Edges          []ChartEdge
	Chance         []float64 // % that every edge is met, feed outer, travel inner; 0 where the model does not reach
}

// ChartEdge is one edge of a chart: the logarithm of a ratio at each point, feed outer, zero on the edge and positive
// on its good side. NaN where the model does not reach.
type ChartEdge struct {
	Name   string // as on the card
	Beyond string // what happens past it, a word or two
	Inside []float64
}

// pastEdge says what happens past each limit.
var pastEdge = [limitCount]string{lWets: "cold", lSolid: "too hot", lBurn: "burns through", lFilled: "not filled",
	lBridges: "gap stays open", lStays: "drips", lFloor: "arc stubs", lSpray: "arc sprays", lZinc: "zinc burnt wide",
	lSlow: "too slow for a hand", lFast: "too fast for a hand"}

// ChartOf computes the chart of a window: its edges at the window's own number of points, and the chance from what is
// uncertain. The chance is sampled at a few places only, and what each sample does to each limit is interpolated
// between them; so it is within some ten percentage points of sampling at the very point (see its test).
func ChartOf(ctx context.Context, w *Window) (Chart, error) {
	open := w.Job
	open.Feed, open.Travel, open.Amps = Opt{}, Opt{}, Opt{}
	var card Card
	if err := resolve(open, &card); err != nil {
		return Chart{}, err
	}
	e := &effort{ctx: ctx}
	b := newBoard(&card)
	b.effort = e
	h, m := b.heatField(&card), newMargins(b, &card)
	d := drawing{e: e, fields: h.each(), margins: &m}
	d.layOut(b, WindowSize{len(w.Feeds), len(w.Travels)})
	if err := d.sweep(nil); err != nil {
		return Chart{}, err
	}
	d.wantRest()
	if err := d.sweep(nil); err != nil {
		return Chart{}, err
	}
	at, err := anchorsOf(e, open, d.grids)
	if err != nil {
		return Chart{}, err
	}
	return chartOf(d.grids, &at), nil
}

// chartOf reads the fields from the grids of all aims and from the anchors.
func chartOf(grids coarse, at *anchors) Chart {
	feeds, travels := grids[0].feeds, grids[0].travels
	n := feeds.n * travels.n
	c := Chart{Feeds: make([]float64, feeds.n), Travels: make([]float64, travels.n), Chance: make([]float64, n)}
	var fields [limitCount][]float64
	var crossed [limitCount][2]bool // limits that are met somewhere, and somewhere not
	for l := range fields {
		fields[l] = make([]float64, n)
	}
	for k := range n {
		i, j := k/travels.n, k%travels.n
		c.Feeds[i], c.Travels[j] = feeds.at(float64(i))*0.06, travels.at(float64(j))
		here := &grids.aimed(k).logs[k]
		for l := range fields {
			if fields[l][k] = here[l]; *here == hopeless {
				fields[l][k] = math.NaN()
				continue
			}
			crossed[l][0] = crossed[l][0] || here[l] >= 0
			crossed[l][1] = crossed[l][1] || here[l] < 0
		}
		if *here != hopeless {
			c.Chance[k] = at.chance(here, float64(i), float64(j))
		}
	}
	for l := range fields {
		if crossed[l] == [2]bool{true, true} {
			c.Edges = append(c.Edges, ChartEdge{edgeNames[l], pastEdge[l], fields[l]})
		}
	}
	return c
}

// anchors are the places of a grid at which everything uncertain is sampled: each sample's limits less those without
// any deviation.
type anchors struct {
	feeds, travels axis // the grid's
	nx, ny         int
	shifts         [][]Limits // of each anchor, feed outer; none where the model does not reach
}

// anchorFeeds and anchorTravels are how many feeds and travels are sampled, where the work allows it. On five jobs
// the chance came within 4 percentage points of sampling at the point, root mean square, and at worst 19; with 13 by
// 12 of them within 3 and 14, at five times the work.
const (
	anchorFeeds   = 7
	anchorTravels = 6
)

// hopeFrom is how far, as a logarithm, a limit may be missed where the chance is still worth sampling.
const hopeFrom = -0.6

// anchorsOf samples around the points of the grids that are near enough to good.
func anchorsOf(e *effort, open Job, grids coarse) (anchors, error) {
	a := anchors{feeds: grids[0].feeds, travels: grids[0].travels}
	a.nx, a.ny = max(2, min(anchorFeeds, a.feeds.n/4)), max(2, min(anchorTravels, a.travels.n/4))
	for a.nx > 2 && int64(a.nx*a.ny*chanceSamples)*e.each() > mostWork/2 {
		a.nx, a.ny = a.nx-1, max(2, a.ny-1)
	}
	wanted := make([]bool, a.nx*a.ny)
	for k := range grids[0].logs {
		if l := &grids.aimed(k).logs[k]; slices.Min(l[:]) >= hopeFrom {
			corners, _, _ := a.about(float64(k/a.travels.n), float64(k%a.travels.n))
			for _, n := range corners {
				wanted[n] = true
			}
		}
	}
	a.shifts = make([][]Limits, a.nx*a.ny)
	var wg crew.Crew
	var mu sync.Mutex
	var first error
	for k := range a.shifts {
		if !wanted[k] {
			continue
		}
		job := open
		job.Feed = Some(a.feeds.at(part(k/a.ny, 0, a.nx-1)*float64(a.feeds.n-1)) * 0.06)
		job.Travel = Some(a.travels.at(part(k%a.ny, 0, a.ny-1) * float64(a.travels.n-1)))
		wg.Go(func() {
			err := e.ctx.Err()
			limited(e.ctx, func() { a.shifts[k], err = shiftsAt(e, job) })
			if err != nil {
				mu.Lock()
				first = err
				mu.Unlock()
			}
		})
	}
	wg.Wait()
	if first == nil {
		first = e.ctx.Err()
	}
	return a, first
}

// about are the anchors around a place in grid coordinates, and its shares of their cell's sides.
func (a *anchors) about(x, y float64) (corners [4]int, fx, fy float64) {
	x *= float64(a.nx-1) / float64(max(1, a.feeds.n-1))
	y *= float64(a.ny-1) / float64(max(1, a.travels.n-1))
	i, j := cell(x, a.nx), cell(y, a.ny)
	k := i*a.ny + j
	return [4]int{k, k + 1, k + a.ny, k + a.ny + 1}, x - float64(i), y - float64(j)
}

// shiftsAt is what each sample adds to each limit of a job.
func shiftsAt(e *effort, job Job) ([]Limits, error) {
	list, middle, _, err := samplesAt(e, job)
	if err != nil || !middle.known {
		return nil, err
	}
	shifts := make([]Limits, len(list))
	for s := range list {
		for l := range shifts[s] {
			switch {
			case !list[s].known:
				shifts[s][l] = -far
			case list[s].limits[l] < far && middle.limits[l] < far:
				shifts[s][l] = list[s].limits[l] - middle.limits[l]
			}
		}
	}
	return shifts, nil
}

// chance is the share of the samples, %, that meet every edge at grid coordinates where the limits are known.
func (a *anchors) chance(here *Limits, x, y float64) float64 {
	corners, fx, fy := a.about(x, y)
	weight := [4]float64{(1 - fx) * (1 - fy), (1 - fx) * fy, fx * (1 - fy), fx * fy}
	all := 0.0
	for n, k := range corners {
		if a.shifts[k] == nil {
			weight[n] = 0
		}
		all += weight[n]
	}
	if all == 0 {
		return 0
	}
	good := 0
	for s := range chanceSamples {
		l := *here
		for n, k := range corners {
			for m := range l {
				if weight[n] > 0 {
					l[m] += weight[n] / all * a.shifts[k][s][m]
				}
			}
		}
		if slices.Min(l[:]) >= 0 {
			good++
		}
	}
	return 100 * float64(good) / chanceSamples
}
