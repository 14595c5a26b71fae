package canvas

import (
	"math"
	"slices"
)

// shapeKind is the outline of a mark.
type shapeKind uint8

const (
	rectangle shapeKind = iota // from one corner to the other
	disc                       // middle, half width, half height
	dome                       // the upper half of a disc
	wire                       // a line from one end to the other, 1.1 wide
	crack                      // the same, 0.9 wide
	slope                      // a triangle: under the line from one end to the other, which must be lower
)

// mark is one outline of a drawing, at some places.
type mark struct {
	kind shapeKind
	part part
	at   places
}

// places are counted in columns from the left and in halves of a line from the top, so that both are as long; the
// drawing is sightWide by sightHigh of them.
type places [][4]float64

// The size of a drawing of what a bead shows, in its own measure.
const sightWide, sightHigh = 18.0, 8.0

func (m *mark) covers(x, y float64) bool {
	return slices.ContainsFunc(m.at, func(at [4]float64) bool { return m.kind.covers(at, x, y) })
}

func (k shapeKind) covers(at [4]float64, x, y float64) bool {
	a, b, c, d := at[0], at[1], at[2], at[3]
	switch k {
	case disc, dome:
		u, v := (x-a)/c, (y-b)/d
		return u*u+v*v <= 1 && (k == disc || y <= b)
	case wire, crack:
		half := 0.55
		if k == crack {
			half = 0.45
		}
		dx, dy := c-a, d-b
		t := max(0, min(1, ((x-a)*dx+(y-b)*dy)/(dx*dx+dy*dy)))
		return math.Hypot(x-a-t*dx, y-b-t*dy) <= half
	case slope:
		return x >= min(a, c) && x <= max(a, c) && y <= d && y >= b+(x-a)/(c-a)*(d-b)
	}
	return x >= a && x < c && y >= b && y < d
}

// DrawSight draws what a test bead may show, by its id in tables.Sights: the joint from the side or from above.
// Nothing for an id without a drawing, or under 12 columns or 3 lines.
func DrawSight(th *Theme, id string, w, h int) Block {
	list := sights[id]
	if list == nil || w < 12 || h < 3 {
		return nil
	}
	scale := min(float64(w)/sightWide, float64(2*h)/sightHigh) // columns for one of its own
	c := NewCells(w, h)
	columns, lines := min(w, int(sightWide*scale+0.5)), min(h, int(sightHigh*scale/2+0.5))
	picture(c, th, 0, h-lines, columns, lines, func(column, line float64) part {
		x, y := column/float64(columns)*sightWide, line/float64(lines)*sightHigh
		for i := len(list) - 1; i >= 0; i-- {
			if list[i].covers(x, y) {
				return list[i].part
			}
		}
		return partAir
	})
	return c.Lines(th)
}
