package calc

import (
	"cmp"
	"math"
	"slices"

	"brazebooth/calc/formula"
	"brazebooth/internal/crew"
	"brazebooth/tables"
)

// suggestion is a pair of settings with the range each may take while the other stays.
type suggestion struct {
	feed, travel        float64 // mm/s
	feedLow, feedHigh   float64
	travelLow, travelHi float64
	found               bool
}

// suggest finds the feed and travel left open: the point furthest, in relative terms, from every edge of the operating
// window. It climbs to it from the best points of a coarse grid of cross-sections. WindowOf takes the same point.
func (b *board) suggest(card *Card) (suggestion, error) {
	feedOpen := !card.Used.Feed.Set && !b.chain.ampsGiven
	travelOpen := !card.Used.Travel.Set && b.chain.sectionModelled()
	if !feedOpen && !travelOpen {
		return suggestion{}, nil
	}
	if !b.chain.sectionModelled() {
		return b.suggestSteady(card)
	}
	m := newMargins(b, card)
	h := b.heatField(card)
	const nf, nv = 5, 5
	feeds := axis{b.inputs[inFeed], b.inputs[inFeed], 1}
	if feedOpen {
		low, high := b.steadyFeeds(&m)
		feeds = axis{low, high, nf}
	}
	travels := axis{b.inputs[inTravel], b.inputs[inTravel], 1}
	if travelOpen {
		travels = axis{m.slow, m.fast, nv}
	}
	c, err := coarseGrids(&h, &m, feeds, travels)
	if err != nil {
		return suggestion{}, err
	}
	top, ok := c.best(&h, &m, feeds, travels)
	if !ok {
		p := c.peaks(1)[0]
		top = place{feed: feeds.at(p.x), travel: travels.at(p.y)}
	}
	s := suggestion{feed: top.feed, travel: top.travel, found: ok && lowest((*[limitCount]float64)(&top.logs)) >= 0}
	_, aimed := h.aimed(&m, s.feed, s.travel)
	s.settle(&top, aimed, &m, feeds, travels)
	return s, nil
}

// peak is a point of a grid with its margin.
type peak struct{ x, y, margin float64 }

// coarse is a grid for each open aim: each grid bends little, while the best aim at every point would bend much.
type coarse []limitGrid

// peaks are the points of the grids with the greatest margins, none near another: a good zone is often a narrow ridge
// from slow to fast, highest at both its ends.
func (c coarse) peaks(n int) []peak {
	var all []peak
	for i := range c {
		all = append(all, c[i].margins()...)
	}
	slices.SortStableFunc(all, func(a, b peak) int { return cmp.Compare(b.margin, a.margin) })
	var list []peak
	for _, p := range all {
		if len(list) == n {
			break
		}
		if !slices.ContainsFunc(list, func(q peak) bool { return math.Abs(p.x-q.x) < 0.8 && math.Abs(p.y-q.y) < 0.8 }) {
			list = append(list, p)
		}
	}
	return list
}

// margins are those of a grid's points and of some between them.
func (c *limitGrid) margins() (all []peak) {
	const perCell = 6
	for i := range (c.feeds.n-1)*perCell + 1 {
		for j := range (c.travels.n-1)*perCell + 1 {
			x, y := float64(i)/perCell, float64(j)/perCell
			all = append(all, peak{x, y, c.margin(x, y)})
		}
	}
	return all
}

// suggestSteady is for a timed arc and a plug, where only the arc's own range is known: it suggests the middle.
func (b *board) suggestSteady(card *Card) (suggestion, error) {
	m := newMargins(b, card)
	low, high := b.steadyFeeds(&m)
	return suggestion{feed: math.Sqrt(low * high), feedLow: low, feedHigh: high, found: true}, nil
}

// steadyFeeds are the lowest and highest feeds whose current the arc holds steadily, mm/s.
func (b *board) steadyFeeds(m *margins) (low, high float64) {
	low, high = 17, 340 // 1 to 20 m/min, where no limit is known
	k := &b.inputs
	at := func(amps float64) (float64, error) {
		return formula.FeedFromCurrent(k[inWire], amps/k[inForm], k[inDensity], k[inHLiq], k[inRhoE], k[inPhi], k[inStick])
	}
	if f, err := at(m.floor); err == nil {
		low = f
	}
	if f, err := at(m.spray); err == nil && f > low {
		high = f
	}
	const bit = 1e-9 // an end that is rounded on its way to the card and back stays inside
	return low * (1 + bit), high * (1 - bit)
}

// axis is a range of one setting, divided logarithmically into n points.
type axis struct {
	low, high float64
	n         int
}

func (a axis) at(x float64) float64 {
	if a.n == 1 {
		return a.low
	}
	return a.low * math.Pow(a.high/a.low, x/float64(a.n-1))
}

// step is the logarithm between two points.
func (a axis) step() float64 {
	if a.n == 1 {
		return 1
	}
	return math.Log(a.high/a.low) / float64(a.n-1)
}

// limitGrid is the logarithms of all limits over feeds and travels, feed outer.
type limitGrid struct {
	feeds, travels axis
	logs           [][limitCount]float64
}

