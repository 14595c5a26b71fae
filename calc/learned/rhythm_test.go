package learned_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"brazebooth/calc"
	"brazebooth/calc/learned"
	"brazebooth/internal/deep"
	"brazebooth/tables"
)

// hidden is a booth with its own stirring, spread and power.
type hidden struct {
	ends [4]float64 // s
	r    *rand.Rand
}

// newHidden draws a booth about the computed ends: stirring, spread and power by their priors, each slope within its
// band, and the part that they do not explain.
func newHidden(r *rand.Rand, e *learned.Ends) *hidden {
	h := &hidden{r: r}
	at := [3]float64{r.NormFloat64() * tables.StirringSigma.V,
		r.NormFloat64() * math.Log(tables.ArcWidth.High/tables.ArcWidth.Low) / 4, r.NormFloat64() * e.Power}
	for i, v := range [...]float64{e.OnMin, e.OnMax, e.OffMin, e.OffMax} {
		x := math.Log(v) + r.NormFloat64()*tables.RhythmDoubt.V/2
		for k, d := range [...]tables.Datum{tables.SlopesOfStirring[i], tables.SlopesOfSpread[i],
			tables.SlopesOfPower[i]} {
			slope := d.V + 0.5*r.NormFloat64()*(d.High-d.Low)/4
			x += slope * at[k]
		}
		h.ends[i] = math.Exp(x)
	}
	return h
}

// looks is what a seam shows; one in twelve is judged wrongly.
func (h *hidden) looks(on, off float64) string {
	seen := "good"
	switch {
	case on < h.ends[0]:
		seen = "rolled-edge"
	case on > h.ends[1]:
		seen = "edges-melted"
	case off < h.ends[2]:
		seen = "drops-through"
	case off > h.ends[3]:
		seen = "spots-apart"
	}
	if h.r.IntN(12) == 0 {
		seen = []string{"good", "rolled-edge", "edges-melted"}[h.r.IntN(3)]
	}
	return seen
}

// tries are a welder's: the times of the card first, then by what was seen, and from a good seam a little to either
// side.
func (h *hidden) tries(e *learned.Ends, n int) []learned.SpotTrial {
	on, off := math.Sqrt(e.OnMin*e.OnMax), math.Sqrt(e.OffMin*e.OffMax)
	var list []learned.SpotTrial
	for i := range n {
		seen := h.looks(on, off)
		list = append(list, learned.SpotTrial{Ends: *e, On: on, Off: off, Seen: seen})
		switch seen {
		case "rolled-edge":
			on *= 1.25
		case "edges-melted":
			on /= 1.25
		case "drops-through":
			off *= 1.25
		case "spots-apart":
			off /= 1.25
		default:
			on *= []float64{1.12, 1 / 1.2}[i%2]
		}
	}
	return list
}

var usualEnds = learned.Ends{OnMin: 0.155, OnMax: 0.259, OffMin: 0.193, OffMax: 0.392, Power: 0.1}

// Simulated booths with hidden stirring, spread and power: the ends that trials leave hold the booth's own in 95 of
// 100, and after three trials their bands are half as wide as before.
func TestTrialsHoldHiddenBooths(t *testing.T) {
	deep.Turn(t)
	r := deep.Rand(t)
	booths := deep.Many(60, 1000)
	for _, n := range []int{1, 2, 3, 6} {
		held, asked := 0, 0
		after, before := 0.0, 0.0
		for range booths {
			h := newHidden(r, &usualEnds)
			taught := learned.RhythmOf(h.tries(&usualEnds, n), "key")
			for i, v := range [...]float64{usualEnds.OnMin, usualEnds.OnMax, usualEnds.OffMin, usualEnds.OffMax} {
				asked++
				if math.Abs(math.Log(h.ends[i]/moved(&taught, v, i))) <= 2*taught.Doubt(i) {
					held++
				}
			}
			for i := range 2 { // the range of on
				after += 4 * taught.Doubt(i)
			}
			before += untaughtWidth(&usualEnds)
		}
		cover, width := 100*float64(held)/float64(asked), after/before
		t.Logf("%d trials: %.1f %% held, %.2f of the width before", n, cover, width)
		if cover < 95 {
			t.Errorf("after %d trials %.1f %% of the ends lie within their bands", n, cover)
		}
		if n >= 3 && width > 0.5 {
			t.Errorf("after %d trials the ends' bands are %.2f times as wide as before", n, width)
		}
	}
}

