package canvas

import (
	"math"
	"strings"
	"testing"

	"github.com/charmbracelet/colorprofile"
	"github.com/charmbracelet/x/ansi"

	"brazebooth/internal/joint"
	"brazebooth/internal/plain"
)

// themesToTry are the kinds of terminal that draw differently.
func themesToTry() map[string]*Theme {
	return map[string]*Theme{
		"full":   ThemeOf(ThemeDark, true, colorprofile.TrueColor, false),
		"16":     ThemeOf(ThemeDark, true, colorprofile.ANSI, false),
		"none":   ThemeOf(ThemeNone, true, colorprofile.TrueColor, false),
		"coarse": ThemeOf(ThemeLight, false, colorprofile.ANSI, true),
	}
}

// A job as the parts show it: a lap of 20 ga galvanized.
var (
	tryStrip = Strip{State: Good, Reason: "nearest edge: wets, 19 % away", Brief: "wets, 19 % away",
		Do: "Strike a test bead on scrap of the same sheet first, and peel it.", Status: "your job   metric"}
	tryStop = Strip{State: Stop, Reason: "Do not arc braze brass sheet: it boils off zinc.",
		Do: "Use silver brazing or soft solder."}
	tryBurns = Strip{State: Burns, Reason: "no burn-through: missed by 6 %", Do: "Faster, or less wire feed"}
	tryDials = Dials{
		{Name: "wire feed", Short: "feed", Unit: "m/min", Number: "3.86", Widest: "88.8", Span: "3.12–4.77",
			Cursor: true, Bar: Bar{Low: 1.5, High: 8, Value: 3.86, Span: [2]float64{3.12, 4.77}, Kind: GoodSpan}},
		{Name: "volts", Unit: "V", Number: "13.8", Widest: "88.8", Span: "12.6–15.1",
			Bar: Bar{Low: 9, High: 20, Value: 13.8, Span: [2]float64{12.6, 15.1}, Kind: LikelySpan}},
		{Name: "travel", Unit: "mm/s", Number: "10.4", Widest: "88.8", Span: "4.00–9.68", Yours: true,
			Bar: Bar{Low: 1, High: 15, Value: 10.4, Span: [2]float64{4, 9.68}, Kind: GoodSpan}, State: Hot},
	}
	tryChips = Chips{Cursor: 4, Hint: "↑ butt  ↓ tee  enter: all 5", List: []Chip{
		{Name: "metal", Value: "galvanized"}, {Name: "gauge", Value: "20 ga"},
		{Name: "wire", Value: ".035 CuSi3", Assumed: true}, {Name: "mode", Value: "dip", Assumed: true},
		{Name: "joint", Value: "lap", Assumed: true}, {Name: "gap", Value: "no gap", Assumed: true},
		{Name: "onto", Value: "on same", Assumed: true}, {Name: "position", Value: "flat", Assumed: true}}}
	tryLap = Joint{Section: joint.Section{
		Shape:  joint.Shape{Kind: joint.Lap, Thick: [2]float64{0.9, 0.9}, Wet: [2]float64{3.4, 3.1}, Phi: 0.75},
		Melted: [2]float64{5, 5}, Boiled: [2]float64{3.7, 3.4},
		MeltedBack: [2]float64{4.8, 4.6}, BoiledBack: [2]float64{3.5, 3}}}
	tryEdges = Edges{{Name: "wets", Margin: 19}, {Name: "base stays solid", Margin: -6},
		{Name: "joint filled", Margin: 92}, {Name: "no burn-through", Margin: 38}}
	tryBeat = Beat{On: 0.32, Off: 0.54, OnText: "ARC ON  0.32 s", OffText: "off  0.54 s", Playing: true, At: 0.6,
		Note: "spot 7 of 30"}
)

// tryBooth are the dials of the booth view: with big names, in the colour of the verdict.
func tryBooth() Dials {
	list := append(Dials(nil), tryDials...)
	for i := range list {
		list[i].Loud, list[i].Lit, list[i].State = true, true, Cold
		list[i].Name = [...]string{"FEED", "VOLTS", "TRAVEL"}[i]
	}
	return list
}

