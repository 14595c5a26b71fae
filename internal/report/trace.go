package report

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"brazebooth/calc"
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
