package canvas

import (
	"math"
	"slices"
)

// axis is the ends of an axis.
type axis struct{ low, high float64 }

// Trace is points joined by a line.
type Trace struct {
	Name   string
	X, Y   []float64 // as many, at least one; X rises
	Dotted bool      // the second line of a chart, so that the two can be told apart without colour
}

// look is a trace's ink, and the sign before its name.
func (t *Trace) look() (Ink, string) {
	if t.Dotted {
		return Quiet.Ink(), "╌╌"
	}
	return Text.Ink(), "──"
}

// Limit is a value that should not be passed, drawn across the chart with its name.
type Limit struct {
	Name  string
	At    float64
	State State
}

// Stretch is a part of the X axis in which something happens.
type Stretch struct{ From, To float64 }

// Chart shows traces over an axis: heat over time.
type Chart struct {
	X, Y   string // the units of the axes
	Traces []Trace
	Limits []Limit
	On     []Stretch // while the arc burns
	OnName string
	Comma  bool // a decimal comma at the axes
}

// chartDrawing is a chart while it is drawn.
type chartDrawing struct {
	*Chart
	c      *Cells
	left   int // columns to the left of the plot
	w, h   int // of the plot, in cells
	x, y   axis
	dots   *dots
	limits []Ink // of each line: of the last limit on it, whose ink the others take over
	legend bool  // to the right of the plot
}

// Draw draws the chart. It draws nothing if the plot would have fewer than 16 columns or 3 lines.
func (ch *Chart) Draw(th *Theme, w, h int) Block {
	d := chartDrawing{Chart: ch, dots: braille}
	if th.coarse {
		d.dots = halves
	}
	d.ranges()
	if !d.lay(w, h) {
		return nil
	}
	d.c = NewCells(w, h)
	d.limits = make([]Ink, d.h)
	d.axes()
	for i := range d.Limits {
		d.limit(&d.Limits[i])
	}
	for _, dotted := range [...]bool{true, false} { // solid last: where both meet, the solid line keeps its ink
		for i := range d.Traces {
			if d.Traces[i].Dotted == dotted {
				d.trace(&d.Traces[i])
			}
		}
	}
	d.names()
	d.stretches()
	return d.c.Lines(th)
}

// lay divides the room: numbers to the left and below, names to the right if they fit.
func (d *chartDrawing) lay(w, h int) bool {
	if d.h = h - 2; d.h < 3 {
		return false
	}
	names := width(d.OnName) + 4
	for _, l := range d.Limits {
		names = max(names, width(l.Name)+1)
	}
	for _, t := range d.Traces {
		names = max(names, width(t.Name)+4)
	}
	if d.legend = w >= 56 && names <= w/3; !d.legend {
		names = 0
	}
	for _, t := range d.ticksY() {
		d.left = max(d.left, width(t.text))
	}
	d.left = max(d.left, min(4, width(d.Y))) + 1
	d.w = w - d.left - names
	return d.w >= 16
}

func (d *chartDrawing) ticksY() []tick { return evenTicks(d.y, d.h, 3, d.Comma) }

// ranges finds the ends of the axes.
func (d *chartDrawing) ranges() {
	d.x = axis{math.Inf(1), math.Inf(-1)}
	d.y = d.x
	for _, t := range d.Traces {
		d.x.take(t.X...)
		d.y.take(t.Y...)
	}
	for _, l := range d.Limits {
		d.y.take(l.At)
	}
	by := 0.04 * (d.y.high - d.y.low)
	d.y.low, d.y.high = d.y.low-by, d.y.high+by
}

func (a *axis) take(list ...float64) {
	a.low, a.high = min(a.low, slices.Min(list)), max(a.high, slices.Max(list))
}
