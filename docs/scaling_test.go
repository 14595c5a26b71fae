package docs

import (
	"encoding/csv"
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"gonum.org/v1/plot/plotter"

	"brazebooth/calc/section"
	"brazebooth/internal/deep"
	"brazebooth/internal/picture"
)

// scaled are the pictures of how processor time grows: each with its file, what it grows with, the limits of both axes,
// and the names of its lines in docs/scaling.csv.
var scaled = []struct {
	file, with             string
	low, high, least, most float64
	lines                  []string
}{
	{"scaling-map.svg", "points of the map", 50, 10000, 0.5, 30, []string{"a lap", "a lap on thicker sheet"}},
	{"scaling-thickness.svg", "thickness of the members, mm", 0.5, 40, 0.5, 10,
		[]string{"section of a tee", "section of a butt"}},
	{"scaling-book.svg", "cards in the book", 500, 50000, 0.3, 50, []string{"first page", "find a common word",
		"find a rare word"}},
	{"scaling-guests.svg", "guests", 30, 1000, 0.5, 10, []string{"processors of the server"}},
}

const (
	scaledFile = "scaling.csv"
	scaledHead = "what,size,against_smallest\n"
)

// measureScaling measures everything but the guests; nil if processor time cannot be read.
var measureScaling func(t *testing.T) string

// The pictures of how work grows are drawn from docs/scaling.csv: the columns of the section are counted in this test,
// the rest is processor time that was measured once; each is relative to its smallest size. To measure again, on Linux:
// BRAZEBOOTH_DEEP=1 go test ./docs -run Scaling -update. The guests' lines stay; they come from the load bench.
func TestScalingPictures(t *testing.T) {
	list := read(t, scaledFile)
	if *update && deep.Run() && measureScaling != nil {
		_, guests, _ := strings.Cut(list, "processors of the server")
		list = scaledHead + columnsByThickness(t) + measureScaling(t) + "processors of the server" + guests
		compare(t, scaledFile, list)
	}
	rows, err := csv.NewReader(strings.NewReader(list)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if counted := columnsByThickness(t); !strings.Contains(list, counted) {
		t.Errorf("%s does not have the columns that are counted now:\n%s", scaledFile, counted)
	}
	words := read(t, "speed.md")
	for _, p := range scaled {
		q := picture.New(p.with, "work against the smallest")
		picture.Ratios(&q.X, p.low, p.high)
		picture.Ratios(&q.Y, p.least, p.most)
		for n, name := range p.lines {
			line := plotter.Line{LineStyle: picture.Stroke(n, 3)}
			for _, row := range rows[1:] {
				if row[0] != name {
					continue
				}
				x, err1 := strconv.ParseFloat(row[1], 64)
				y, err2 := strconv.ParseFloat(row[2], 64)
				if err1 != nil || err2 != nil || x < p.low || x > p.high || y < p.least || y > p.most {
					t.Fatalf("%v does not fit the picture", row)
				}
				line.XYs = append(line.XYs, plotter.XY{X: x, Y: y})
			}
			q.Add(&line)
			key := fmt.Sprintf("%s: exponent %.2f", name, exponent(line.XYs))
			q.Keys = append(q.Keys, picture.Key{Text: key, Line: line.LineStyle})
			if stated := fmt.Sprintf("| %s | %.2f |", name, exponent(line.XYs)); !strings.Contains(words, stated) {
				t.Errorf("speed.md does not state %q", stated)
			}
		}
		b, err := q.SVG()
		if err != nil {
			t.Fatal(err)
		}
		compare(t, p.file, string(b))
	}
}

// columnsByThickness counts the columns that a cross-section solves, weighting four layers as three of two, for a heat
// that grows with the thickness as far as an arc can.
func columnsByThickness(t *testing.T) string {
	t.Helper()
	var out strings.Builder
	steel := section.Material{K: section.SteelMean.K, RhoC: section.SteelMean.RhoC, Solidus: 1480, Liquidus: 1520,
		Latent: 2, Steel: true}
	filler := section.Filler{K: 0.04, Stir: 2, RhoC: 0.0037, Latent: 1.7, Solidus: 910, Liquidus: 1025, Toe: 960}
	w := new(section.Workspace)
	for n, joint := range []section.Joint{section.TeeJoint, section.ButtJoint} {
		first := 0
		for _, thick := range []float64{0.8, 1.2, 2, 3, 5, 8, 12, 20, 30} {
			r, err := w.Solve(&section.Input{Joint: joint, Thick: [2]float64{thick, thick},
				Base: [2]section.Material{steel, steel}, Filler: filler, Heat: min(110*thick, 900), Bead: 10, Travel: 6,
				Sigma: 1.8, Loss: 60e-6, Start: 20})
			if err != nil {
				t.Fatal(err)
			}
			if first == 0 {
				first = r.Work
			}
			fmt.Fprintf(&out, "%s,%g,%.2f\n", scaled[1].lines[n], thick, float64(r.Work)/float64(first))
		}
	}
	return out.String()
}

// exponent is the slope of the straight line through the logarithms of points, by least squares.
func exponent(list plotter.XYs) float64 {
	var n, sx, sy, sxx, sxy float64
	for _, p := range list {
		x, y := math.Log(p.X), math.Log(p.Y)
		n, sx, sy, sxx, sxy = n+1, sx+x, sy+y, sxx+x*x, sxy+x*y
	}
	return (n*sxy - sx*sy) / (n*sxx - sx*sx)
}

// Points on a parabola have the exponent two.
func TestExponent(t *testing.T) {
	if got := exponent(plotter.XYs{{X: 1, Y: 3}, {X: 2, Y: 12}, {X: 5, Y: 75}}); math.Abs(got-2) > 1e-12 {
		t.Errorf("the exponent is %g", got)
	}
}
