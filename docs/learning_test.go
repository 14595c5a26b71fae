package docs

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/plot/plotter"

	"brazebooth/calc"
	"brazebooth/calc/formula"
	"brazebooth/internal/picture"
	"brazebooth/tables"
)

// docs/learning.svg is the interval's half-width against the number of readings, with and without the floor, over 200
// shops. After a change that is meant: go test ./docs -run Learning -update.
func TestLearningPicture(t *testing.T) {
	f, _ := tables.Fillers.ByID("cusi3")
	amps := func(feed, phi float64) float64 { // of a feed in mm/s
		a, err := formula.CurrentFromFeed(0.889, feed, f.Density.V, f.HLiq.V, f.Resistivity.V, phi, 12)
		if err != nil {
			t.Fatal(err)
		}
		return a
	}
	r := rand.New(rand.NewPCG(11, 200))
	noise := func() float64 { return 1 + tables.ReadingSigma.V*r.NormFloat64() }
	var plain, floored []float64
	for n := range 21 {
		width := 0.0
		for range 200 {
			phi := 3.25 + 0.175*r.NormFloat64()
			var list []calc.Reading
			for range n {
				feed := 3.5 + 4*r.Float64()
				a := amps(feed*1000/60, phi)
				volts := tables.DipVoltFactor.V * formula.LoadLine(a)
				list = append(list, calc.Reading{Feed: feed, StickOut: 12, Amps: a * noise(), Volts: volts * noise()})
			}
			l, err := calc.Learn(&f, 0.889, "dip", list)
			if err != nil {
				t.Fatal(err)
			}
			mean, sigma := l.Phi.Mean, l.Phi.Sigma
			width += 100 * (amps(90, mean-1.96*sigma) - amps(90, mean+1.96*sigma)) / 2 / amps(90, mean) / 200
		}
		plain = append(plain, width)
		floored = append(floored, math.Hypot(width, 100*tables.LearnedFloor.V))
	}
	for i := 1; i < len(plain); i++ {
		if !(plain[i] < plain[i-1]) {
			t.Errorf("%d readings: %.3f %%, %d: %.3f", i-1, plain[i-1], i, plain[i])
		}
	}
	compare(t, "learning.svg", string(learningPicture(t, plain, floored)))
}

// learningPicture draws half-widths in per cent, without the floor and with it, against the number of readings.
func learningPicture(t *testing.T, plain, floored []float64) []byte {
	t.Helper()
	p := picture.New("readings of one power source with one wire", "half-width, %")
	p.Head = []picture.Line{{Text: "Band of the current, mean of 200 simulated shops", Size: picture.Near}}
	picture.Steps(&p.X, 0, float64(len(plain)-1), 5)
	picture.Steps(&p.Y, 0, 10, 2)
	for n, values := range [][]float64{floored, plain} {
		line := plotter.Line{LineStyle: picture.Stroke(n, 3)}
		for x, y := range values {
			line.XYs = append(line.XYs, plotter.XY{X: float64(x), Y: y})
		}
		p.Add(&line)
		name := [...]string{"95 % band", "before the floor of 2 %"}[n]
		p.Keys = append(p.Keys, picture.Key{Text: name, Line: line.LineStyle})
	}
	b, err := p.SVG()
	if err != nil {
		t.Fatal(err)
	}
	return b
}
