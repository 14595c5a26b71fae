package report

import (
	"fmt"
	"image/color"
	"math"
	"slices"
	"strings"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"brazebooth/calc"
	"brazebooth/internal/picture"
	"brazebooth/internal/quantity"
)

// BeatOf is how long the arc burns and rests, s.
func BeatOf(s *calc.Timed) (on, off float64) {
	burns, _ := s.Card.Figure("arc_on")
	rests, _ := s.Card.Figure("arc_off")
	return burns.Value, rests.Value
}

// beatBar returns how many of w cells are one beat of on and off, and for how many of these the arc burns. all is 0 if
// there is no beat or no room.
func beatBar(s *calc.Timed, w int) (on, all int) {
	burns, rests := BeatOf(s)
	if !(burns+rests > 0) || w < 2 {
		return 0, 0
	}
	return max(1, min(w-1, int(math.Round(burns/(burns+rests)*float64(w))))), w
}

// LastBeats cuts a trace to a little more than its last two beats; nil if there are none.
func LastBeats(s *calc.Timed) []calc.HeatPoint {
	if len(s.Trace) == 0 {
		return nil
	}
	on, off := BeatOf(s)
	from := s.Trace[len(s.Trace)-1].Time - 2.1*(on+off)
	return s.Trace[slices.IndexFunc(s.Trace, func(p calc.HeatPoint) bool { return p.Time >= from }):]
}

type traceGrid struct {
	rows      [][]rune
	low, high float64
}

// plotLeft is the room for the names, in columns.
const plotLeft = 16

// tracePlot draws the last beats in characters: e the root edge, c the puddle's middle, * both. There are lines at the
// filler's solidus and liquidus and at the base metal's solidus, and below the plot a bar while the arc burns.
func tracePlot(s *calc.Timed, w, h int, sys quantity.System) []string {
	w -= plotLeft
	if len(s.Trace) < 2 || w < 20 || h < 6 {
		return nil
	}
	points := LastBeats(s)
	p := newPlot(points, s, w, h-1)
	for _, at := range []float64{s.Solidus, s.Liquidus, s.BaseSolidus} {
		for x := range p.rows[0] {
			p.put(x, at, '·')
		}
	}
	first, last := points[0].Time, points[len(points)-1].Time
	burn := make([]rune, w)
	for x := range burn {
		t := first + (last-first)*float64(x)/float64(w-1)
		q := at(points, t)
		burn[x] = '-'
		if q.On {
			burn[x] = '#'
		}
		p.put(x, q.Edge, 'e')
		p.put(x, q.Centre, 'c')
	}
	lines := make([]string, 0, h)
	for r, row := range p.rows {
		lines = append(lines, fmt.Sprintf("%-*s%s", plotLeft, p.label(r, s, sys), string(row)))
	}
	return append(lines, fmt.Sprintf("%-*s%s", plotLeft, fmt.Sprintf("arc, %.1f s", last-first), string(burn)))
}

func newPlot(points []calc.HeatPoint, s *calc.Timed, w, h int) traceGrid {
	p := traceGrid{low: s.Solidus - 60, high: s.BaseSolidus + 60}
	for _, q := range points {
		p.low = min(p.low, q.Edge, max(q.Centre, s.Solidus-300))
		p.high = max(p.high, q.Edge, min(q.Centre, s.BaseSolidus+300))
	}
	for range h {
		p.rows = append(p.rows, []rune(strings.Repeat(" ", w)))
	}
	return p
}

func (p *traceGrid) row(t float64) int {
	return int(math.Round((p.high - t) / (p.high - p.low) * float64(len(p.rows)-1)))
}

func (p *traceGrid) put(x int, t float64, mark rune) {
	r := p.row(t)
	if r < 0 || r >= len(p.rows) {
		return
	}
	if mark == 'c' && p.rows[r][x] == 'e' {
		mark = '*'
	}
	p.rows[r][x] = mark
}

// label names the temperature of a row, in the units of a system.
func (p *traceGrid) label(r int, s *calc.Timed, sys quantity.System) string {
	for i, t := range [...]float64{s.BaseSolidus, s.Liquidus, s.Solidus, p.high, p.low} {
		if r == p.row(t) {
			name := [...]string{"base melts", "liquidus", "solidus", "", ""}[i]
			return fmt.Sprintf("%-10s %4.0f", name, In(t, "C", sys))
		}
	}
	return ""
}

// at is the trace at a moment.
func at(points []calc.HeatPoint, t float64) calc.HeatPoint {
	for i, b := range points[1:] {
		if a := points[i]; b.Time >= t {
			f := (t - a.Time) / max(b.Time-a.Time, 1e-9)
			b.Edge, b.Centre = a.Edge+f*(b.Edge-a.Edge), a.Centre+f*(b.Centre-a.Centre)
			return b
		}
	}
	return points[len(points)-1]
}

