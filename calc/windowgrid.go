package calc

import "math"

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

// points are all of them in another unit.
func (a axis) points(unit float64) []float64 {
	list := make([]float64, a.n)
	for i := range list {
		list[i] = a.at(float64(i)) * unit
	}
	return list
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
	logs           []Limits
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
	return limitGrid{feeds, travels, make([]Limits, feeds.n*travels.n)}
}

// hopeless are the limits where the model has no answer: no point there is ever suggested.
var hopeless = func() (l Limits) {
	for i := range l {
		l[i] = -far
	}
	return l
}()

// between interpolates the logarithms at grid coordinates; they bend little, so that straight lines are enough.
func (c *limitGrid) between(x, y float64) (l Limits) {
	i, j := cell(x, c.feeds.n), cell(y, c.travels.n)
	fx, fy := x-float64(i), y-float64(j)
	at := func(di, dj int) *Limits {
		return &c.logs[min(i+di, c.feeds.n-1)*c.travels.n+min(j+dj, c.travels.n-1)]
	}
	return bilinear([4]*Limits{at(0, 0), at(0, 1), at(1, 0), at(1, 1)}, fx, fy)
}

// bilinear interpolates between the corners of a cell, at the shares x and y of its sides.
func bilinear(c [4]*Limits, x, y float64) (l Limits) {
	for k := range l {
		l[k] = (c[0][k]*(1-y)+c[1][k]*y)*(1-x) + (c[2][k]*(1-y)+c[3][k]*y)*x
	}
	return l
}

func cell(x float64, n int) int { return max(0, min(int(x), n-2)) }

// slopes are the limits' changes with the logarithms of feed and travel. A setting that was given has none here: its
// slope is on the card, not in the grid.
func (c *limitGrid) slopes(x, y, h float64) (f, g Limits) {
	diff := func(x0, y0, x1, y1, width float64) (out Limits) {
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

func part(i, low, high int) float64 {
	if high == low {
		return 0
	}
	return float64(i-low) / float64(high-low)
}
