package report

import (
	"fmt"
	"image/color"
	"math"

	"brazebooth/calc"
)

// The layout of a trace's picture, pixels.
const (
	traceWide, traceHigh = 720, 420
	traceLeft, traceTop  = 90, 70
	traceRight, traceLow = 110, 90
)

// TracePNG draws the heat of the whole trace of a timed arc: root edge solid, puddle's middle dashed, back face dotted,
// with the temperatures that decide and a bar of when the arc burned.
func TracePNG(s *calc.Timed) ([]byte, error) {
	p := &picture{wide: traceWide, high: traceHigh}
	u := &s.Card.Used
	p.write(traceLeft, 16, "start", fmt.Sprintf("timed arc: %s, %s, gap %.1f mm, %s", u.Metal, u.Joint, u.Gap.V,
		s.Card.Setup.Filler.ID))
	p.write(traceLeft, 34, "start", rhythm(s))
	p.write(traceLeft, 54, "start", "C over s; own computation, stirring assumed: try it on scrap with the same gap")
	p.write(traceLeft, traceHigh-16, "start",
		"solid: root edge   dashed: puddle's middle   dotted: back face   bar: arc burns")
	if len(s.Trace) > 1 {
		p.trace(s)
	}
	return p.png()
}

// rhythm is on, off and step in a line, or why there is none.
func rhythm(s *calc.Timed) string {
	on, ok := s.Card.Figure("arc_on")
	off, _ := s.Card.Figure("arc_off")
	step, _ := s.Card.Figure("spot_step")
	if !ok || len(s.Figures) == 0 {
		return "no rhythm: " + s.Reason
	}
	return fmt.Sprintf("on %.2f s (%.2f to %.2f), off %.2f s (%.2f to %.2f), step %.1f mm",
		on.Value, on.Low, on.High, off.Value, off.Low, off.High, step.Value)
}

func (p *picture) trace(s *calc.Timed) {
	low, high := s.Solidus-200, s.BaseSolidus+80
	for _, q := range s.Trace {
		low, high = min(low, q.Edge), max(high, q.Edge, min(q.Centre, s.BaseSolidus+300))
	}
	low, high = math.Floor(low/100)*100, math.Ceil(high/100)*100
	last := s.Trace[len(s.Trace)-1].Time
	const right, base = traceWide - traceRight, traceHigh - traceLow + 8
	x := func(t float64) int { return traceLeft + int(math.Round(t/last*(right-traceLeft))) }
	y := func(t float64) int {
		return traceTop + int(math.Round((high-min(max(t, low), high))/(high-low)*(traceHigh-traceTop-traceLow)))
	}
	for t := low; t <= high; t += 200 {
		p.write(traceLeft-8, y(t)+4, "end", fmt.Sprintf("%.0f", t))
		p.stroke(traceLeft-4, y(t), traceLeft, y(t), black, 1)
	}
	for i, t := range [...]float64{s.Solidus, s.Liquidus, s.BaseSolidus} {
		p.stroke(traceLeft, y(t), right, y(t), color.RGBA{0xb0, 0x80, 0x30, 255}, 3)
		p.write(right+6, y(t)+4, "start", [...]string{"solidus", "liquidus", "base melts"}[i])
	}
	for i := 1; i < len(s.Trace); i++ {
		a, b := &s.Trace[i-1], &s.Trace[i]
		p.stroke(x(a.Time), y(a.Centre), x(b.Time), y(b.Centre), color.RGBA{0x30, 0x60, 0xa0, 255}, 6)
		p.stroke(x(a.Time), y(a.Back), x(b.Time), y(b.Back), color.RGBA{0x60, 0x60, 0x60, 255}, 3)
		p.stroke(x(a.Time), y(a.Edge), x(b.Time), y(b.Edge), color.RGBA{0xa0, 0x30, 0x20, 255}, 1)
		if b.On {
			p.fill(x(a.Time), base, max(x(b.Time)-x(a.Time), 1), 10, black)
		}
	}
	step := math.Max(0.5, math.Round(last/6*2)/2)
	for t := 0.0; t <= last; t += step {
		p.write(x(t), base+28, "middle", fmt.Sprintf("%.1f", t))
	}
}