// Heat is a timed arc's heat trace as a picture.
type Heat struct {
	*calc.Timed
	Units quantity.System // the units to draw in; Both is drawn in the leading system
	Comma bool            // in numbers, instead of the point
}

// SVG and PNG return the picture. PNG takes the dots per inch of an A4 sheet.
func (h Heat) SVG() ([]byte, error)        { return h.picture().SVG() }
func (h Heat) PNG(dpi int) ([]byte, error) { return h.picture().PNG(dpi) }

// picture is the whole trace: root edge, puddle's middle and back face, the temperatures that decide, and a grey band
// for each time that the arc burns.
func (h Heat) picture() *picture.Picture {
	p := newPicture("time, s", "temperature, "+quantity.Label("C", h.Units.Lead()), &h.Card, rhythm(h.Timed, h.Units),
		h.Units, h.Comma)
	p.Foot = []picture.Line{{Size: picture.Small,
		Text: "Own computation, stirring assumed: try the rhythm on scrap with the same gap."}}
	p.Keys = []picture.Key{{Fill: picture.Grey, Text: "arc burns"}}
	if len(h.Trace) > 1 {
		h.drawn(p)
	} else {
		picture.Steps(&p.X, 0, 1, 1)
		picture.Steps(&p.Y, In(0, "C", h.Units), In(1500, "C", h.Units), 500)
	}
	return p
}

// rhythm is on time, off time and step in a line, or why there is none.
func rhythm(s *calc.Timed, sys quantity.System) string {
	on, ok := s.Card.Figure("arc_on")
	off, _ := s.Card.Figure("arc_off")
	step, _ := s.Card.Figure("spot_step")
	if !ok || len(s.Figures) == 0 {
		return "no rhythm: " + s.Reason
	}
	return fmt.Sprintf("on %.2f s, off %.2f s, step %s", on.Value, off.Value,
		quantity.ShowDialed("spot_step", step.Value, "mm", sys))
}

// drawn adds bands, limits and traces to the picture.
func (h Heat) drawn(p *picture.Picture) {
	deg := func(celsius float64) float64 { return In(celsius, "C", h.Units) }
	low, high := h.Solidus-200, h.BaseSolidus+80
	for _, q := range h.Trace {
		low, high = min(low, q.Edge), max(high, q.Edge, min(q.Centre, h.BaseSolidus+300))
	}
	low, high = deg(low), deg(high)
	low, high = math.Floor(low/100)*100, math.Ceil(high/100)*100
	last := h.Trace[len(h.Trace)-1].Time
	right := last * 1.2 // room for the names of the limits
	picture.Steps(&p.X, 0, right, picture.Round(right/7))
	picture.Steps(&p.Y, low, high, picture.Round((high-low)/4))
	p.Add(h.burns(low, high)...)
	var labels picture.Labels
	for i, t := range [...]float64{deg(h.BaseSolidus), deg(h.Liquidus), deg(h.Solidus)} {
		p.Add(&plotter.Line{XYs: plotter.XYs{{X: 0, Y: t}, {X: right, Y: t}}, LineStyle: draw.LineStyle{
			Color: color.Gray{0x60}, Width: 1.5, Dashes: []vg.Length{3, 3}}})
		beside := t + [...]float64{1, 1, -1}[i]*(high-low)/24
		labels.List = append(labels.List, picture.Label{Text: [...]string{"base melts", "liquidus", "solidus"}[i],
			Size: picture.Near, Bare: true, Places: []plotter.XY{{X: last + 0.45*(right-last), Y: beside}}})
	}
	for n, name := range [...]string{"root edge", "puddle's middle", "back face"} {
		var list plotter.XYs
		for i := range h.Trace {
			q := &h.Trace[i]
			t := [...]float64{q.Edge, q.Centre, q.Back}[n]
			list = append(list, plotter.XY{X: q.Time, Y: min(max(deg(t), low), high)})
		}
		style := picture.Stroke(n, [...]vg.Length{3.5, 2, 2}[n])
		p.Add(&plotter.Line{XYs: list, LineStyle: style})
		p.Keys = append(p.Keys, picture.Key{Text: name, Line: style})
	}
	p.Add(&labels)
}

// burns are the bands for the times that the arc burns.
func (h Heat) burns(low, high float64) (list []plot.Plotter) {
	for i := 1; i < len(h.Trace); i++ {
		if !h.Trace[i].On {
			continue
		}
		from := h.Trace[i-1].Time
		for i+1 < len(h.Trace) && h.Trace[i+1].On {
			i++
		}
		to := h.Trace[i].Time
		list = append(list, &plotter.Polygon{Color: picture.Grey,
			XYs: []plotter.XYs{{{X: from, Y: low}, {X: to, Y: low}, {X: to, Y: high}, {X: from, Y: high}}}})
	}
	return list
}
