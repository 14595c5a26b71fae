package report

import (
	"fmt"
	"image/color"
	"math"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"brazebooth/calc"
	"brazebooth/internal/picture"
	"brazebooth/internal/quantity"
)

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
	p := newPicture("time, s", "temperature, "+quantity.Label("C", h.Units.Lead()), h.Comma)
	p.Head = []picture.Line{{Text: PracticeWork(&h.Card, h.Units), Size: picture.Near},
		{Text: rhythm(h.Timed, h.Units), Size: picture.Far, Bold: true}}
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
		p.Add(line(plotter.XYs{{X: 0, Y: t}, {X: right, Y: t}}, draw.LineStyle{Color: color.Gray{0x60}, Width: 1.5,
			Dashes: []vg.Length{3, 3}}))
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
		p.Add(line(list, style))
		p.Keys = append(p.Keys, picture.Key{Text: name, Line: style})
	}
	p.Add(&labels)
}

// line is a plotter's line of points that cannot be NaN.
func line(list plotter.XYs, style draw.LineStyle) *plotter.Line {
	return &plotter.Line{XYs: list, LineStyle: style}
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
