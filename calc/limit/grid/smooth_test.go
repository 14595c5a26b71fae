package grid

import (
	"math"
	"testing"

	"brazebooth/calc/limit"
)

// cubicGrid is a grid of eleven feeds by ten travels with the limits of heat far from zero, one of them bent.
func cubicGrid(bent func(i, j float64) float64) Limits {
	c := New(Axis{1, 16, 11}, Axis{1, 8, 10})
	for k := range c.Points {
		i, j := float64(k/10), float64(k%10)
		for e := range c.Points[k] {
			c.Points[k][e] = 2
		}
		c.Points[k][limit.Wets] = bent(i, j)
	}
	return c
}

// everyOther marks the points that are computed first.
func everyOther(c *Limits) (first []bool) {
	for k := range c.Points {
		i, j := k/c.Travels.N, k%c.Travels.N
		first = append(first, (i%2 == 0 || i == c.Feeds.N-1) && (j%2 == 0 || j == c.Travels.N-1))
	}
	return first
}

// A point between known ones is read off a cubic exactly; not where an edge is near, where a limit has a kink, where a
// point that it needs has no answer or is not known, nor at the end of the grid.
func TestSmoothFillsByHand(t *testing.T) {
	bent := func(i, j float64) float64 { return 1 + i*i*i/1000 - j*j*j/800 + i*j/50 }
	for _, at := range [][2]int{{5, 4}, {4, 5}, {5, 5}, {3, 3}, {7, 5}, {1, 4}, {9, 7}, {4, 7}, {1, 1}} {
		c := cubicGrid(bent)
		k := at[0]*10 + at[1]
		c.Points[k][limit.Wets] = -99
		want := bent(float64(at[0]), float64(at[1]))
		first := everyOther(&c)
		if !c.smooth(first, at[0], at[1], 2) || math.Abs(c.Points[k][limit.Wets]-want) > 1e-12 {
			t.Errorf("%v is filled with %g, by hand %g", at, c.Points[k][limit.Wets], want)
		}
	}
	for what, spoil := range map[string]func(c *Limits, first []bool) (i, j int){
		"an edge is near": func(c *Limits, _ []bool) (int, int) {
			for k := range c.Points {
				c.Points[k][limit.Zinc] = trusted[2].certain * 0.99
			}
			return 5, 5
		},
		"a limit has a kink": func(c *Limits, _ []bool) (int, int) { c.Points[64][limit.Burn] = 0.5; return 5, 4 },
		"no answer":          func(c *Limits, _ []bool) (int, int) { c.Points[2*10+4] = limit.Hopeless; return 5, 5 },
		"not computed":       func(_ *Limits, first []bool) (int, int) { first[8*10+8] = false; return 5, 5 },
		"one at the end":     func(_ *Limits, first []bool) (int, int) { first[0*10+4] = false; return 1, 4 },
	} {
		c := cubicGrid(bent)
		first := everyOther(&c)
		if i, j := spoil(&c, first); c.smooth(first, i, j, 2) {
			t.Errorf("filled though %s", what)
		}
	}
}
