package calc

import (
	"math"
	"testing"
)

// gridOf is a grid of five feeds by four travels, each twice the one before, with one limit as given and the others
// out of the way.
func gridOf(limits map[limit]func(feed, travel float64) float64) limitGrid {
	c := limitGrid{feeds: axis{1, 16, 5}, travels: axis{1, 8, 4}}
	for i := range c.feeds.n {
		for j := range c.travels.n {
			var l Limits
			for k := range limitCount {
				l[k] = far
				if f := limits[k]; f != nil {
					l[k] = f(float64(i), float64(j))
				}
			}
			c.logs = append(c.logs, l)
		}
	}
	return c
}

// Between four points the limits are linear each way.
func TestBetweenIsStraight(t *testing.T) {
	c := gridOf(map[limit]func(i, j float64) float64{lWets: func(i, j float64) float64 { return i*i + 10*j*j + i*j }})
	for _, x := range [][3]float64{{0, 0, 0}, {4, 3, 118}, {2, 1, 16}, {0.5, 0, 0.5}, {0, 0.5, 5}, {1.5, 0, 2.5},
		{3.5, 2.5, 12.5 + 65 + 8.75}, {4, 2.5, 16 + 65 + 10}, {2.25, 3, 5.25 + 90 + 6.75}} {
		if l := c.between(x[0], x[1]); math.Abs(l[lWets]-x[2]) > 1e-9 {
			t.Errorf("at %g, %g: %g, by hand %g", x[0], x[1], l[lWets], x[2])
		}
	}
}

// A slope is the change between the neighbours over their distance, one step or, inside, two; at the border the one
// there is.
func TestSlopesByHand(t *testing.T) {
	c := gridOf(map[limit]func(i, j float64) float64{lWets: func(i, j float64) float64 { return i*i + 10*j*j }})
	for _, x := range []struct{ x, y, feed, travel float64 }{{0, 0, 1, 10}, {1, 1, 2, 20}, {2, 2, 4, 40}, {3, 1, 6,
		20}, {4, 3, 7, 50}, {0, 3, 1, 50}, {4, 0, 7, 10}} {
		f, g := c.slopes(x.x, x.y, 1)
		if math.Abs(f[lWets]-x.feed/math.Ln2) > 1e-9 || math.Abs(g[lWets]-x.travel/math.Ln2) > 1e-9 {
			t.Errorf("at %g, %g: %g and %g a step, by hand %g and %g", x.x, x.y, f[lWets]*math.Ln2, g[lWets]*math.Ln2,
				x.feed, x.travel)
		}
	}
}

// A point among four computed ones that agree is interpolated; near an edge, or where they differ, it is not.
func TestFlatFillsByHand(t *testing.T) {
	logs := map[limit]func(i, j float64) float64{lFilled: func(i, j float64) float64 { return 1 + i*i + 10*j }}
	for _, k := range []limit{lWets, lSolid, lBurn, lZinc} {
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
		c.logs[x.i*4+x.j][lFilled] = -99
		if !c.flat(first, x.i, x.j) || math.Abs(c.logs[x.i*4+x.j][lFilled]-x.want) > 1e-12 {
			t.Errorf("%d, %d is filled with %g, by hand %g", x.i, x.j, c.logs[x.i*4+x.j][lFilled], x.want)
		}
	}
	for what, spoil := range map[string]func(*limitGrid, []bool){
		"an edge is near":          func(c *limitGrid, _ []bool) { c.logs[0][lZinc] = flatFrom * 0.99 },
		"a corner is hot":          func(c *limitGrid, _ []bool) { c.logs[10][lSolid] = -1 },
		"a corner has no answer":   func(c *limitGrid, _ []bool) { c.logs[2] = hopeless },
		"a corner is not computed": func(_ *limitGrid, first []bool) { first[8] = false },
	} {
		c, known := gridOf(logs), append([]bool{}, first...)
		spoil(&c, known)
		if c.flat(known, 1, 1) {
			t.Errorf("filled though %s", what)
		}
	}
}
