// show writes the parts of package canvas to the terminal, to look at them: go run ./tui/canvas/testdata/show PART W H
// [dark|light|contrast|none] [full|16|none] [light].
package main

import (
	"fmt"
	"math"
	"os"
	"strconv"
	"time"

	"github.com/charmbracelet/colorprofile"

	"brazebooth/tui/canvas"
)

func main() {
	arg := func(i int, other string) string {
		if len(os.Args) > i {
			return os.Args[i]
		}
		return other
	}
	w, _ := strconv.Atoi(arg(2, "80"))
	h, _ := strconv.Atoi(arg(3, "24"))
	profile := map[string]colorprofile.Profile{"full": colorprofile.TrueColor, "16": colorprofile.ANSI, "none": colorprofile.ASCII}[arg(5, "full")]
	th := canvas.ThemeOf(canvas.Kind(arg(4, "dark")), arg(6, "") != "light", profile, os.Getenv("COARSE") != "")
	fmt.Print("\x1b[2J\x1b[H")
	var b canvas.Block
	switch arg(1, "") {
	case "card":
		b = card(th, w, h)
	case "states":
		for s := canvas.Good; s <= canvas.Stop; s++ {
			b = append(b, canvas.Strip{State: s, Reason: "nearest edge: wets, 19 % away", Do: "Strike a test bead on scrap of the same sheet first, and peel it.", Status: "your job   metric"}.Draw(th, w, h)...)
		}
	case "map":
		m := window()
		b = m.Draw(th, w-30, h-1).Beside(w-28, edges.Draw(th, 28, h))
		b = append(b, canvas.Legend(th, w)...)
	case "joints":
		b = joints(th, w, h)
	case "chart":
		b = chart(th, w, h)
	case "sights":
		b = sights(th, w)
	case "booth":
		b = booth(th, w, h)
	}
	for i, l := range b {
		if i < h || arg(1, "") == "states" || arg(1, "") == "joints" {
			fmt.Printf("\x1b[%dH%s", i+1, l.Text)
		}
	}
	time.Sleep(time.Hour)
}

var edges = canvas.Edges{{Name: "wets", Margin: 19}, {Name: "arc steady", Margin: 20}, {Name: "base stays solid", Short: "base solid", Margin: -6},
	{Name: "hand speed", Margin: 37}, {Name: "no burn-through", Short: "no hole", Margin: 38}, {Name: "joint filled", Short: "filled", Margin: 92}}

var lap = canvas.Joint{Kind: canvas.Lap, Thick: [2]float64{0.9, 0.9}, Wet: [2]float64{3.4, 3.1}, Phi: 0.75,
	Boiled: [2]float64{3.7, 3.4}, Melted: [2]float64{5, 5}, BoiledBack: [2]float64{3.5, 3}, MeltedBack: [2]float64{4.8, 4.6}}

var dials = canvas.Dials{
	{Name: "wire feed", Short: "feed", Unit: "m/min", Number: "3.86", Widest: "88.8", Cursor: true, Span: "3.12–4.77",
		Bar: canvas.Bar{Low: 1.5, High: 8, Value: 3.86, Span: [2]float64{3.12, 4.77}, Kind: canvas.GoodSpan}},
	{Name: "volts", Unit: "V", Number: "13.8", Widest: "88.8", Span: "12.6–15.1",
		Bar: canvas.Bar{Low: 9, High: 20, Value: 13.8, Span: [2]float64{12.6, 15.1}, Kind: canvas.LikelySpan}},
	{Name: "travel", Unit: "mm/s", Number: "6.4", Widest: "88.8", Span: "4.00–9.68", Yours: true,
		Bar: canvas.Bar{Low: 1, High: 15, Value: 10.4, Span: [2]float64{4, 9.68}, Kind: canvas.GoodSpan, State: canvas.Hot}},
}

var chips = canvas.Chips{Cursor: -1, List: []canvas.Chip{{Name: "metal", Value: "galvanized", Assumed: false}, {Name: "gauge", Value: "20 ga", Assumed: false}, {Name: "wire", Value: ".035 CuSi3", Assumed: true},
	{Name: "mode", Value: "dip", Assumed: true}, {Name: "joint", Value: "lap", Assumed: true}, {Name: "gap", Value: "no gap", Assumed: true}, {Name: "onto", Value: "on same", Assumed: true}, {Name: "position", Value: "flat", Assumed: true}}}

func card(th *canvas.Theme, w, h int) canvas.Block {
	n := 1
	switch {
	case h >= 60:
		n = 7
	case w >= 60:
		n = 4
	}
	b := canvas.Strip{State: canvas.Good, Reason: "nearest edge: wets, 19 % away", Do: "Strike a test bead on scrap of the same sheet first, and peel it.", Status: "your job   metric"}.Draw(th, w, n)
	lines := 1
	if h >= 40 {
		lines = 3
	} else if h >= 24 {
		lines = 2
	}
	c := chips
	c.Cursor, c.Hint = 4, "↑ butt  ↓ tee  enter: all 5"
	b = append(b, c.Draw(th, w, lines)...)
	b = append(b, canvas.Line{})
	dw := w
	if w >= 80 {
		dw = w * 3 / 4
	}
	d := dials.Draw(th, dw, max(5, h/4+1))
	if w >= 80 {
		d = d.Beside(dw+1, lap.Draw(th, w-dw-1, len(d)))
	}
	b = append(b, d...)
	b = append(b, canvas.Line{})
	return append(b, canvas.Beat{On: 0.32, Off: 0.54, OnText: "ARC ON  0.32 s", OffText: "off  0.54 s", Playing: true, At: 0.5, Note: "spot 7 of 30"}.Draw(th, w, 2)...)
}

