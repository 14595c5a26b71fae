package canvas

import (
	"math"
	"slices"
)

// Land is the meaning of a point of the map.
type Land uint8

// The lands. Good has three steps of margin, the last with the largest margin.
const (
	LandCold Land = iota
	LandHot
	LandBurns
	LandOutside
	LandGood1
	LandGood2
	LandGood3
	lands = iota
)

var landSigns = [lands]struct{ sign, word, short string }{
	LandCold:    {"·", "COLD", "COLD"},
	LandHot:     {"+", "TOO HOT", "HOT"},
	LandBurns:   {"#", "BURNS THROUGH", "BURNS"},
	LandOutside: {",", "OUTSIDE", "OUT"},
	LandGood1:   {"▒", "", ""},
	LandGood2:   {"▓", "", ""},
	LandGood3:   {"█", "GOOD", "GOOD"},
}

func (l Land) ground() Role  { return landInk + Role(l) }
func (l Land) on(r Role) Ink { return r.On(l.ground()) }

// Map shows what every combination of two settings does. Values are in the units of its axes. Both axes are
// logarithmic.
type Map struct {
	X, Y         []float64 // above zero and rising: the columns, and the rows from the bottom up
	Lands        []Land    // of each point, X outer, Y inner
	NameX, NameY string    // of the axes, with their units
	At           [2]float64
	TextX, TextY string     // the values of At as written at the axes
	Suggested    [2]float64 // the suggestion
	Comma        bool       // a decimal comma at the axes
	Stale        bool       // of an earlier job: drawn in signs, in quiet text, without cross-hair and suggestion
}

// mapDrawing is a map while it is drawn.
type mapDrawing struct {
	*Map
	c            *Cells
	th           *Theme
	left         int // columns to the left of the field
	w, h         int // of the field
	low, high    [2]float64
	atX, atY     int // cell of the setting
	bestX, bestY int // cell of the suggestion
	shown        []Land
}

// Draw draws the map: the field, its axes with round numbers, and their names if there is room. It draws nothing below
// 24 columns or 6 lines.
func (m *Map) Draw(th *Theme, w, h int) Block {
	if w < 24 || h < 6 {
		return nil
	}
	d := mapDrawing{Map: m, th: th, low: [2]float64{m.X[0], m.Y[0]}, high: [2]float64{m.X[len(m.X)-1], m.Y[len(m.Y)-1]}}
	d.left = d.labelWidth(h) + 1
	below := 2
	if h >= 8 {
		below = 3
	}
	if d.w, d.h = w-d.left, h-below; d.w < 16 {
		return nil
	}
	d.c = NewCells(w, h)
	d.atX, d.atY = d.cellX(m.At[0]), d.cellY(m.At[1])
	d.bestX, d.bestY = d.cellX(m.Suggested[0]), d.cellY(m.Suggested[1])
	d.field()
	d.axes()
	if below > 2 {
		d.names(h - 1)
	}
	d.labels()
	d.cross()
	return d.c.Lines(th)
}

// labelWidth is the room for the numbers beside the field. It fits the longest number that a setting may have,
// otherwise the whole field would move when the setting changes from 9.9 to 10.57.
func (d *mapDrawing) labelWidth(h int) int {
	n := max(5, width(d.TextY))
	for _, t := range d.ticksY(h) {
		n = max(n, width(t.text))
	}
	return n + 1
}

func (d *mapDrawing) ticksY(lines int) []tick {
	return logTicks(d.low[1], d.high[1], lines, d.Comma, func(string) int { return 2 })
}

// cellX is the column of a value in the field, cellY its line from the top.
func (d *mapDrawing) cellX(v float64) int { return share(v, d.low[0], d.high[0], d.w) }
func (d *mapDrawing) cellY(v float64) int { return d.h - 1 - share(v, d.low[1], d.high[1], d.h) }

// nearest is the index of the value nearest to a share of a logarithmic axis.
func nearest(list []float64, at float64) int {
	v := list[0] * math.Exp(at*math.Log(list[len(list)-1]/list[0]))
	i, _ := slices.BinarySearch(list, v)
	if i == len(list) || i > 0 && v/list[i-1] < list[i]/v {
		i--
	}
	return i
}

// field draws the lands in half-blocks, or in signs on a terminal without colour.
func (d *mapDrawing) field() {
	columns := make([]int, d.w)
	for x := range columns {
		columns[x] = nearest(d.X, (float64(x)+0.5)/float64(d.w))
	}
	d.shown = make([]Land, d.w*d.h)
	for y := range d.h {
		up, low := nearest(d.Y, 1-(float64(2*y)+0.5)/float64(2*d.h)), nearest(d.Y, 1-(float64(2*y)+1.5)/float64(2*d.h))
		for x := range columns {
			a, b := d.Lands[columns[x]*len(d.Y)+up], d.Lands[columns[x]*len(d.Y)+low]
			d.shown[y*d.w+x] = b
			d.put(x, y, a, b)
		}
	}
}

func (d *mapDrawing) put(x, y int, a, b Land) {
	switch {
	case !d.th.ground || d.Stale:
		d.c.Set(d.left+x, y, Quiet.Ink(), landSigns[b].sign)
	case a == b:
		d.c.Set(d.left+x, y, a.on(Own), "")
	default:
		d.c.Set(d.left+x, y, b.ground().On(a.ground()), "▄")
	}
}

func (d *mapDrawing) ink(x, y int, r Role) Ink {
	if !d.th.ground || d.Stale {
		return r.Ink()
	}
	return d.shown[y*d.w+x].on(r)
}
