package canvas

import "math"

// wide and high are the size of the plot in dots.
func (d *chartDrawing) wide() int { return d.w * d.dots.wide }
func (d *chartDrawing) high() int { return d.h * d.dots.high }

// column and row are the dot of a value, from the left and from the top.
func (d *chartDrawing) column(v float64) int {
	return int((v - d.x.low) / (d.x.high - d.x.low) * float64(d.wide()-1) * (1 + 1e-12))
}

func (d *chartDrawing) row(v float64) int {
	return int(math.Round((d.y.high - v) / (d.y.high - d.y.low) * float64(d.high()-1)))
}

// put sets a dot of the plot. The last one drawn in a cell decides its ink.
func (d *chartDrawing) put(x, y int, k Ink) { d.c.dot(d.dots, d.left*d.dots.wide+x, y, k) }

// trace draws a trace from point to point. A dotted one leaves out two of every four dots.
func (d *chartDrawing) trace(t *Trace) {
	k, _ := t.look()
	x, y, n := d.column(t.X[0]), d.row(t.Y[0]), 0
	d.put(x, y, k)
	for i := range t.X {
		across, down := d.column(t.X[i])-x, d.row(t.Y[i])-y
		steps := max(across, -across, down, -down)
		for s := 1; s <= steps; s++ {
			part := func(way int) int { return int(math.Round(float64(way*s) / float64(steps))) }
			if n++; !t.Dotted || n%4 < 2 {
				d.put(x+part(across), y+part(down), k)
			}
		}
		x, y = x+across, y+down
	}
}

func (d *chartDrawing) limit(l *Limit) {
	y := d.row(l.At)
	d.limits[y/d.dots.high] = l.State.Ink()
	for x := range d.wide() {
		d.put(x, y, l.State.Ink())
	}
}

// axes draws the numbers of both axes and the line of the left one.
func (d *chartDrawing) axes() {
	yAxis(d.c, d.left, d.h, d.ticksY())
	y := d.c.H - 1
	if width(d.Y) < d.left {
		d.c.Put(d.left-1-width(d.Y), y, Quiet.Ink(), d.Y)
	}
	unit := d.left + d.w - width(d.X)
	if unit > d.left+8 {
		d.c.Put(unit, y, Quiet.Ink(), d.X)
	}
	xNumbers(d.c, d.left, y, d.left, evenTicks(d.x, d.w, 10, d.Comma))
}

// names writes what the lines are: beside the plot, or above a limit's line if there is no room beside.
func (d *chartDrawing) names() {
	taken := make([]bool, d.c.H)
	x := d.left + d.w + 1
	for i := range d.Limits {
		l := &d.Limits[i]
		y := d.row(l.At) / d.dots.high
		if !d.legend {
			d.over(l, y, taken)
			continue
		}
		if at := freeLine(taken, y, d.h); at >= 0 {
			d.c.Put(x, at, d.limits[y]|Bold, l.Name)
		}
	}
	if !d.legend {
		return
	}
	for i := range d.Traces {
		t := &d.Traces[i]
		y := d.row(t.Y[len(t.Y)-1]) / d.dots.high
		if at := freeLine(taken, y, d.h); at >= 0 {
			k, sign := t.look()
			d.c.Put(d.c.Put(x, at, k, sign)+1, at, k, t.Name)
		}
	}
}

// over writes a limit's name above its line or below it, in full or not at all.
func (d *chartDrawing) over(l *Limit, y int, taken []bool) {
	for _, at := range [...]int{y - 1, y + 1} {
		if from := d.left + d.w - width(l.Name); at >= 0 && at < d.h && !taken[at] && from > d.left {
			d.c.Put(from, at, d.limits[y]|Bold, l.Name)
			taken[at] = true
			return
		}
	}
}

// freeLine takes the free line nearest to y; -1 if there is none.
func freeLine(taken []bool, y, h int) int {
	for away := range h {
		for _, at := range [...]int{y + away, y - away} {
			if at >= 0 && at < h && !taken[at] {
				taken[at] = true
				return at
			}
		}
	}
	return -1
}

// stretches shows below the plot when the arc burns.
func (d *chartDrawing) stretches() {
	for x := range d.w {
		at := d.x.low + (float64(x)+0.5)/float64(d.w)*(d.x.high-d.x.low)
		k, text := Rule.Ink(), "▔"
		for _, s := range d.On {
			if at >= s.From && at < s.To {
				k, text = Text.Ink(), "▀"
			}
		}
		d.c.Set(d.left+x, d.h, k, text)
	}
	if x := d.left + d.w + 1; d.legend {
		d.c.Put(d.c.Put(x, d.h, Text.Ink(), "▀▀")+1, d.h, Quiet.Ink(), d.OnName)
	}
}
