package grid

import (
	"math"
	"testing"

	"brazebooth/calc/limit"
)

// fields gives some limits at the points of a grid.
type fields map[limit.Limit]func(i, j float64) float64

// gridOf is a grid of five feeds by four travels, each twice the one before, with one limit as given and the others
// out of the way.
func gridOf(limits fields) Limits {
	c := Limits{Feeds: Axis{1, 16, 5}, Travels: Axis{1, 8, 4}}
	for i := range c.Feeds.N {
		for j := range c.Travels.N {
			var l limit.All
			for k := range limit.Count {
				l[k] = limit.Far
				if f := limits[k]; f != nil {
					l[k] = f(float64(i), float64(j))
				}
			}
			c.Points = append(c.Points, l)
		}
	}
	return c
}

// Between four points the limits are linear each way.
func TestBetweenIsStraight(t *testing.T) {
	c := gridOf(fields{limit.Wets: func(i, j float64) float64 { return i*i + 10*j*j + i*j }})
	for _, x := range [][3]float64{{0, 0, 0}, {4, 3, 118}, {2, 1, 16}, {0.5, 0, 0.5}, {0, 0.5, 5}, {1.5, 0, 2.5},
		{3.5, 2.5, 12.5 + 65 + 8.75}, {4, 2.5, 16 + 65 + 10}, {2.25, 3, 5.25 + 90 + 6.75}} {
		if l := c.Between(x[0], x[1]); math.Abs(l[limit.Wets]-x[2]) > 1e-9 {
			t.Errorf("at %g, %g: %g, by hand %g", x[0], x[1], l[limit.Wets], x[2])
		}
	}
}

// A slope is the change between the neighbours over their distance, one step or, inside, two; at the border the one
// there is.
func TestSlopesByHand(t *testing.T) {
	c := gridOf(fields{limit.Wets: func(i, j float64) float64 { return i*i + 10*j*j }})
	for _, x := range []struct{ x, y, feed, travel float64 }{{0, 0, 1, 10}, {1, 1, 2, 20}, {2, 2, 4, 40}, {3, 1, 6,
		20}, {4, 3, 7, 50}, {0, 3, 1, 50}, {4, 0, 7, 10}} {
		f, g := c.Slopes(x.x, x.y, 1)
		if math.Abs(f[limit.Wets]-x.feed/math.Ln2) > 1e-9 || math.Abs(g[limit.Wets]-x.travel/math.Ln2) > 1e-9 {
			t.Errorf("at %g, %g: %g and %g a step, by hand %g and %g", x.x, x.y, f[limit.Wets]*math.Ln2,
				g[limit.Wets]*math.Ln2, x.feed, x.travel)
		}
	}
}

// A point among four computed ones that agree is interpolated; near an edge, or where they differ, it is not.
func TestFlatFillsByHand(t *testing.T) {
	logs := fields{limit.Filled: func(i, j float64) float64 { return 1 + i*i + 10*j }}
	for _, k := range []limit.Limit{limit.Wets, limit.Solid, limit.Burn, limit.Zinc} {
		logs[k] = func(i, j float64) float64 { return 1 + i*j }
	}
	first := make([]bool, 20)
	for i := 0; i < 5; i += 2 {
		for _, j := range []int{0, 2, 3} {
			first[i*4+j] = true
		}
	}
	for _, x := range []struct {
		i, j int
		want float64
	}{{1, 0, 1 + 2}, {0, 1, 1 + 10}, {1, 1, 1 + 2 + 10}, {3, 1, 1 + 10 + 10}, {3, 3, 1 + 10 + 30}, {2, 1, 1 + 4 + 10}} {
		c := gridOf(logs)
		c.Points[x.i*4+x.j][limit.Filled] = -99
		if !c.flat(first, x.i, x.j) || math.Abs(c.Points[x.i*4+x.j][limit.Filled]-x.want) > 1e-12 {
			t.Errorf("%d, %d is filled with %g, by hand %g", x.i, x.j, c.Points[x.i*4+x.j][limit.Filled], x.want)
		}
	}
	for what, spoil := range map[string]func(*Limits, []bool){
		"an edge is near":          func(c *Limits, _ []bool) { c.Points[0][limit.Zinc] = flatFrom * 0.99 },
		"a corner is hot":          func(c *Limits, _ []bool) { c.Points[10][limit.Solid] = -1 },
		"a corner has no answer":   func(c *Limits, _ []bool) { c.Points[2] = limit.Hopeless },
		"a corner is not computed": func(_ *Limits, first []bool) { first[8] = false },
	} {
		c, known := gridOf(logs), append([]bool{}, first...)
		spoil(&c, known)
		if c.flat(known, 1, 1) {
			t.Errorf("filled though %s", what)
		}
	}
}

// Every second point of a grid keeps its limits, on axes that go as far as those points do.
func TestEverySecondPoint(t *testing.T) {
	whole := gridOf(fields{limit.Wets: func(i, j float64) float64 { return 10*i + j }})
	half := whole
	half.EverySecond()
	if half.Feeds.N != 3 || half.Travels.N != 2 || len(half.Points) != 6 {
		t.Fatalf("%+v by %+v, %d points", half.Feeds, half.Travels, len(half.Points))
	}
	for i := range 3 {
		for j := range 2 {
			if got, want := half.Points[i*2+j][limit.Wets], float64(20*i+2*j); got != want {
				t.Errorf("%d, %d is %g, was %g", i, j, got, want)
			}
			if f, v := half.Feeds.At(float64(i))-whole.Feeds.At(float64(2*i)),
				half.Travels.At(float64(j))-whole.Travels.At(float64(2*j)); f > 1e-9 || f < -1e-9 || v > 1e-9 ||
				v < -1e-9 {
				t.Errorf("%d, %d has moved", i, j)
			}
		}
	}
}
