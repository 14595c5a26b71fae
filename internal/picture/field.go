package picture

import (
	"image/color"
	"math"
	"slices"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Field is values over two rising axes, x outer, as a plotter's grid. A missing value is NaN.
type Field struct {
	Xs, Ys []float64
	Zs     []float64
}

// Dims, X, Y and Z implement the plotter's grid.
func (f *Field) Dims() (c, r int)   { return len(f.Xs), len(f.Ys) }
func (f *Field) X(c int) float64    { return f.Xs[c] }
func (f *Field) Y(r int) float64    { return f.Ys[r] }
func (f *Field) Z(c, r int) float64 { return f.Zs[c*len(f.Ys)+r] }

// even is the field on evenly spaced axes, which the plotter's image needs. The field's own axes rise in equal ratios;
// between its points it is interpolated.
func (f *Field) even(nx, ny int) *Field {
	g := &Field{Xs: steps(f.Xs, nx), Ys: steps(f.Ys, ny), Zs: make([]float64, nx*ny)}
	for c, vx := range g.Xs {
		i, x := within(f.Xs, vx)
		for r, vy := range g.Ys {
			j, y := within(f.Ys, vy)
			g.Zs[c*ny+r] = (f.Z(i, j)*(1-y)+f.Z(i, j+1)*y)*(1-x) + (f.Z(i+1, j)*(1-y)+f.Z(i+1, j+1)*y)*x
		}
	}
	return g
}

func steps(axis []float64, n int) []float64 {
	list := make([]float64, n)
	low, high := axis[0], axis[len(axis)-1]
	for i := range list {
		list[i] = low + (high-low)*float64(i)/float64(n-1)
	}
	return list
}

// within returns the last point of an axis that is not above a value, and which share of the way to the next point the
// value lies at.
func within(axis []float64, v float64) (i int, share float64) {
	x := math.Log(v/axis[0]) / math.Log(axis[len(axis)-1]/axis[0]) * float64(len(axis)-1)
	i = max(0, min(int(x), len(axis)-2))
	return i, x - float64(i)
}

// fills are the colours of the bands of rising values, from white on. They differ in lightness, which every eye and a
// printer without colour can tell apart.
type fills []color.Color

func (f fills) Colors() []color.Color { return f }

// Fill draws the field in fills. There is one fill more than there are levels; the levels rise.
func Fill(f *Field, levels []float64, list []color.Color) plot.Plotter {
	const nx, ny = 720, 400
	g := f.even(nx, ny)
	for k, v := range g.Zs {
		n, found := slices.BinarySearch(levels, v)
		if found {
			n++
		}
		g.Zs[k] = float64(n)
	}
	h := plotter.NewHeatMap(g, fills(list))
	h.Min, h.Max, h.Rasterized = 0, float64(len(list)-1), true
	return filled{h}
}

// filled is a map of fills. The plot asks it how far each of its places reaches, to leave margins.
type filled struct{ *plotter.HeatMap }

// GlyphBoxes returns only the places along the middle row and the middle column. The others reach no further, and there
// are a quarter of a million of them, asked for twice per drawing: this took most of the time of a picture.
func (f filled) GlyphBoxes(p *plot.Plot) []plot.GlyphBox {
	nx, ny := f.GridXYZ.Dims()
	boxes := make([]plot.GlyphBox, 0, nx+ny)
	add := func(i, j int) {
		r := vg.Rectangle{Min: vg.Point{X: -5, Y: -5}, Max: vg.Point{X: 5, Y: 5}}
		boxes = append(boxes, plot.GlyphBox{X: p.X.Norm(f.GridXYZ.X(i)), Y: p.Y.Norm(f.GridXYZ.Y(j)), Rectangle: r})
	}
	for i := range nx {
		add(i, ny/2)
	}
	for j := range ny {
		add(nx/2, j)
	}
	return boxes
}

// Edge is the line along which a field is zero, and the points that the line passes through.
func Edge(f *Field, style draw.LineStyle) (*plotter.Contour, []plotter.XY) {
	whole := f.filled()
	c := plotter.NewContour(whole, []float64{0}, nil)
	c.LineStyles = []draw.LineStyle{style}
	var places []plotter.XY
	for i := range f.Xs {
		for j := range f.Ys {
			if at, ok := whole.crossing(i, j, min(i+1, len(f.Xs)-1), j); ok {
				places = append(places, at)
			}
			if at, ok := whole.crossing(i, j, i, min(j+1, len(f.Ys)-1)); ok {
				places = append(places, at)
			}
		}
	}
	return c, places
}

// crossing is where the field is zero between two neighbouring points.
func (f *Field) crossing(i, j, i2, j2 int) (plotter.XY, bool) {
	a, b := f.Z(i, j), f.Z(i2, j2)
	if a >= 0 == (b >= 0) {
		return plotter.XY{}, false
	}
	at := a / (a - b)
	between := func(u, v float64) float64 { return u * math.Pow(v/u, at) }
	return plotter.XY{X: between(f.Xs[i], f.Xs[i2]), Y: between(f.Ys[j], f.Ys[j2])}, true
}

// filled is the field with its missing values taken from the nearest neighbours, so that no line ends in a jump. A
// field without any value becomes zero.
func (f *Field) filled() *Field {
	g := &Field{f.Xs, f.Ys, slices.Clone(f.Zs)}
	for missing := true; missing; {
		missing = false
		before := &Field{f.Xs, f.Ys, slices.Clone(g.Zs)}
		some := false
		for k, v := range before.Zs {
			if !math.IsNaN(v) {
				continue
			}
			missing = true
			i, j := k/len(f.Ys), k%len(f.Ys)
			for _, n := range [...][2]int{{i - 1, j}, {i + 1, j}, {i, j - 1}, {i, j + 1}} {
				if n[0] >= 0 && n[0] < len(f.Xs) && n[1] >= 0 && n[1] < len(f.Ys) && !math.IsNaN(before.Z(n[0], n[1])) {
					g.Zs[k], some = before.Z(n[0], n[1]), true
				}
			}
		}
		if missing && !some {
			clear(g.Zs)
		}
	}
	return g
}

// Dashes are the dash patterns of lines. There are no more because more could not be told apart.
var Dashes = [][]vg.Length{nil, {16, 5}, {5, 5}, {18, 5, 4, 5}, {2, 4}, {10, 4, 2, 4, 2, 4}, {24, 8}, {8, 3}}

// Stroke is the style of line number n of a picture.
func Stroke(n int, width vg.Length) draw.LineStyle {
	return draw.LineStyle{Color: Ink, Width: width, Dashes: Dashes[n%len(Dashes)]}
}
