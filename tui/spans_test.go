package tui

import (
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
	"brazebooth/tui/canvas"
)

// The good span of feed and travel is shown below the dial, whether both, one or none of them was typed. If the typed
// value is not good, the span shows where to go.
func TestGoodSpanUnderTheDials(t *testing.T) {
	for _, x := range []struct {
		feed, travel float64
		outside      bool
	}{{0, 0, false}, {4, 0, false}, {0, 6, false}, {4.3, 7, false}, {5, 4.5, true}} {
		job := calc.Job{Metal: "galvanized", Gauge: 20}
		if x.feed > 0 {
			job.Feed = calc.Some(x.feed)
		}
		if x.travel > 0 {
			job.Travel = calc.Some(x.travel)
		}
		s := openAt(t, 80, 24, Options{Opening: job})
		s.press("tab") // the spans are computed after a key
		m := s.root()
		for _, d := range m.card.dials(m) {
			if d.Name != "wire feed" && d.Name != "travel" {
				continue
			}
			in := d.Bar.Span[0] <= d.Bar.Value && d.Bar.Value <= d.Bar.Span[1]
			if d.Bar.Kind != canvas.GoodSpan || d.Span == "" || in == x.outside || d.Bar.Low > d.Bar.Span[0] ||
				d.Bar.High < d.Bar.Span[1] {
				t.Errorf("feed %g, travel %g: under %s stands %q, %+v", x.feed, x.travel, d.Name, d.Span, d.Bar)
			}
		}
		if x.outside {
			s.has("yours")
		}
	}
}

// A change of a dial on the example's card keeps the choices that the card shows; only a choice drops them.
func TestDialsKeepTheExamplesChoices(t *testing.T) {
	changes := [][]string{{"up"}, {"right", "down"}, {"9", "enter"}, {"m", "right"}, {"t", "up"}}
	for _, keys := range deep.Of(t, changes, 1) {
		s := openAt(t, 80, 24, Options{})
		s.press("tab", "tab", "tab", "tab")
		s.press(keys...)
		j, was := s.root().job, ExampleJob()
		if j == was {
			t.Fatalf("%v changed nothing", keys)
		}
		j.Feed, j.Volts, j.Travel, j.ArcOn, j.Mode = was.Feed, was.Volts, was.Travel, was.ArcOn, was.Mode
		if j != was {
			t.Errorf("after %v the job is %+v", keys, j)
		}
	}
}
