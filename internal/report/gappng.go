package report

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"math"

	"brazebooth/calc"
)

// The layout of a trace's picture, pixels.
const (
	traceWide, traceHigh = 720, 420
	traceLeft, traceTop  = 90, 70
	traceRight, traceLow = 110, 90
)

// GapPNG draws the heat of the whole trace: root edge solid, puddle's middle dashed, back face dotted, with the
// lines that decide and a bar of when the arc burned.
func GapPNG(s *calc.Timed) ([]byte, error) {
	img := image.NewRGBA(image.Rect(0, 0, traceWide, traceHigh))
	draw.Draw(img, img.Bounds(), image.White, image.Point{}, draw.Src)
	for _, l := range gapLabels(s) {
		write(img, l)
	}
	if len(s.Trace) > 1 {
		drawTrace(img, s)
	}
	var out bytes.Buffer
	err := png.Encode(&out, img)
	return out.Bytes(), err
}

func gapLabels(s *calc.Timed) []label {
	title := "timed arc: " + s.Card.Used.Metal + ", " + s.Card.Used.Joint + fmt.Sprintf(", gap %.1f mm, ", s.Card.Used.Gap.V) + s.Card.Setup.Filler.ID
	list := []label{{traceLeft, 16, "start", title}}
	on, ok := s.Card.Figure("arc_on")
	off, _ := s.Card.Figure("arc_off")
	step, _ := s.Card.Figure("spot_step")
	if ok && len(s.Figures) > 0 {
		list = append(list, label{traceLeft, 34, "start", fmt.Sprintf("on %.2f s (%.2f to %.2f), off %.2f s (%.2f to %.2f), step %.1f mm",
			on.Value, on.Low, on.High, off.Value, off.Low, off.High, step.Value)})
	} else {
		list = append(list, label{traceLeft, 34, "start", "no rhythm: " + s.Reason})
	}
	return append(list,
		label{traceLeft, 54, "start", "C over s; own computation, stirring assumed: try it on scrap with the same gap"},
		label{traceLeft, traceHigh - 16, "start", "solid: root edge   dashed: puddle's middle   dotted: back face   bar: arc burns"})
}

func drawTrace(img draw.Image, s *calc.Timed) {
	low, high := s.Solidus-200, s.BaseSolidus+80
	for _, p := range s.Trace {
		low, high = min(low, p.Edge), max(high, p.Edge, min(p.Centre, s.BaseSolidus+300))
	}
	low, high = math.Floor(low/100)*100, math.Ceil(high/100)*100
	last := s.Trace[len(s.Trace)-1].Time
	wide, deep := float64(traceWide-traceLeft-traceRight), float64(traceHigh-traceTop-traceLow)
	x := func(t float64) int { return traceLeft + int(math.Round(t/last*wide)) }
	y := func(t float64) int {
		return traceTop + int(math.Round((high-min(max(t, low), high))/(high-low)*deep))
	}
	black := color.RGBA{0, 0, 0, 255}
	for t := low; t <= high; t += 200 {
		write(img, label{traceLeft - 8, y(t) + 4, "end", fmt.Sprintf("%.0f", t)})
		stroke(img, traceLeft-4, y(t), traceLeft, y(t), color.RGBA{0, 0, 0, 255}, 1)
	}
	for _, l := range []struct {
		at   float64
		name string
	}{{s.Solidus, "solidus"}, {s.Liquidus, "liquidus"}, {s.BaseSolidus, "base melts"}} {
		stroke(img, traceLeft, y(l.at), traceWide-traceRight, y(l.at), color.RGBA{0xb0, 0x80, 0x30, 255}, 3)
		write(img, label{traceWide - traceRight + 6, y(l.at) + 4, "start", l.name})
	}
	base := traceTop + int(deep) + 8
	for i := 1; i < len(s.Trace); i++ {
		a, b := &s.Trace[i-1], &s.Trace[i]
		stroke(img, x(a.Time), y(a.Centre), x(b.Time), y(b.Centre), color.RGBA{0x30, 0x60, 0xa0, 255}, 6)
		stroke(img, x(a.Time), y(a.Back), x(b.Time), y(b.Back), color.RGBA{0x60, 0x60, 0x60, 255}, 3)
		stroke(img, x(a.Time), y(a.Edge), x(b.Time), y(b.Edge), color.RGBA{0xa0, 0x30, 0x20, 255}, 1)
		if b.On {
			draw.Draw(img, image.Rect(x(a.Time), base, max(x(b.Time), x(a.Time)+1), base+10), image.NewUniform(black), image.Point{}, draw.Src)
		}
	}
	step := math.Max(0.5, math.Round(last/6*2)/2)
	for t := 0.0; t <= last; t += step {
		write(img, label{x(t), base + 28, "middle", fmt.Sprintf("%.1f", t)})
	}
}

// stroke draws a line; every 1 is solid, every n leaves gaps of half of n pixels along it.
func stroke(img draw.Image, x0, y0, x1, y1 int, c color.Color, every int) {
	n := max(abs(x1-x0), abs(y1-y0), 1)
	for i := range n + 1 {
		x, y := x0+(x1-x0)*i/n, y0+(y1-y0)*i/n
		if every > 1 && (x+y)%every >= (every+1)/2 {
			continue
		}
		img.Set(x, y, c)
	}
}

func abs(n int) int {
	if n < 0 {
		return -n
	}
	return n
}
