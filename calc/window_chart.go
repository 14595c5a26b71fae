package calc

import (
	"context"
	"math"

	"brazebooth/calc/effort"
	"brazebooth/calc/limit"
	"brazebooth/calc/limit/grid"
	"brazebooth/calc/suggest"
	"brazebooth/internal/crew"
)

// Chart is an operating window as fields to draw: every edge, and the chance, at each feed and travel.
type Chart struct {
	Feeds, Travels []float64 // m/min and mm/s, rising in equal ratios
	Edges          []ChartEdge
	Chance         []float64 // to meet every edge, %; feed outer, travel inner; 0 where the model does not reach
}

// ChartEdge is one edge of a chart: the logarithm of a ratio at each point, feed outer, zero on the edge and positive
// on its good side. NaN where the model does not reach and where the edge means nothing.
type ChartEdge struct {
	Name   string // as on the card
	Beyond string // what happens past it, a word or two
	Inside []float64
}

// pastEdge says what happens past each limit.
var pastEdge = [limit.Count]string{
	limit.Wets: "cold", limit.Solid: "too hot", limit.Burn: "burns through", limit.Filled: "not filled",
	limit.Bridges: "gap stays open", limit.Stays: "drips", limit.Floor: "arc stubs", limit.Spray: "arc sprays",
	limit.Zinc: "zinc burnt wide", limit.Slow: "too slow for a hand", limit.Fast: "too fast for a hand",
}

// ChartOf computes the chart of a window: its edges at the window's own points, and the chance by the same function as
// a card's. What a hotter and a colder arc do to the limits is computed at every third point and interpolated between.
func ChartOf(ctx context.Context, w *Window) (Chart, error) {
	open := w.Job
	open.Feed, open.Travel, open.Amps = Opt{}, Opt{}, Opt{}
	b, card, err := laidOut(effort.New(ctx), open)
	if err != nil {
		return Chart{}, err
	}
	d := b.draws(card, WindowSize{len(w.Feeds), len(w.Travels)})
	for ; d.Step > 1; d.Halve() {
		if err := d.sweep(func(float64) {}); err != nil {
			return Chart{}, err
		}
	}
	if err := d.sweep(func(float64) {}); err != nil {
		return Chart{}, err
	}
	weights, err := b.weighed(&d.field.margins)
	if err != nil {
		return Chart{}, err
	}
	at := heats{grid: &d.Limits, weights: weights, field: &d.field}
	if err := at.sweep(ctx); err != nil {
		return Chart{}, err
	}
	return chartOf(&at), nil
}

// chartOf reads the fields from the grids.
func chartOf(at *heats) Chart {
	feeds, travels := at.grid.Feeds, at.grid.Travels
	c := Chart{Feeds: feeds.Points(0.06), Travels: travels.Points(1), Chance: make([]float64, feeds.N*travels.N)}
	for k := range c.Chance {
		if here := &at.grid.Points[k]; *here != limit.Hopeless {
			c.Chance[k] = at.chance(here, float64(k/travels.N), float64(k%travels.N))
		}
	}
	for l := range limit.Count {
		field, met, missed := make([]float64, len(c.Chance)), false, false
		for k := range field {
			here := &at.grid.Points[k]
			if field[k] = here[l]; *here == limit.Hopeless || here.Unjudged(l) != "" {
				field[k] = math.NaN()
			}
			met, missed = met || field[k] >= 0, missed || field[k] < 0
		}
		if met && missed {
			c.Edges = append(c.Edges, ChartEdge{l.Edge(), pastEdge[l], field})
		}
	}
	return c
}

// heats are a grid's limits and, on coarser grids, what a colder and a hotter arc add to them.
type heats struct {
	grid    *grid.Limits
	shifts  [2]grid.Limits // colder, hotter
	weights weighs
	field   *heatField
}

// every is the step, in points of the grid, between computed heats.
const every = 3

// sweep computes the shifts in parallel.
func (a *heats) sweep(ctx context.Context) error {
	coarser := func(x grid.Axis) grid.Axis {
		return grid.Axis{Low: x.Low, High: x.High, N: max(2, (x.N+every-1)/every)}
	}
	factors := suggest.Factors(a.weights.heat)
	var wg crew.Crew
	for k, factor := range [2]float64{factors[0], factors[2]} {
		a.shifts[k] = grid.New(coarser(a.grid.Feeds), coarser(a.grid.Travels))
		g := &a.shifts[k]
		for i := range g.Feeds.N {
			wg.Go(func() {
				effort.Limited(ctx, func() {
					for j := range g.Travels.N {
						a.shift(g, i, j, factor)
					}
				})
			})
		}
	}
	wg.Wait()
	return ctx.Err()
}

// shift computes what a factor on the heat adds to the limits at a point; nothing where the model does not reach.
func (a *heats) shift(g *grid.Limits, i, j int, factor float64) {
	feed, travel := g.Feeds.At(float64(i)), g.Travels.At(float64(j))
	from, err := a.field.limits(feed, travel, 1)
	if err != nil {
		return
	}
	to, _ := a.field.limits(feed, travel, factor)
	for l := range to {
		if from[l] < limit.Far {
			g.Points[i*g.Travels.N+j][l] = to[l] - from[l]
		}
	}
}

// chance is the chance to meet every edge, %, at a place of the grid whose limits are here.
func (a *heats) chance(here *limit.All, x, y float64) float64 {
	three := [3]limit.All{*here, *here, *here}
	for k := range a.shifts {
		g := &a.shifts[k]
		by := g.Between(x*grid.Part(g.Feeds.N-1, 0, a.grid.Feeds.N-1),
			y*grid.Part(g.Travels.N-1, 0, a.grid.Travels.N-1))
		for l := range by {
			three[2*k][l] += by[l]
		}
	}
	return chanceOf(&three, &a.weights, &a.field.margins, a.grid.Travels.At(y)).Good
}
