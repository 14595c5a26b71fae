package calc_test

import (
	"context"
	"math"
	"slices"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
)

// chartJobs are of every joint whose edges differ, with unlike members and thick ones.
var chartJobs = []calc.Job{
	{Metal: "galvanized", Gauge: 20},
	{Metal: "stainless-304", Thickness: calc.Some(1.2), Joint: "butt", Gap: calc.Some(1)},
	{Metal: "mild-steel", Gauge: 16, Joint: "tee"},
	{Metal: "copper", Thickness: calc.Some(1), Metal2: "mild-steel", Thickness2: calc.Some(1.5), Joint: "lap"},
	{Metal: "mild-steel", Thickness: calc.Some(2), Metal2: "mild-steel", Thickness2: calc.Some(6)},
}

func chart(t *testing.T, w *calc.Window) calc.Chart {
	t.Helper()
	c, err := calc.ChartOf(context.Background(), w)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// A chart's chance is near the card's at the very point.
func TestChartAgreesWithTheCards(t *testing.T) {
	deep.Turn(t)
	if testing.Short() {
		t.Skip("cards of several places of a map")
	}
	for _, j := range deep.Of(t, chartJobs, 1) {
		w := window(t, j, calc.FullWindow)
		c := chart(t, &w)
		var squares []float64
		for i := 4; i < len(c.Feeds); i += deep.Many(12, 6) {
			for k := 2; k < len(c.Travels); k += deep.Many(8, 4) {
				at := j
				at.Feed, at.Travel = calc.Some(c.Feeds[i]), calc.Some(c.Travels[k])
				card, err := calc.Solve(at)
				if err != nil {
					t.Fatal(err)
				}
				want := card.Chance
				off := c.Chance[i*len(c.Travels)+k] - want.Good
				if math.Abs(off) > 12 {
					t.Errorf("%+v: chance %.0f in the chart, %.0f at the point", at, want.Good+off, want.Good)
				}
				if off != 0 || want.Good > 0 {
					squares = append(squares, off*off)
				}
			}
		}
		mean := 0.0
		for _, s := range squares {
			mean += s / float64(len(squares))
		}
		if len(squares) == 0 || math.Sqrt(mean) > 4 {
			t.Errorf("%+v: over %d points %.1f percentage points apart, root mean square", j, len(squares),
				math.Sqrt(mean))
		}
	}
}

// Every edge of a chart is met somewhere on it and somewhere not, and no chance is without its edges.
func TestChartIsWhole(t *testing.T) {
	w := window(t, calc.Job{Metal: "galvanized", Gauge: 20}, calc.CoarseWindow)
	c := chart(t, &w)
	n := len(c.Feeds) * len(c.Travels)
	if len(c.Chance) != n || !slices.IsSorted(c.Feeds) || !slices.IsSorted(c.Travels) {
		t.Fatalf("%d chances for %d points", len(c.Chance), n)
	}
	for _, e := range c.Edges {
		if len(e.Inside) != n || e.Name == "" || e.Beyond == "" || slices.Min(e.Inside) >= 0 ||
			slices.Max(e.Inside) < 0 {
			t.Errorf("edge %q: %d points", e.Name, len(e.Inside))
		}
		for k, v := range e.Inside {
			if v < -0.5 && c.Chance[k] > 50 {
				t.Errorf("point %d: %q is missed by %.2f, and the chance is %.0f", k, e.Name, v, c.Chance[k])
			}
		}
	}
	if best := slices.Max(c.Chance); best < 50 || best > 100 {
		t.Errorf("best chance %g", best)
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := calc.ChartOf(ctx, &w); err == nil {
		t.Error("a cancelled chart has an answer")
	}
}
