package calc_test

import (
	"math"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
)

// missedJobs are settings that miss an edge by more than a probe or by less: too cold, too hot, an open root, a wall.
func missedJobs() (list []calc.Job) {
	for _, j := range []calc.Job{
		{Metal: "galvanized", Joint: "lap", Thickness: calc.Some(1.9), Feed: calc.Some(5), Travel: calc.Some(7)},
		{Metal: "galvanized", Joint: "lap", Thickness: calc.Some(1), Feed: calc.Some(5), Travel: calc.Some(4)},
		{Metal: "mild-steel", Joint: "tee", Thickness: calc.Some(2), Feed: calc.Some(5), Travel: calc.Some(9)},
		{Metal: "mild-steel", Joint: "butt", Thickness: calc.Some(1), Gap: calc.Some(1.2), Feed: calc.Some(4),
			Travel: calc.Some(8)},
		{Metal: "stainless-304", Joint: "corner", Thickness: calc.Some(1), Feed: calc.Some(5), Travel: calc.Some(6)},
		{Metal: "mild-steel", Joint: "lap", Thickness: calc.Some(1.5), Position: "overhead", Feed: calc.Some(6),
			Travel: calc.Some(5)},
	} {
		for _, more := range []float64{0.8, 0.9, 1, 1.1, 1.25} {
			k := j
			k.Feed.V *= more
			list = append(list, k)
		}
	}
	return list
}

// A missed edge is met at the change of feed or travel that its distance says, and not well before it.
func TestMissedEdgesAreAsFarAsTheyAre(t *testing.T) {
	deep.Turn(t)
	changed := func(j calc.Job, percent float64) (list []calc.Job) {
		for _, by := range []float64{1 + percent/100, 1 - percent/100} {
			feed, travel := j, j
			feed.Feed.V *= by
			travel.Travel.V *= by
			list = append(list, feed, travel)
		}
		return list
	}
	metAt := func(j calc.Job, percent float64, name string) bool {
		for _, k := range changed(j, percent) {
			for _, e := range mustSolve(t, k).Edges {
				if e.Name == name && e.Met {
					return true
				}
			}
		}
		return false
	}
	seen := 0
	for _, j := range deep.Of(t, missedJobs(), 6) {
		for _, e := range mustSolve(t, j).Edges {
			switch {
			case e.Met:
			case e.Margin >= 999:
				for _, percent := range []float64{10, 20, 30} {
					if metAt(j, percent, e.Name) {
						t.Errorf("%+v: %s is missed by far, and met %g %% away", j, e.Name, percent)
					}
				}
			default:
				seen++
				if !metAt(j, 1.12*e.Margin+1, e.Name) {
					t.Errorf("%+v: %s is missed by %.1f %%, and not met a little further", j, e.Name, e.Margin)
				}
				if metAt(j, 0.8*e.Margin-1, e.Name) {
					t.Errorf("%+v: %s is missed by %.1f %%, and met well before", j, e.Name, e.Margin)
				}
			}
		}
	}
	if seen == 0 && deep.Run() {
		t.Error("no edge was missed")
	}
}

// A missed edge moves away bit by bit as the sheet gets thicker: by less than 5 points a hundredth of its thickness.
func TestMissedEdgesMoveBitByBit(t *testing.T) {
	last := 0.0
	for thick := 1.76; thick < 2.25; thick *= 1.01 {
		c := mustSolve(t, calc.Job{Metal: "galvanized", Joint: "lap", Thickness: calc.Some(thick), Feed: calc.Some(5),
			Travel: calc.Some(7)})
		for _, e := range c.Edges {
			if e.Name != "wets" || e.Met {
				continue
			}
			if step := e.Margin - last; last > 0 && !(step > -0.5 && step < 5) {
				t.Errorf("%.3f mm: missed by %.1f %%, before by %.1f %%", thick, e.Margin, last)
			}
			last = e.Margin
		}
	}
	if !(last > 30) || math.IsInf(last, 0) {
		t.Errorf("at the end it is missed by %.1f %%", last)
	}
}
