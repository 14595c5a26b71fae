package calc

import (
	"math"
	"testing"

	"brazebooth/calc/effort"
	"brazebooth/calc/thinsheet"
	"brazebooth/internal/deep"
	"brazebooth/tables"
)

// The intervals of on and off in tables cover what the inputs behind them do, joined as independent.
func TestTimedIntervals(t *testing.T) {
	deep.Turn(t)
	if testing.Short() {
		t.Skip("long")
	}
	jobs := []Job{
		{Metal: "mild-steel", Gauge: 16, Joint: "butt", Gap: Some(2)},
		{Metal: "galvanized", Thickness: Some(1), Joint: "butt", Gap: Some(1)},
	}
	for _, job := range deep.Of(t, jobs, 1) {
		job.Mode = "timed"
		g, err := bestTimed(effort.New(t.Context()), job)
		if err != nil {
			t.Fatal(err)
		}
		figures := [...]tables.Datum{tables.GapOnMin, tables.GapOnMax, tables.GapOff}
		checked := figures[:]
		if !deep.Run() {
			// How on changes is seen on larger cells too; off, by which the puddle freezes, asks for the usual ones.
			g.in.Cell, checked = 1, figures[:2]
		}
		times := func(r *thinsheet.Rhythm) thinsheet.Times {
			var run thinsheet.Run
			err := run.Begin(r, nil)
			if err == nil && len(checked) > 2 {
				err = run.Settle()
			}
			if err != nil {
				t.Fatal(err)
			}
			return run.Times
		}
		base := times(&g.in)
		var low, high [3]float64 // squares of the logarithms
		for _, c := range []struct {
			name  string
			alter func(r *thinsheet.Rhythm, up bool)
		}{
			{"eta", func(r *thinsheet.Rhythm, up bool) { r.Power *= pick(up, .89/.84, .79/.84) }},
			{"sigma", func(r *thinsheet.Rhythm, up bool) {
				f := pick(up, 2/1.8, 1.6/1.8)
				r.Sigma *= f
				for i := range r.Arms {
					r.Arms[i].Sigma *= f
				}
			}},
			{"stir", func(r *thinsheet.Rhythm, up bool) { r.Stir = pick(up, 4, 1) }},
			{"k", func(r *thinsheet.Rhythm, up bool) {
				for i := range r.Arms {
					k := append([]float64(nil), r.Arms[i].Base.K...)
					for j := range k {
						k[j] *= pick(up, 1.08, 1/1.08)
					}
					r.Arms[i].Base.K = k
				}
			}},
			{"solidus", func(r *thinsheet.Rhythm, up bool) {
				r.MeltDepth += pick(up, .4, -.4)
			}},
		} {
			for _, up := range []bool{false, true} {
				r := g.in
				r.Arms = append([]thinsheet.Arm(nil), r.Arms...)
				c.alter(&r, up)
				x := times(&r)
				changes := [...]float64{math.Log(x.OnMin / base.OnMin), math.Log(x.OnMax / base.OnMax),
					math.Log(x.OnOff.Off / base.OnOff.Off)}
				for i, d := range changes[:len(checked)] {
					low[i] += min(d, 0) * min(d, 0)
					high[i] += max(d, 0) * max(d, 0)
				}
			}
		}
		for i, d := range checked {
			t.Logf("%s %d: %.2f %.2f", job.Metal, i, math.Exp(-math.Sqrt(low[i])), math.Exp(math.Sqrt(high[i])))
			if l, h := math.Exp(-math.Sqrt(low[i])), math.Exp(math.Sqrt(high[i])); l < d.Low || h > d.High || h < 1.1 {
				t.Errorf("%s, figure %d: %.2f to %.2f, the table says %.2f to %.2f", job.Metal, i, l, h, d.Low, d.High)
			}
		}
	}
}

func pick(up bool, a, b float64) float64 {
	if up {
		return a
	}
	return b
}