// tryJoints are joints of every kind.
func tryJoints() []Joint {
	list := []Joint{tryLap}
	for _, s := range []joint.Shape{
		{Kind: joint.Butt, Thick: [2]float64{1.5, 2}, Gap: 1, Wet: [2]float64{2, 2.2}, Phi: 0.5, Backing: 1.5},
		{Kind: joint.Tee, Thick: [2]float64{1.5, 2}, Wet: [2]float64{3, 3}, Phi: 0.3},
		{Kind: joint.Corner, Thick: [2]float64{1.5, 1.5}, Wet: [2]float64{1, 1}, Phi: 0.9},
		{Kind: joint.Overlay, Thick: [2]float64{6, 0}, Wet: [2]float64{3, 3}, Phi: 0.6},
		{Kind: joint.Lap, Thick: [2]float64{0.9, 3}, Gap: 0.4, Wet: [2]float64{3.4, 0}},
	} {
		list = append(list, Joint{Section: joint.Section{Shape: s}})
	}
	return list
}

// tryMap is a map whose lands are bands of equal heat.
func tryMap() *Map {
	m := &Map{NameX: "wire feed, m/min", NameY: "travel, mm/s", At: [2]float64{3.82, 6.5}, TextX: "3.82", TextY: "6.5",
		Suggested: [2]float64{3.6, 5.8}}
	for i := range 60 {
		m.X = append(m.X, 2.4*math.Pow(13.0/2.4, float64(i)/59))
	}
	for j := range 40 {
		m.Y = append(m.Y, 2.9*math.Pow(17.0/2.9, float64(j)/39))
	}
	for _, x := range m.X {
		for _, y := range m.Y {
			m.Lands = append(m.Lands, tryLand(2*math.Log(x/3.82)-math.Log(y/6.5), y))
		}
	}
	return m
}

func tryLand(heat, travel float64) Land {
	switch {
	case heat < -0.5:
		return LandCold
	case heat > 0.9:
		return LandBurns
	case heat > 0.45:
		return LandHot
	case travel > 13:
		return LandOutside
	case math.Abs(heat) < 0.15:
		return LandGood3
	case math.Abs(heat) < 0.3:
		return LandGood2
	}
	return LandGood1
}

// tryChart is the heat of a timed arc over two and a half beats.
func tryChart() *Chart {
	ch := &Chart{X: "s", Y: "°C", OnName: "arc on",
		Limits: []Limit{{Name: "base melts", At: 1470, State: Burns}, {Name: "liquidus", At: 1025, State: Good}}}
	edge, middle := Trace{Name: "root edge"}, Trace{Name: "middle", Dotted: true}
	for i := range 200 {
		at := float64(i) / 100
		p := math.Mod(at, 0.86)
		v := 650 + 750*(1-math.Exp(-p/0.15))
		if p > 0.32 {
			v = 950 + 400*math.Exp(-(p-0.32)/0.12)
		}
		edge.X, edge.Y = append(edge.X, at), append(edge.Y, v)
		middle.X, middle.Y = append(middle.X, at), append(middle.Y, v+90*math.Sin(p/0.86*math.Pi))
	}
	for i := range 3 {
		ch.On = append(ch.On, Stretch{0.86 * float64(i), 0.86*float64(i) + 0.32})
	}
	ch.Traces = []Trace{middle, edge}
	return ch
}

// seenBlock is a block without its styles. It fails if a line does not have the width that it claims, or is wider than
// allowed.
func seenBlock(t *testing.T, what string, b Block, w, h int) string {
	t.Helper()
	if len(b) > max(0, h) {
		t.Fatalf("%s, %dx%d: %d lines", what, w, h, len(b))
	}
	lines := make([]string, len(b))
	for i, l := range b {
		lines[i] = ansi.Strip(l.Text)
		if got := plain.Width(lines[i]); got != l.Width || got > w {
			t.Fatalf("%s, %dx%d, line %d takes %d columns and says %d: %q", what, w, h, i, got, l.Width, lines[i])
		}
		if strings.ContainsRune(lines[i], 0) {
			t.Fatalf("%s, %dx%d, line %d: %q", what, w, h, i, lines[i])
		}
	}
	return strings.Join(lines, "\n")
}
