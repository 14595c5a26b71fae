package hang

import (
	"fmt"
	"math"

	"brazebooth/calc/formula"
	"brazebooth/tables"
)

// Edge is one border of the operating window.
type Edge struct {
	Margin float64 // Most if the joint does not have this edge, such as hanging when flat
	Doubt  float64
	Why    string // a clause: why it is not judged, and what to try; "" if it is judged
}

// Chance is the chance to be inside the edge, from 0 to 1; 1 if it is not judged.
func (e *Edge) Chance() float64 {
	if e.Why != "" {
		return 1
	}
	return math.Erfc(-e.Margin/e.Doubt/math.Sqrt2) / 2
}

// Edges returns the two edges of a joint: that the metal bridges its gap, and that it hangs where it is laid. Over the
// gap of a butt liquid must span the root; over that of a lap or tee the metal must touch the other sheet. It returns
// ErrRange if a figure of the joint is out of range.
func Edges(j *Joint) (bridges, hangs Edge, err error) {
	bridges, hangs = Edge{Margin: Most, Doubt: j.bridgeDoubt()}, Edge{Margin: Most, Doubt: j.hangDoubt()}
	if err := j.check(); err != nil {
		return bridges, hangs, err
	}
	if j.Kind == "butt" || j.Kind == "lap" || j.Kind == "tee" {
		bridges.judge(j.gapNotJudged(), j.bridges)
	}
	if j.mayHang() {
		hangs.judge(j.hangNotJudged(), j.hangs)
	}
	return bridges, hangs, nil
}

// judge sets the margin of an edge, or why it is not judged.
func (e *Edge) judge(why string, margin func() float64) {
	if e.Why = why; why == "" {
		e.Margin = margin()
	}
}

// mayHang reports whether the bead does not lie flat.
func (j *Joint) mayHang() bool { return j.Position != "flat" && j.Position != "" }

// bridges is, for a butt, the least of the four margins of an open root. With backing behind it the arc only has to
// reach both edges.
func (j *Joint) bridges() float64 {
	switch {
	case j.Kind != "butt":
		return j.touches()
	case j.Backing != "":
		return margin(Backed(tables.ArcWidth.V), j.Gap)
	}
	o := j.opening()
	b := o.Bridge()
	return b.Least()
}

func (j *Joint) bridgeDoubt() float64 {
	switch {
	case j.Kind != "butt":
		return tables.TouchDoubt.V
	case j.Backing != "":
		return math.Log(tables.ArcWidth.High/tables.ArcWidth.Low) / (2 * 1.96) // the doubt of the arc's width
	}
	return tables.BridgesDoubt.V
}

func (j *Joint) hangs() float64 {
	switch j.Position {
	case "vertical-up":
		return j.uphill()
	case "vertical-down":
		return j.downhill()
	}
	return j.atRest()
}

func (j *Joint) hangDoubt() float64 {
	switch j.Position {
	case "overhead":
		return tables.OverheadDoubt.V
	case "vertical-up":
		return tables.UpDoubt.V
	case "vertical-down":
		return tables.DownDoubt.V
	}
	return tables.HorizontalDoubt.V
}

// FillsDoubt is one standard deviation of the logarithm of the metal laid over the metal needed: it grows from that of
// a closed joint to that of an open one as a gap, mm, lets metal in.
func FillsDoubt(gap float64) float64 {
	closed, open := tables.FilledDoubt.V, tables.GapFilledDoubt.V
	return closed + (open-closed)*-math.Expm1(-math.Max(0, gap)/tables.RootGrows.V)
}

// check returns ErrRange for figures that no joint has: a negative size, NaN, a liquid without tension.
func (j *Joint) check() error {
	second := 0.01 // least thickness; an overlay has no second member
	if j.Kind == "overlay" {
		second = 0
	}
	for _, c := range [...]struct {
		name           string
		v, least, most float64
	}{
		{"gap", j.Gap, 0, 100}, {"bead", j.Bead, 0, 1000}, {"wire", j.Wire, 0, 10},
		{"wetted width", j.Wet[0], 0, 200}, {"wetted width", j.Wet[1], 0, 200}, {"back width", j.Back[0], 0, 200},
		{"back width", j.Back[1], 0, 200}, {"molten edge", j.Molten[0], 0, 50}, {"molten edge", j.Molten[1], 0, 50},
		{"thickness", j.Thick[0], 0.01, 200}, {"thickness", j.Thick[1], second, 200}, {"pool", j.Pool, 0, 1000},
		{"chord", j.Chord, 0, 500}, {"area under the chord", j.Under, -2000, 2000}, {"angle", j.Phi, -math.Pi, math.Pi},
		{"front", j.Front, -500, 500}, {"current", j.Amps, 0, 1000}, {"deposition", j.Deposition, 0, 20},
		{"width of the arc's pressure", j.Assumed.PressureWidth, 0.1, 20},
		{"growth of the root", j.Assumed.RootGrows, 0.01, 20},
	} {
		if !(c.v >= c.least && c.v <= c.most) {
			return fmt.Errorf("%w: %s %g, from %g to %g", formula.ErrRange, c.name, c.v, c.least, c.most)
		}
	}
	if _, ok := tables.Positions.ByID(j.Position); !ok && j.Position != "" {
		return fmt.Errorf("%w: position %q", formula.ErrRange, j.Position)
	}
	return nil
}
