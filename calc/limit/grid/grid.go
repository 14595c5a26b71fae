package grid

import (
	"math"

	"brazebooth/calc/limit"
)

// Axis is a range of one setting, divided logarithmically into N points.
type Axis struct {
	Low, High float64
	N         int
}

// At is the setting at a place on the axis, in points from 0; it may be between two points.
func (a Axis) At(x float64) float64 {
	if a.N == 1 {
		return a.Low
	}
	return a.Low * math.Pow(a.High/a.Low, x/float64(a.N-1))
}

// Points are the settings at all points, each times unit.
func (a Axis) Points(unit float64) []float64 {
	list := make([]float64, a.N)
	for i := range list {
		list[i] = a.At(float64(i)) * unit
	}
	return list
}

// step is the logarithm of the ratio between two neighbours.
func (a Axis) step() float64 {
	return math.Log(a.High/a.Low) / float64(a.N-1)
}

func (a Axis) everySecond() Axis {
	n := (a.N + 1) / 2
	return Axis{a.Low, a.At(float64(2 * (n - 1))), n}
}

// Limits holds all limits on a grid of feeds and travels.
type Limits struct {
	Feeds, Travels Axis
	Points         []limit.All // feed outer
}

// New is a grid whose limits are still to be computed.
func New(feeds, travels Axis) Limits {
	return Limits{feeds, travels, make([]limit.All, feeds.N*travels.N)}
}

// Put sets the limits of a point; limits that the model did not reach become limit.Hopeless.
func (c *Limits) Put(i, j int, l limit.All) {
	if !l.Known() {
		l = limit.Hopeless
	}
	c.Points[i*c.Travels.N+j] = l
}

// EverySecond removes every second point along each axis.
func (c *Limits) EverySecond() {
	old := *c
	*c = New(old.Feeds.everySecond(), old.Travels.everySecond())
	for i := range c.Feeds.N {
		for j := range c.Travels.N {
			c.Points[i*c.Travels.N+j] = old.Points[2*i*old.Travels.N+2*j]
		}
	}
}

// Between interpolates linearly between the points around a place, in points from 0 along feeds and travels.
func (c *Limits) Between(x, y float64) (l limit.All) {
	i, j := cell(x, c.Feeds.N), cell(y, c.Travels.N)
	fx, fy := x-float64(i), y-float64(j)
	at := func(di, dj int) *limit.All {
		return &c.Points[min(i+di, c.Feeds.N-1)*c.Travels.N+min(j+dj, c.Travels.N-1)]
	}
	return bilinear([4]*limit.All{at(0, 0), at(0, 1), at(1, 0), at(1, 1)}, fx, fy)
}

// bilinear interpolates between the corners of a cell, at the shares x and y of its sides.
func bilinear(c [4]*limit.All, x, y float64) (l limit.All) {
	for k := range l {
		l[k] = (c[0][k]*(1-y)+c[1][k]*y)*(1-x) + (c[2][k]*(1-y)+c[3][k]*y)*x
	}
	return l
}

// cell is the index of the cell that contains a place on an axis of n points.
func cell(x float64, n int) int { return max(0, min(int(x), n-2)) }

// Slopes are the slopes of the limits over the logarithms of feed and travel, from h points below a place to h points
// above it. Along an axis with a single point, which is a given setting, they are zero.
func (c *Limits) Slopes(x, y, h float64) (byFeed, byTravel limit.All) {
	diff := func(x0, y0, x1, y1, width float64) (out limit.All) {
		a, b := c.Between(x0, y0), c.Between(x1, y1)
		for k := range out {
			out[k] = (b[k] - a[k]) / width
		}
		return out
	}
	if c.Feeds.N > 1 {
		x0, x1 := max(0, x-h), min(float64(c.Feeds.N-1), x+h)
		byFeed = diff(x0, y, x1, y, (x1-x0)*c.Feeds.step())
	}
	if c.Travels.N > 1 {
		y0, y1 := max(0, y-h), min(float64(c.Travels.N-1), y+h)
		byTravel = diff(x, y0, x, y1, (y1-y0)*c.Travels.step())
	}
	return byFeed, byTravel
}

// Part is the position of i between low (0) and high (1); 0 if both are equal.
func Part(i, low, high int) float64 {
	if high == low {
		return 0
	}
	return float64(i-low) / float64(high-low)
}
