package calc

import (
	"math"
	"math/rand/v2"
	"testing"

	"brazebooth/calc/learned"
	"brazebooth/internal/deep"
	"brazebooth/internal/mistake"
)

// At every feed within the readings the card says where the dial stands, rising with the feed, with a band about it;
// beyond them it says why not. The other figures of the card stay the same.
func TestDialsOnTheCard(t *testing.T) {
	var list, volts []learned.DialReading
	r := rand.New(rand.NewPCG(23, 1))
	for i := range 6 {
		list = append(list, learned.DialReading{At: 2 + float64(i), Gives: 3 + float64(i) + 0.05*r.NormFloat64()})
		volts = append(volts, learned.DialReading{At: float64(i), Gives: 12 + 1.5*float64(i)})
	}
	feed, _, err := learned.FitDial(list)
	if err != nil {
		t.Fatal(err)
	}
	trim, _, err := learned.FitDial(volts)
	if err != nil {
		t.Fatal(err)
	}
	last := 0.0
	every := 0.25
	if !deep.Run() {
		every = 0.5 + deep.Rand(t).Float64()
	}
	for f := 2.0; f < 10; f += every {
		j := Job{Metal: "mild-steel", Gauge: 18, Feed: Some(f), Volts: Some(15), Travel: Some(8)}
		plain := card(t, j)
		j.FeedDial, j.VoltsDial = feed, trim
		with := card(t, j)
		g, ok := with.Figure("feed_dial")
		inside := f >= feed.Y+feed.Slope*(feed.Least-feed.X) && f <= feed.Y+feed.Slope*(feed.Most-feed.X)
		if ok != inside || ok == with.Warned("dial") {
			t.Errorf("%g m/min: shown %v, inside %v, said %v", f, ok, inside, with.Warned("dial"))
		}
		if ok && !(g.Value > last && g.Low < g.Value && g.Value < g.High) {
			t.Errorf("%g m/min: dial %g, %g to %g after %g", f, g.Value, g.Low, g.High, last)
		}
		if ok {
			last = g.Value
		}
		if v, ok := with.Figure("volts_dial"); !ok || math.Abs(v.Value-2) > 1e-9 {
			t.Errorf("15 V stands at %g", v.Value)
		}
		for _, p := range plain.Figures {
			if w, _ := with.Figure(p.Name); w.Value != p.Value || w.Low != p.Low || w.High != p.High {
				t.Errorf("%s is %g beside dials and was %g", p.Name, w.Value, p.Value)
			}
		}
		j.Mode = "pulsed"
		if c := card(t, j); c.Used.VoltsDial.Known() || !c.Used.FeedDial.Known() {
			t.Error("volts of a dip arc stand for a pulsed one")
		}
	}
	j := Job{FeedDial: feed}
	j.FeedDial.Sigma = -1
	if _, err := Solve(j); mistake.Of(err) == nil {
		t.Error("a line with a deviation below nothing is taken")
	}
}
