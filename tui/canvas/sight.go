package canvas

import "math"

// shapeKind is the outline of a mark.
type shapeKind uint8

const (
	rectangle shapeKind = iota // from one corner to the other
	disc                       // middle, half width, half height
	dome                       // the upper half of a disc
	line                       // from one end to the other, size wide
	slope                      // a triangle: under the line from one end to the other, which must be lower
)

// mark is one outline of a drawing. Places are counted in columns from the left and in halves of a line from the top,
// so that both are as long; the drawing is sightWide by sightHigh of them.
type mark struct {
	kind       shapeKind
	part       part
	a, b, c, d float64
	size       float64
}

// The size of a drawing of what a bead shows, in its own measure.
const sightWide, sightHigh = 18.0, 8.0

func (m *mark) covers(x, y float64) bool {
	switch m.kind {
	case disc, dome:
		u, v := (x-m.a)/m.c, (y-m.b)/m.d
		return u*u+v*v <= 1 && (m.kind == disc || y <= m.b)
	case line:
		dx, dy := m.c-m.a, m.d-m.b
		t := max(0, min(1, ((x-m.a)*dx+(y-m.b)*dy)/(dx*dx+dy*dy)))
		return math.Hypot(x-m.a-t*dx, y-m.b-t*dy) <= m.size/2
	case slope:
		return x >= min(m.a, m.c) && x <= max(m.a, m.c) && y <= m.d && y >= m.b+(x-m.a)/(m.c-m.a)*(m.d-m.b)
	}
	return x >= m.a && x < m.c && y >= m.b && y < m.d
}

// SightDrawn reports whether there is a drawing of what a test bead may show, by its id in tables.Sights.
func SightDrawn(id string) bool { return sights[id] != nil }

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