func coarseGrids(h *heatField, m *margins, feeds, travels axis) (coarse, error) {
	fields := h.each()
	c := make(coarse, len(fields))
	var wg crew.Crew
	for n := range c {
		c[n] = newLimitGrid(feeds, travels)
		for i := range feeds.n { // rows in parallel: somebody waits for this one
			wg.Go(func() {
				for j := range travels.n {
					c[n].put(&fields[n], m, i, j)
				}
			})
		}
	}
	wg.Wait()
	for n := range c {
		for _, l := range c[n].logs {
			if l != hopeless {
				return c, nil
			}
		}
	}
	_, err := h.at(feeds.at(0), travels.at(0), m.zinc > 0)
	return c, err
}

// put computes the limits of a point.
func (c *limitGrid) put(h *heatField, m *margins, i, j int) {
	l := m.beside(h, c.feeds.at(float64(i)), c.travels.at(float64(j)))
	if !l.known() {
		l = hopeless
	}
	c.logs[i*c.travels.n+j] = l
}

func newLimitGrid(feeds, travels axis) limitGrid {
	return limitGrid{feeds, travels, make([][limitCount]float64, feeds.n*travels.n)}
}

// hopeless are the limits where the model has no answer: no point there is ever suggested.
var hopeless = func() (l [limitCount]float64) {
	for i := range l {
		l[i] = -far
	}
	return l
}()

// between interpolates the logarithms at grid coordinates; they bend little, so that straight lines are enough.
func (c *limitGrid) between(x, y float64) (l [limitCount]float64) {
	i, j := cell(x, c.feeds.n), cell(y, c.travels.n)
	fx, fy := x-float64(i), y-float64(j)
	at := func(di, dj int) *[limitCount]float64 {
		return &c.logs[min(i+di, c.feeds.n-1)*c.travels.n+min(j+dj, c.travels.n-1)]
	}
	a, b, d, e := at(0, 0), at(0, 1), at(1, 0), at(1, 1)
	for k := range l {
		l[k] = (a[k]*(1-fy)+b[k]*fy)*(1-fx) + (d[k]*(1-fy)+e[k]*fy)*fx
	}
	return l
}

func cell(x float64, n int) int { return max(0, min(int(x), n-2)) }

// margin is how far a grid point is from its nearest edge, as a logarithmic change of feed or travel; below zero
// where an edge is not met.
func (c *limitGrid) margin(x, y float64) float64 {
	const h = 0.05
	l := c.between(x, y)
	f, g := c.slopes(x, y, h)
	return marginOf(&l, &f, &g)
}

// unmet sums what is missing at the edges that are not met: of points from which no change of feed or travel leads
// inside, the better one misses less.
func unmet(l *[limitCount]float64) float64 {
	sum := 0.0
	for _, v := range l {
		sum += min(0, v)
	}
	return sum
}

// slopes are the limits' changes with the logarithms of feed and travel. A setting that was given has none here: its
// slope is on the card, not in the grid.
func (c *limitGrid) slopes(x, y, h float64) (f, g [limitCount]float64) {
	diff := func(x0, y0, x1, y1, width float64) (out [limitCount]float64) {
		a, b := c.between(x0, y0), c.between(x1, y1)
		for k := range out {
			out[k] = (b[k] - a[k]) / width
		}
		return out
	}
	if c.feeds.n > 1 {
		x0, x1 := max(0, x-h), min(float64(c.feeds.n-1), x+h)
		f = diff(x0, y, x1, y, (x1-x0)*c.feeds.step())
	}
	if c.travels.n > 1 {
		y0, y1 := max(0, y-h), min(float64(c.travels.n-1), y+h)
		g = diff(x, y0, x, y1, (y1-y0)*c.travels.step())
	}
	return f, g
}

// neededArea is the bead section that one bead must lay, mm2: what the joint needs, or as much as one pass lays well.
func neededArea(card *Card) float64 { return min(wholeArea(card), tables.OnePass.V) }

// wholeArea is the section of metal that the joint needs, mm2: for the leg or throat that was asked for, or a fillet as
// high as the thinner sheet, or the open root filled.
func wholeArea(card *Card) float64 {
	u, m := &card.Used, &card.Setup.Members
	t := min(m[0].Core, m[1].Core)
	switch u.Joint {
	case "lap":
		leg := u.legOr(m[0].Core)
		return leg*leg/2 + u.Gap.V*leg
	case "tee":
		leg := u.legOr(t)
		return leg*leg/2 + u.Gap.V*leg
	case "corner":
		return m[0].Core * m[1].Core / 2
	case "butt":
		return max(u.Gap.V*t, t*t/4)
	}
	layer := min(1, u.Layer.Or(1)) // a higher one is laid in several
	return layer * 2 * layer
}

// legOr is the fillet leg that was asked for, directly or by its throat, mm.
func (j *Job) legOr(other float64) float64 {
	switch {
	case j.Leg.Set:
		return j.Leg.V
	case j.Throat.Set:
		return j.Throat.V * math.Sqrt2
	}
	return other
}
