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
	crack                      // like wire, but 0.9 wide
	slope                      // a triangle below the line from one end to the other, which must be lower
)

// mark is one outline, drawn at some places.
type mark struct {
	kind shapeKind
	part part
	at   places
}

// places are counted in columns from the left and in half lines from the top, so that both units have the same length.
// A drawing is sightWide by sightHigh of them.
type places [][4]float64

// The size of a drawing of a test bead, in its own units.
const sightWide, sightHigh = 18.0, 8.0

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

// DrawSight draws what a test bead may show, by its id in tables.Sights: the joint from the side or from above. It
// draws nothing for an unknown id, or below 12 columns or 3 lines.
func DrawSight(th *Theme, id string, w, h int) Block {
	list := sights[id]
	if list == nil || w < 12 || h < 3 {
		return nil
	}
	scale := min(float64(w)/sightWide, float64(2*h)/sightHigh) // columns for one unit of the drawing
	c := NewCells(w, h)
	columns, lines := min(w, int(sightWide*scale+0.5)), min(h, int(sightHigh*scale/2+0.5))
	c.picture(th, 0, h-lines, columns, lines, func(column, line float64) part {
		x, y := column/float64(columns)*sightWide, line/float64(lines)*sightHigh
		for i := len(list) - 1; i >= 0; i-- {
			if slices.ContainsFunc(list[i].at, func(at [4]float64) bool { return list[i].kind.covers(at, x, y) }) {
				return list[i].part
			}
		}
		return partAir
	})
	return c.Lines(th)
}

// Parts that many drawings share: a sheet lapped onto another one, seen from the side; a bead along two sheets, seen
// from above. Later marks cover earlier ones.
var (
	upper = mark{rectangle, partFirst, places{{0, 4, 8, 6}}}
	lower = mark{rectangle, partSecond, places{{0, 6, 18, 8}}}
	far   = mark{rectangle, partFirst, places{{0, 0, 18, 4}}}
	near  = mark{rectangle, partSecond, places{{0, 4, 18, 8}}}
	bead  = mark{rectangle, partBead, places{{0, 2, 18, 6}}}
)

// sights are the drawings of what a test bead may show, by id.
var sights = map[string][]mark{
	"rolled-edge": {upper, lower,
		{disc, partBead, places{{11.2, 3.2, 4, 2.8}}},
	},
	"thin-wide": {
		{rectangle, partBead, places{{4, 3.4, 9, 4}}},
		{slope, partBead, places{{7, 3.4, 17.5, 6}}}, upper, lower,
		{rectangle, partBluing, places{{2, 4, 6, 6}, {6, 6, 18, 7}}},
	},
	"zinc-gone-behind": {
		{slope, partBead, places{{5, 0.6, 15, 4}}},
		{rectangle, partFirst, places{{0, 2, 8, 4}}},
		{rectangle, partSecond, places{{0, 4, 18, 6}}},
		{rectangle, partMelted, places{{1, 6, 17, 7}}},
		{rectangle, partBoiled, places{{4, 6, 14, 7}}},
	},
	"burn-through": {
		{rectangle, partFirst, places{{0, 1, 7, 3}}},
		{rectangle, partSecond, places{{0, 3, 8, 5}, {13, 3, 18, 5}}},
		{disc, partBead, places{{7.5, 2.2, 1.8, 2}, {10.2, 6.8, 1.4, 1.2}}},
	},
	"edges-melted": {lower,
		{rectangle, partFirst, places{{0, 4, 4, 6}}},
		{slope, partFirst, places{{4, 4, 7.5, 6}}},
		{dome, partBead, places{{12, 6, 4.5, 1.8}}},
	},
	"undercut": {upper,
		{rectangle, partSecond, places{{0, 6, 12, 8}}},
		{slope, partSecond, places{{12, 6, 14, 8}}},
		{rectangle, partSecond, places{{16, 6, 18, 8}}},
		{slope, partBead, places{{6, 3, 12, 6}}},
	},
	"spatter": {
		{slope, partBead, places{{6, 2.6, 14, 6}}}, upper, lower,
		{rectangle, partBead, places{{3, 2, 4, 3}, {5, 0, 6, 1}, {10, 0, 11, 1}, {13, 2, 14, 3},
			{15, 1, 16, 2}, {15, 4, 16, 5}, {17, 5, 18, 6}}},
	},
	"stubbing": {lower,
		{rectangle, partTip, places{{7, 0, 11, 1.6}}},
		{wire, partWire, places{{9, 1.6, 9, 2.6}, {9, 2.6, 7.6, 3.8}, {7.6, 3.8, 9.6, 5.4}}},
	},
	"burn-back": {lower,
		{rectangle, partTip, places{{7, 0, 11, 2.2}}},
		{disc, partBead, places{{9, 3, 1.7, 1.2}}},
	},
	"pores": {far, near, bead,
		{rectangle, partHole, places{{2, 3, 3, 4}, {5, 4, 6, 5}, {8, 2, 10, 3}, {11, 4, 12, 5}, {13, 3, 14, 4},
			{16, 4, 17, 5}}},
	},
	"crack": {far, near, bead,
		{crack, partHole, places{{0, 4.2, 4, 3.2}, {4, 3.2, 6.5, 5}, {6.5, 5, 11, 3.4}, {11, 3.4, 14, 5},
			{14, 5, 18, 4}}},
	},
	"drops-through": {
		{rectangle, partFirst, places{{0, 2, 6.5, 4}}},
		{rectangle, partSecond, places{{11.5, 2, 18, 4}}},
		{rectangle, partBead, places{{6.5, 2.5, 11.5, 4}, {8, 4, 10, 6}}},
		{disc, partBead, places{{9, 6.4, 2.2, 1.4}}},
	},
	"spots-apart": {far, near,
		{disc, partBead, places{{3, 4, 2.2, 2.1}, {9, 4, 2.2, 2.1}, {15, 4, 2.2, 2.1}}},
	},
	"crater": {far, near,
		{rectangle, partBead, places{{0, 2, 13, 6}}},
		{disc, partBead, places{{13, 4, 3.2, 2}}},
		{disc, partHole, places{{13, 4, 1.8, 1.1}}},
	},
	"good": {
		{slope, partBead, places{{5, 2.6, 16.5, 6}}}, upper, lower,
	},
}
