package calc

import (
	"math"
	"testing"

	"brazebooth/internal/deep"
)

// cubicGrid is a grid of eleven feeds by ten travels with the limits of heat far from zero, one of them bent.
func cubicGrid(bent func(i, j float64) float64) limitGrid {
	c := newLimitGrid(axis{1, 16, 11}, axis{1, 8, 10})
	for k := range c.logs {
		i, j := float64(k/10), float64(k%10)
		for e := range c.logs[k] {
			c.logs[k][e] = 2
		}
		c.logs[k][lWets] = bent(i, j)
	}
	return c
}

// everyOther are the points that are computed first.
func everyOther(c *limitGrid) (first []bool) {
	for k := range c.logs {
		i, j := k/c.travels.n, k%c.travels.n
		first = append(first, (i%2 == 0 || i == c.feeds.n-1) && (j%2 == 0 || j == c.travels.n-1))
	}
	return first
}

// A point between is read off a cubic exactly; not where an edge is near, where a limit has a kink, where a point that
// it needs has no answer or is not computed, nor where the grid ends.
func TestSmoothFillsByHand(t *testing.T) {
	bent := func(i, j float64) float64 { return 1 + i*i*i/1000 - j*j*j/800 + i*j/50 }
	for _, at := range [][2]int{{5, 4}, {4, 5}, {5, 5}, {3, 3}, {7, 5}, {1, 4}, {9, 7}, {4, 7}, {1, 1}} {
		c := cubicGrid(bent)
		k := at[0]*10 + at[1]
		c.logs[k][lWets] = -99
		want := bent(float64(at[0]), float64(at[1]))
		if first := everyOther(&c); !c.smooth(first, at[0], at[1], 2) || math.Abs(c.logs[k][lWets]-want) > 1e-12 {
			t.Errorf("%v is filled with %g, by hand %g", at, c.logs[k][lWets], want)
		}
	}
	for what, spoil := range map[string]func(c *limitGrid, first []bool) (i, j int){
		"an edge is near": func(c *limitGrid, _ []bool) (int, int) {
			for k := range c.logs {
				c.logs[k][lZinc] = trusted[2].certain * 0.99
			}
			return 5, 5
		},
		"a limit has a kink": func(c *limitGrid, _ []bool) (int, int) { c.logs[64][lBurn] = 0.5; return 5, 4 },
		"no answer":          func(c *limitGrid, _ []bool) (int, int) { c.logs[2*10+4] = hopeless; return 5, 5 },
		"not computed":       func(_ *limitGrid, first []bool) (int, int) { first[8*10+8] = false; return 5, 5 },
		"one at the end":     func(_ *limitGrid, first []bool) (int, int) { first[0*10+4] = false; return 1, 4 },
	} {
		c := cubicGrid(bent)
		first := everyOther(&c)
		if i, j := spoil(&c, first); c.smooth(first, i, j, 2) {
			t.Errorf("filled though %s", what)
		}
	}
}

// A full map that is drawn has the zones of one whose every point is computed, but for a few right at a border, and
// margins near the border within one per cent on average. A third of the points or more are not computed.
func TestDrawnMapIsTheFullMap(t *testing.T) {
	jobs := []Job{{Metal: "galvanized", Gauge: 18}, {Metal: "mild-steel", Gauge: 18, Joint: "butt"},
		{Metal: "galvanized", Gauge: 18, Gauge2: 14, Joint: "lap"}, {Metal: "mild-steel", Thickness: Some(6),
			Joint: "butt"},
		{Metal: "copper", Thickness: Some(2), Joint: "lap"}, {Metal: "mild-steel", Gauge: 18, Joint: "butt",
			Gap: Some(0.8)},
		{Metal: "galvanized", Gauge: 20, Joint: "tee", Position: "overhead", ZincLimit: Some(4)}}
	if testing.Short() {
		jobs = jobs[:1]
	}
	for _, job := range deep.Of(t, jobs, 1) {
		var card Card
		if err := resolve(job, &card); err != nil {
			t.Fatal(err)
		}
		b := newBoard(&card)
		b.effort = &effort{ctx: t.Context()}
		h, m := b.heatField(&card), newMargins(b, &card)
		drawn, full := drawing{e: b.effort, field: &h, margins: &m}, drawing{e: b.effort, field: &h, margins: &m}
		drawn.layOut(b, FullWindow)
		full.layOut(b, FullWindow)
		for k := range full.wanted {
			full.wanted[k] = true
		}
		full.step = 1
		if err := full.sweep(nil); err != nil {
			t.Fatal(err)
		}
		computed := 0
		for ; ; drawn.wantBetween() {
			computed += drawn.wantedCount()
			if err := drawn.sweep(nil); err != nil {
				t.Fatal(err)
			}
			if drawn.step == 1 {
				break
			}
		}
		other := 0
		for k := range full.grid.logs {
			a, b := &drawn.grid.logs[k], &full.grid.logs[k]
			if a.Zone() == b.Zone() {
				continue
			}
			other++
			if least := min(math.Abs(b[lWets]), math.Abs(b[lSolid]), math.Abs(b[lBurn])); least > 0.03 {
				t.Errorf("%+v: point %d is %s, computed %s, %.3f from the border", job, k, a.Zone(), b.Zone(), least)
			}
		}
		off := marginsOff(&drawn.grid, &full.grid)
		t.Logf("%s %s: %d of %d computed, %d zones differ, margins %.2f off", job.Metal, job.Joint, computed,
			len(full.grid.logs), other, off)
		if off > 1 {
			t.Errorf("%+v: margins near the border are off by %.2f on average", job, off)
		}
		if other > 3 || computed > 2*len(full.grid.logs)/3 {
			t.Errorf("%+v: %d zones differ, %d points computed", job, other, computed)
		}
	}
}

// marginsOff is by how much a drawn map's margins of less than 15 % are off on average, in points of per cent.
func marginsOff(drawn, full *limitGrid) float64 {
	var d, f Window
	d.describe(drawn)
	f.describe(full)
	sum, near := 0.0, 0
	for k, margin := range f.Margins {
		if math.Abs(margin) < 15 {
			sum += math.Abs(d.Margins[k] - margin)
			near++
		}
	}
	if near < 20 {
		return 0 // none to speak of
	}
	return sum / float64(near)
}
