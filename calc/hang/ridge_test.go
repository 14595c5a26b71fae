package hang

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"brazebooth/calc/formula"
)

// printed are areas over the chord squared that were computed independently, at chords in capillary lengths.
var printed = []struct {
	chord                             float64
	overhead, fillet, wall, lyingDown float64
}{
	{0.5, .3704, .3760, .3703, .3721}, {0.75, .3464, .3560, .3470, .3507}, {1, .3180, .3303, .3202, .3262},
	{1.25, .2876, .3010, .2922, .3008}, {1.5, .2568, .2701, .2641, .2758}, {1.75, .2262, .2388, .2367, .2518},
	{2, .1960, .2076, .2100, .2291}, {2.25, .1659, .1765, .1839, .2077}, {2.5, .1349, .1450, .1580, .1874},
	{3, .0586, .0729, 0, 0},
}

func TestRidgeAgainstPrintedAreas(t *testing.T) {
	for _, p := range printed {
		for i, want := range []float64{p.overhead, p.fillet, p.wall, p.lyingDown} {
			if want == 0 {
				continue
			}
			e := allCurves[i]
			r, err := e.c.solved(p.chord)
			if err != nil {
				t.Fatal(err)
			}
			what := fmt.Sprintf("%s at %g", e.name, p.chord)
			// Half the last digit; 1e-4 where the print itself is rounded the wrong way (wall at 2.25:
			// 0.18384).
			check(t, what, r.Area/p.chord/p.chord, want, 1e-4)
			check(t, what+" from the table", e.c.at(p.chord), want, 1.2e-4)
		}
	}
}

func TestRidgeWithoutGravity(t *testing.T) {
	r, err := Fullest(Pull{}, 2)
	if err != nil {
		t.Fatal(err)
	}
	check(t, "area over chord squared", r.Area/4, math.Pi/8, 1e-8) // check 2: .3927
	check(t, "pressure times half the chord", r.Pressure, 1, 1e-9) // check 2: 1.0000
	check(t, "height", r.Height, 1, 1e-6)
	for _, toe := range []float64{0.1, 0.7, 1.3, 1.9} {
		r, err := GivenToe(Pull{}, 3, toe)
		if err != nil {
			t.Fatal(err)
		}
		check(t, "a circular segment", r.Area, 9.0/4*segment(toe), 1e-7)
	}
}

func TestRidgeCheckValues(t *testing.T) {
	for chord, want := range map[float64]float64{1: .8184, 2: .4023} { // check 3
		r, err := Fullest(overheadPull, chord)
		if err != nil {
			t.Fatal(err)
		}
		check(t, "overhead, pressure times half the chord", r.Pressure*chord/2, want, 0.5e-4)
	}
	for _, toe := range []float64{0.02, 0.1, 0.2} { // check 4: .1669, and c²/6 = .1667 where slopes are small
		r, err := GivenToe(wallPull, 1, toe)
		if err != nil {
			t.Fatal(err)
		}
		between(t, "wall: lower less upper toe", r.First-r.Second, 0.1666, 0.1678)
	}
}

// TestFlatPuddle: check 5 prints .9293, 1.0627 and 1.1157 for a puddle with toes of 70 degrees. The equation's
// first integral, integrated to 25 digits, gives the values below; the print is off by up to 0.0016.
func TestFlatPuddle(t *testing.T) {
	for chord, want := range map[float64]float64{4: 0.92766679, 6: 1.06256258, 8: 1.11539705} {
		r, err := GivenToe(Pull{Out: -1}, chord, 70*math.Pi/180)
		if err != nil {
			t.Fatal(err)
		}
		check(t, fmt.Sprintf("height over %g", chord), r.Height, want, 1e-6)
		between(t, "below the height without end", r.Height, 0, 2*math.Sin(35*math.Pi/180)) // 1.1472
	}
}

// TestRidgeBalancesItsWeight: along the chord and at right angles to it, tension at both toes and pressure
// carry the metal's weight. The solver does not enforce this.
func TestRidgeBalancesItsWeight(t *testing.T) {
	for _, e := range allCurves {
		for _, chord := range []float64{0.3, 1, 1.7, 2.4, 3} {
			r, err := e.c.solved(chord)
			if err != nil {
				t.Fatal(err)
			}
			g, _ := e.c.pull()
			along := math.Cos(r.First) - math.Cos(r.Second) - g.Along*r.Area
			// The pressure on the chord is P + along·x.
			out := g.Out*r.Area + r.Pressure*chord + g.Along*chord*chord/2 - math.Sin(r.First) - math.Sin(r.Second)
			check(t, fmt.Sprintf("%s at %g, along", e.name, chord), along, 0, 1e-6)
			check(t, fmt.Sprintf("%s at %g, out", e.name, chord), out, 0, 1e-6)
		}
	}
}

// TestFullestIsFullest: the pressure is less on both sides of the ridge that was found.
func TestFullestIsFullest(t *testing.T) {
	for _, g := range []Pull{overheadPull, overheadFillet} {
		for _, chord := range []float64{0.5, 1.5, 2.5} {
			top, err := Fullest(g, chord)
			if err != nil {
				t.Fatal(err)
			}
			for _, side := range []float64{-0.05, 0.05} {
				r, err := GivenToe(g, chord, top.First+side)
				if err != nil {
					t.Fatal(err)
				}
				if !(r.Pressure < top.Pressure-1e-5) {
					t.Errorf("%+v at %g: %g beside a greatest pressure of %g", g, chord, r.Pressure, top.Pressure)
				}
			}
		}
	}
}

// TestGripFitsThePendantStrip compares the root's fit with the equation: within 3 % up to two capillary
// lengths.
func TestGripFitsThePendantStrip(t *testing.T) {
	for _, chord := range []float64{0.25, 0.5, 1, 1.5, 2} {
		r, err := Fullest(overheadPull, chord)
		if err != nil {
			t.Fatal(err)
		}
		x := chord / math.Pi
		fit := math.Pow(1-x*x, 1.8)
		between(t, fmt.Sprintf("fit over equation at %g", chord), fit/(r.Pressure*chord/2), 0.97, 1.03)
	}
}

func TestRidgeOutsideItsRange(t *testing.T) {
	for _, c := range []struct {
		g          Pull
		chord, toe float64
	}{{overheadPull, 0, 1}, {overheadPull, -1, 1}, {overheadPull, 11, 1}, {Pull{Out: 2}, 1, 1}, {overheadPull, 1, 0},
		{overheadPull, 1, 3}, {overheadPull, math.NaN(), 1}, {overheadPull, 1, math.NaN()},
		{wallPull, 4, math.Pi / 2}} {
		if _, err := GivenToe(c.g, c.chord, c.toe); !errors.Is(err, formula.ErrRange) {
			t.Errorf("%+v: %v", c, err)
		}
	}
	for _, chord := range []float64{3.3, 9, math.Inf(1)} {
		if r, err := Fullest(overheadPull, chord); !errors.Is(err, formula.ErrRange) {
			t.Errorf("%g: %+v, %v", chord, r, err)
		}
	}
}

func BenchmarkFullest(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Fullest(overheadPull, 1.5); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkHolds(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		Holds("butt", "overhead", 6, 4.09)
	}
}