func joints(th *canvas.Theme, w, h int) canvas.Block {
	var b canvas.Block
	for _, j := range []canvas.Joint{lap,
		{Kind: canvas.Butt, Thick: [2]float64{1.5, 2}, Gap: 1, Wet: [2]float64{2, 2.2}, Phi: 0.5, Backing: 1.5},
		{Kind: canvas.Tee, Thick: [2]float64{1.5, 2}, Wet: [2]float64{3, 3}, Phi: 0.3},
		{Kind: canvas.Corner, Thick: [2]float64{1.5, 1.5}, Wet: [2]float64{1, 1}, Phi: 0.9},
		{Kind: canvas.Overlay, Thick: [2]float64{6, 0}, Wet: [2]float64{3, 3}, Phi: 0.6},
		{Kind: canvas.Lap, Thick: [2]float64{0.9, 3}, Gap: 0.3, Wet: [2]float64{3.4, 0}, Phi: 0.75}} {
		b = append(append(b, j.Draw(th, w, h)...), canvas.Line{})
	}
	return b
}

func window() *canvas.Map {
	m := &canvas.Map{NameX: "wire feed, m/min", NameY: "travel, mm/s", At: [2]float64{3.82, 6.5}, TextX: "3.82", TextY: "6.5",
		Suggested: [2]float64{3.6, 5.8}, Suggestion: true}
	for i := range 60 {
		m.X = append(m.X, 2.4*math.Pow(13.0/2.4, float64(i)/59))
	}
	for j := range 40 {
		m.Y = append(m.Y, 2.9*math.Pow(17.0/2.9, float64(j)/39))
	}
	for _, x := range m.X {
		for _, y := range m.Y {
			heat := math.Log(x*x/3.82/3.82) - math.Log(y/6.5)
			l := canvas.LandGood1
			switch {
			case heat < -0.5:
				l = canvas.LandCold
			case heat > 0.9:
				l = canvas.LandBurns
			case heat > 0.45:
				l = canvas.LandHot
			case y > 13:
				l = canvas.LandOutside
			case math.Abs(heat) < 0.15:
				l = canvas.LandGood3
			case math.Abs(heat) < 0.3:
				l = canvas.LandGood2
			}
			m.Lands = append(m.Lands, l)
		}
	}
	return m
}

func chart(th *canvas.Theme, w, h int) canvas.Block {
	ch := canvas.Chart{X: canvas.Axis{Name: "s"}, Y: canvas.Axis{Name: "°C"}, OnName: "arc on",
		Limits: []canvas.Limit{{Name: "base melts", At: 1470, State: canvas.Burns}, {Name: "liquidus", At: 1025, State: canvas.Good}}}
	edge, middle := canvas.Trace{Name: "root edge"}, canvas.Trace{Name: "middle", Dotted: true}
	for i := range 200 {
		t := float64(i) / 100
		p := math.Mod(t, 0.86)
		v := 650 + 750*(1-math.Exp(-p/0.15))
		if p > 0.32 {
			v = 950 + 400*math.Exp(-(p-0.32)/0.12)
		}
		edge.X, edge.Y = append(edge.X, t), append(edge.Y, v)
		middle.X, middle.Y = append(middle.X, t), append(middle.Y, v+90*math.Sin(p/0.86*math.Pi))
	}
	for i := range 3 {
		ch.On = append(ch.On, canvas.Stretch{From: 0.86 * float64(i), To: 0.86*float64(i) + 0.32})
	}
	ch.Traces = []canvas.Trace{middle, edge}
	return ch.Draw(th, w, h)
}

func sights(th *canvas.Theme, w int) canvas.Block {
	ids := []string{"rolled-edge", "thin-wide", "zinc-gone-behind", "burn-through", "edges-melted", "spatter", "stubbing", "burn-back", "pores", "crack",
		"drops-through", "spots-apart", "crater", "good"}
	var b canvas.Block
	each := w/19*19/4 - 1
	if w < 100 {
		each = 18
	}
	for i := 0; i < len(ids); i += 4 {
		var row canvas.Block
		for k, id := range ids[i:min(i+4, len(ids))] {
			row = row.Beside(k*(each+1), canvas.DrawSight(th, id, each, max(4, each*4/18)))
		}
		b = append(append(b, row...), canvas.Line{})
	}
	return b
}

func booth(th *canvas.Theme, w, h int) canvas.Block {
	b := canvas.Strip{State: canvas.Cold, Reason: "wets: missed by 16 %", Do: "Slower, more wire feed, pulsed, or preheat"}.Draw(th, w, 4)
	for i := range dials {
		dials[i].Loud, dials[i].Lit = true, true
		dials[i].Name = []string{"FEED", "VOLTS", "TRAVEL"}[i]
		dials[i].Bar.State = canvas.Cold
	}
	return append(append(b, canvas.Line{}), dials.Draw(th, w, (h-6)/2)...)
}