// moved is an end with the three as learned.
func moved(r *learned.Rhythm, v float64, end int) float64 {
	return v * math.Exp(tables.SlopesOfStirring[end].V*math.Log(r.Stir/tables.Stirring.V)+
		tables.SlopesOfSpread[end].V*math.Log(r.Spread/tables.ArcWidth.V)+
		tables.SlopesOfPower[end].V*math.Log(r.Power))
}

// untaughtWidth is how wide the bands of both ends of on are on a card without trials, as logarithms.
func untaughtWidth(e *learned.Ends) float64 {
	width := 0.0
	for _, c := range [...][2]tables.Datum{{tables.GapOnMin, tables.GapOnMinPower}, {tables.GapOnMax,
		tables.GapOnMaxPower}} {
		power := 2 * e.Power * c[1].V
		width += math.Hypot(math.Log(c[0].High), power) + math.Hypot(math.Log(c[0].Low), power)
	}
	return width
}

// A booth whose hidden stirring, spread and power are put into the plane's own heat, not into slopes: after three seams
// of spots the card's bands hold the booth's own ends.
func TestTrialsHoldThePlane(t *testing.T) {
	deep.Turn(t)
	if testing.Short() {
		t.Skip("long under the race detector")
	}
	r := deep.Rand(t)
	job := calc.Job{Metal: "mild-steel", Thickness: calc.Some(1.2), Joint: "butt", Gap: calc.Some(1.5), Mode: "timed",
		Feed: calc.Some(5)}
	seen := calc.TimedTrial{Job: job}
	seen.Job.ArcOn, seen.Job.SpotStep = calc.Some(0.25), calc.Some(3)
	e, ok := seen.Ends(t.Context())
	if !ok {
		t.Fatal("no times are computed")
	}
	held, asked := 0, 0
	for range deep.Many(1, 20) {
		truth := seen.Job
		truth.Rhythm = learned.Rhythm{Stir: tables.Stirring.V * math.Exp(r.NormFloat64()*tables.StirringSigma.V),
			Spread: tables.ArcWidth.V * math.Exp(0.05*r.NormFloat64()),
			Power:  math.Exp(e.Power / 2 * r.NormFloat64()), Trials: 1,
			For: calc.LearnedKey("cusi3", 0.889, "timed")}
		x, err := calc.TimedEndsOf(t.Context(), truth)
		used, err2 := calc.Complete(truth)
		if err != nil || err2 != nil || used.Rhythm != truth.Rhythm || !(x.OffMax > 0) {
			t.Fatalf("the hidden booth is not computed: %+v, %+v, %v, %v", used.Rhythm, x, err, err2)
		}
		h := &hidden{[4]float64{x.OnMin, x.OnMax, x.OffMin, x.OffMax}, r}
		taught := learned.RhythmOf(h.tries(&e, 3), truth.Rhythm.For)
		for i, v := range [...]float64{e.OnMin, e.OnMax, e.OffMin, e.OffMax} {
			asked++
			if math.Abs(math.Log(h.ends[i]/moved(&taught, v, i))) <= 2*taught.Doubt(i) {
				held++
			}
		}
	}
	if asked > 4 && float64(held) < 0.95*float64(asked) || asked == 4 && held < 3 {
		t.Errorf("%d of %d ends lie within their bands", held, asked)
	}
}
