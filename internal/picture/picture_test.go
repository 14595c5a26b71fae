package picture

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
	"gonum.org/v1/plot/vg/vgimg"
)

// ratios is a field over two axes of equal ratios from 1 to 10. Its value is the product of both, so that it is 10 on
// the diagonal from the lower right to the upper left.
func ratios(n int) *Field {
	f := &Field{}
	for i := range n {
		v := math.Pow(10, float64(i)/float64(n-1))
		f.Xs, f.Ys = append(f.Xs, v), append(f.Ys, v)
	}
	for _, x := range f.Xs {
		for _, y := range f.Ys {
			f.Zs = append(f.Zs, math.Log(x*y/10))
		}
	}
	return f
}

// A fill and an edge lie where their field says, on axes that are not even: half of the plot is filled, and the line
// runs along the border.
func TestFillAndEdgeLieWhereTheirFieldIs(t *testing.T) {
	f := ratios(13)
	p := New("x", "y")
	p.Add(Fill(f, []float64{0}, []color.Color{color.White, color.Gray{0x80}}))
	line, places := Edge(f, Stroke(0, 2))
	p.Add(line)
	Ratios(&p.X, 1, 10)
	Ratios(&p.Y, 1, 10)
	b, err := p.PNG(50)
	if err != nil {
		t.Fatal(err)
	}
	img, err := png.Decode(bytes.NewReader(b))
	if err != nil {
		t.Fatal(err)
	}
	is := func(x, y int) bool { return color.GrayModel.Convert(img.At(x, y)).(color.Gray).Y == 0x80 }
	grey, filled := 0, image.Rectangle{}
	box := img.Bounds()
	for x := box.Min.X; x < box.Max.X; x++ {
		for y := box.Min.Y; y < box.Max.Y; y++ {
			if is(x, y) && is(x+1, y) && is(x, y+1) { // the rim of a letter has such a grey only here and there
				grey, filled = grey+1, filled.Union(image.Rect(x, y, x+1, y+1))
			}
		}
	}
	// The filled triangle reaches every side of the plot, so that its bounds are those of the plot.
	if share := float64(grey) / float64(filled.Dx()*filled.Dy()); share < 0.47 || share > 0.52 || filled.Dx() < 300 {
		t.Errorf("%.2f of the plot, %v, is filled, want half", share, filled)
	}
	for _, at := range places {
		if math.Abs(math.Log(at.X*at.Y/10)) > 1e-9 {
			t.Errorf("the edge passes %v", at)
		}
	}
	if len(places) < 12 {
		t.Errorf("the edge has %d places", len(places))
	}
}

// Missing values in a field make no edge of their own.
func TestMissingValuesMakeNoEdge(t *testing.T) {
	f := ratios(9)
	for k := range f.Zs {
		if f.Zs[k] < -1 {
			f.Zs[k] = math.NaN()
		}
	}
	_, places := Edge(f, Stroke(1, 1))
	for _, at := range places {
		if math.Abs(math.Log(at.X*at.Y/10)) > 1e-9 {
			t.Errorf("the edge passes %v", at)
		}
	}
	for k := range f.Zs {
		f.Zs[k] = math.NaN()
	}
	if _, places = Edge(f, Stroke(1, 1)); len(places) != 0 {
		t.Errorf("nothing is known, and an edge passes %v", places)
	}
}

// Labels lie inside the plot and cover nothing; a label without room is left out.
func TestLabelsKeepApart(t *testing.T) {
	p := New("x", "y")
	Ratios(&p.X, 1, 10)
	Ratios(&p.Y, 1, 10)
	var places []plotter.XY
	for x := 1.0; x <= 10; x++ {
		places = append(places, plotter.XY{X: x, Y: 5})
	}
	var labels Labels
	for range 12 {
		labels.List = append(labels.List, Label{Text: "a longer name", Size: Near, Places: places})
	}
	labels.Taken = []plotter.XY{{X: 3, Y: 3}}
	labels.List = append(labels.List, Label{Text: "beside", Size: Near, Beside: true, Places: labels.Taken})
	p.Add(&labels)
	b, err := p.SVG()
	if err != nil {
		t.Fatal(err)
	}
	if n := strings.Count(string(b), "a longer name"); n < 2 || n > 6 || !strings.Contains(string(b), ">beside<") {
		t.Errorf("%d of the names stand, in a row with room for about four", n)
	}
	free := freeAbout(vg.Rectangle{Max: vg.Point{X: 5, Y: 5}}, vg.Rectangle{Min: vg.Point{X: -9, Y: -9},
		Max: vg.Point{X: 30, Y: 30}}, []vg.Rectangle{{Min: vg.Point{X: 8, Y: 9}, Max: vg.Point{X: 20, Y: 20}}})
	if free != 5 {
		t.Errorf("3 and 4 away is %v", free)
	}
}

// Numbers on axes are round, have enough room, and are written as the picture's Say asks.
func TestTicks(t *testing.T) {
	p := New("x", "y")
	for _, c := range [][2]float64{{1, 10}, {2.3, 13}, {80, 450}, {0.004, 0.2}} {
		Ratios(&p.X, c[0], c[1])
		last := 0.0
		list := p.X.Tick.Marker.Ticks(c[0], c[1])
		for _, tick := range list {
			if tick.Value < c[0] || tick.Value > c[1] || last > 0 && math.Log(tick.Value/last) < math.Log(c[1]/c[0])/8 {
				t.Errorf("%v: tick %v after %v", c, tick.Value, last)
			}
			last = tick.Value
		}
		if len(list) < 3 {
			t.Errorf("%v: %d ticks", c, len(list))
		}
	}
	Steps(&p.Y, 0, 1, 0.25)
	for i, want := range []string{"0", "0,25", "0,5", "0,75", "1"} {
		list := said{p.Y.Tick.Marker, func(s string) string { return strings.ReplaceAll(s, ".", ",") }}.Ticks(0, 1)
		if list[i].Label != want {
			t.Errorf("tick %d is %q, want %q", i, list[i].Label, want)
		}
	}
	for step, want := range map[float64]float64{0.7: 1, 1: 1, 1.2: 2, 3: 5, 6: 10, 130: 200} {
		if got := Round(step); math.Abs(got-want) > 1e-9 {
			t.Errorf("%g is rounded to %g, want %g", step, got, want)
		}
	}
}

// A line that is too long for the sheet is written smaller, and every fill has a lightness of its own.
func TestLongLinesFit(t *testing.T) {
	p := New("x", "y")
	c := draw.New(vgimg.New(Wide, High))
	l := Line{Text: strings.Repeat("many words ", 20), Size: Far}
	if at := p.write(&c, l, High); at != High-lineHigh(Far) {
		t.Errorf("the next line begins at %v", at)
	}
}
