package hang

import (
	"fmt"
	"math"

	"brazebooth/calc/formula"
	"brazebooth/tables"
)

// Backed is the widest gap, mm, of a root on a bar or strip: twice the arc's standard deviation, mm. Over a wider one
// the arc finds too little of both edges.
func Backed(arcWidth float64) float64 { return 2 * arcWidth }

// backedDoubt is the arc width's own.
func backedDoubt() float64 {
	return math.Log(tables.ArcWidth.High/tables.ArcWidth.Low) / (2 * 1.96)
}

// Bar is a copper bar behind a seam.
type Bar struct {
	Dry, Wet float64 // heat transfer from dry sheet and from liquid filler, W/m2K
	Groove   float64 // width of the groove under the seam, mm; 0 for a flat bar
}

// CopperBar returns the bar of tables with a groove, mm.
func CopperBar(groove float64) Bar { return Bar{tables.BarDry.V, tables.BarWet.V, groove} }

// Sink is the heat transfer into the bar at a place, W/mm2K: at mm from the middle of a gap, mm, that filler fills.
func (b *Bar) Sink(at, gap float64) float64 {
	switch at = math.Abs(at); {
	case at < b.Groove/2:
		return 0
	case at < gap/2:
		return b.Wet * 1e-6
	}
	return b.Dry * 1e-6
}

// ChillOf returns what a dry copper bar does to a butt in sheet of a thickness, mm: between the rows of tables,
// straight over the thickness's logarithm. ErrRange outside them.
func ChillOf(sheet float64) (tables.Chill, error) {
	rows := tables.Chills()
	for i := range rows[1:] {
		a, b := &rows[i], &rows[i+1]
		if !(sheet >= a.Sheet && sheet <= b.Sheet) {
			continue
		}
		s := math.Log(sheet/a.Sheet) / math.Log(b.Sheet/a.Sheet)
		return tables.Chill{Sheet: sheet, Cooler: mixed(a.Cooler, b.Cooler, s), Narrow: mixed(a.Narrow, b.Narrow, s),
			Shrink: mixed(a.Shrink, b.Shrink, s)}, nil
	}
	return tables.Chill{}, fmt.Errorf("%w: a bar behind %g mm, known from %g to %g mm", formula.ErrRange, sheet,
		rows[0].Sheet, rows[len(rows)-1].Sheet)
}

func mixed(a, b tables.Datum, s float64) tables.Datum {
	a.V, a.Low, a.High = a.V+s*(b.V-a.V), a.Low+s*(b.Low-a.Low), a.High+s*(b.High-a.High)
	return a
}
