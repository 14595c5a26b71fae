package calc

import (
	"math"
	"testing"

	"brazebooth/internal/deep"
	"brazebooth/tables"
)

// A booth whose hidden stirring, spread and power are put into the plane's own heat, not into slopes: after three seams
// of spots the card's bands hold the booth's own ends.
func TestTrialsHoldThePlane(t *testing.T) {
	if testing.Short() {
		t.Skip("long under the race detector")
	}
	r := deep.Rand(t)
	job := Job{Metal: "mild-steel", Thickness: Some(1.2), Joint: "butt", Gap: Some(1.5), Mode: "timed", Feed: Some(5)}
	seen := TimedTrial{Job: job}
	seen.Job.ArcOn, seen.Job.SpotStep = Some(0.25), Some(3)
	e, ok := seen.Ends(t.Context())
	if !ok {
		t.Fatal("no times are computed")
	}
	held, asked := 0, 0
	for range deep.Many(1, 20) {
		truth := seen.Job
		truth.Rhythm = Rhythm{Stir: tables.Stirring.V * math.Exp(r.NormFloat64()*tables.StirringSigma.V),
			Spread: tables.ArcWidth.V * math.Exp(0.05*r.NormFloat64()),
			Power:  math.Exp(e.Power / 2 * r.NormFloat64()), Trials: 1,
			For: LearnedKey("cusi3", 0.889, "timed")}
		g := wholeRun(t, truth)
		x := &g.times
		if g.card.Used.Rhythm != truth.Rhythm || !(x.OffMax > 0) {
			t.Fatalf("the hidden booth is not computed: %+v, %q", g.card.Used.Rhythm, x.Reason)
		}
		h := &hidden{[4]float64{x.OnMin, x.OnMax, x.OffMin, x.OffMax}, r}
		learned := learnRhythm(h.tries(&e, 3), truth.Rhythm.For)
		for i, v := range [...]float64{e.OnMin, e.OnMax, e.OffMin, e.OffMax} {
			asked++
			if math.Abs(math.Log(h.ends[i]/learned.moved(v, i))) <= 2*learned.doubt(i) {
				held++
			}
		}
	}
	if asked > 4 && float64(held) < 0.95*float64(asked) || asked == 4 && held < 3 {
		t.Errorf("%d of %d ends lie within their bands", held, asked)
	}
}
