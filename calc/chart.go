package calc

import (
	"context"
	"math"

	"brazebooth/calc/suggest"
	"brazebooth/internal/crew"
)

// Chart is an operating window as fields to draw: every edge and the chance at each feed and travel.
type Chart struct {
	Feeds, Travels []float64 // m/min and mm/s, rising in equal ratios
	Edges          []ChartEdge
	Chance         []float64 // % that every edge is met, feed outer, travel inner; 0 where the model does not reach
}

// ChartEdge is one edge of a chart: the logarithm of a ratio at each point, feed outer, zero on the edge and positive
// on its good side. NaN where the model does not reach
// and where the edge means nothing.
type ChartEdge struct {
	Name   string // as on the card
	Beyond string // what happens past it, a word or two
	Inside []float64
}

// pastEdge says what happens past each limit.
var pastEdge = [limitCount]string{lWets: "cold", lSolid: "too hot", lBurn: "burns through", lFilled: "not filled",
	lBridges: "gap stays open", lStays: "drips", lFloor: "arc stubs", lSpray: "arc sprays", lZinc: "zinc burnt wide",
	lSlow: "too slow for a hand", lFast: "too fast for a hand"}

// ChartOf computes the chart of a window: its edges at the window's own number of points, and the chance by the same
// function as the card's. What a hotter and a colder arc do to the limits is computed at every third point and
// interpolated between.
func ChartOf(ctx context.Context, w *Window) (Chart, error) {
	open := w.Job
	open.Feed, open.Travel, open.Amps = Opt{}, Opt{}, Opt{}
	e := &effort{ctx: ctx}
	b, card, err := laidOut(e, open)
	if err != nil {
		return Chart{}, err
	}
	h, m := b.heatField(card), newMargins(b, card)
	d := drawing{e: e, field: &h, margins: &m}
	d.layOut(b, WindowSize{len(w.Feeds), len(w.Travels)})
	for ; d.step > 1; d.wantBetween() {
		if err := d.sweep(nil); err != nil {
			return Chart{}, err
		}
	}
	if err := d.sweep(nil); err != nil {
		return Chart{}, err
	}
	weights, err := b.weighed(&m)
	if err != nil {
		return Chart{}, err
	}
	at := heats{grid: &d.grid, weights: weights, margins: &m}
	if err := at.sweep(ctx, &h); err != nil {
		return Chart{}, err
	}
	return chartOf(&at), nil
}

// chartOf reads the fields from the grids.
func chartOf(at *heats) Chart {
	feeds, travels := at.grid.feeds, at.grid.travels
	n := feeds.n * travels.n
	c := Chart{Feeds: feeds.points(0.06), Travels: travels.points(1), Chance: make([]float64, n)}
	var fields [limitCount][]float64
	var crossed [limitCount][2]bool // limits that are met somewhere, and somewhere not
	for l := range fields {
		fields[l] = make([]float64, n)
	}
	for k := range n {
		i, j := k/travels.n, k%travels.n
		here := &at.grid.logs[k]
		for l := range fields {
			if fields[l][k] = here[l]; *here == hopeless || here.unjudged(limit(l)) != "" {
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

// heats are a grid's limits and, on coarser grids, what a colder and a hotter arc add to them.
type heats struct {
	grid    *limitGrid
	shifts  [2]limitGrid // colder, hotter
	weights weighs
	margins *margins
}

// every is how many points of the grid lie from one computed heat to the next.
const every = 3

// sweep computes the shifts, on all processors.
func (a *heats) sweep(ctx context.Context, h *heatField) error {
	coarser := func(x axis) axis { return axis{x.low, x.high, max(2, (x.n+every-1)/every)} }
	factors := suggest.Factors(a.weights.heat)
	var wg crew.Crew
	for k, factor := range [2]float64{factors[0], factors[2]} {
		a.shifts[k] = newLimitGrid(coarser(a.grid.feeds), coarser(a.grid.travels))
		g := &a.shifts[k]
		for i := range g.feeds.n {
			wg.Go(func() {
				limited(ctx, func() {
					for j := range g.travels.n {
						a.shift(h, g, i, j, factor)
					}
				})
			})
		}
	}
	wg.Wait()
	return ctx.Err()
}

// shift computes what a factor on the heat adds to the limits at a point; nothing where the model reaches neither.
func (a *heats) shift(h *heatField, g *limitGrid, i, j int, factor float64) {
	feed, travel := g.feeds.at(float64(i)), g.travels.at(float64(j))
	zinc := a.margins.zinc > 0
	from, err := h.limits(a.margins, feed, travel, 1, zinc)
	if err != nil {
		return
	}
	to, err := h.limits(a.margins, feed, travel, factor, zinc)
	if err != nil {
		to = hopeless
	}
	for l := range to {
		if from[l] < far {
			g.logs[i*g.travels.n+j][l] = to[l] - from[l]
		}
	}
}

// chance is that every edge is met, %, at grid coordinates where the limits are known.
func (a *heats) chance(here *Limits, x, y float64) float64 {
	three := [3]Limits{*here, *here, *here}
	for k := range a.shifts {
		g := &a.shifts[k]
		by := g.between(x*part(g.feeds.n-1, 0, a.grid.feeds.n-1), y*part(g.travels.n-1, 0, a.grid.travels.n-1))
		for l := range by {
			three[2*k][l] += by[l]
		}
	}
	return chanceOf(&three, &a.weights, a.margins, a.grid.travels.at(y)).Good
}
