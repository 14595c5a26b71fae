package linear

import (
	"context"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// vocabulary is text that a user may type, right or wrong. Text that takes long to answer comes rarely.
func vocabulary() *rapid.Generator[string] {
	known := []string{"", "?", "more", "back", "card", "again", "help", "units", "words", "words throat", "new",
		"example", "results", "cautions",
		"assumed", "why feed", "why current", "why gap", "fit", "filler", "prepare", "overlay", "machine",
		"strength", "air", "cost", "1", "2", "18", "row 3",
		"galv", "steel", "304", "16ga", "3/32", ".035", "0.9mm", "dip", "pulsed", "lap", "feed 6.2", "feed",
		"travel 8", "travel 0", "volts banana", "joint tee", "joint", "joint ?",
		"gauge 7", "gauge2 1mm", "hazard tank", "hazard none", "reset", "undo", "reset feed", "keep lid", "keep",
		"find lid", "find", "open 1", "open", "power-source x", "dial feed 4 5", "dial",
		"yes", "no", "1,6", "good", "good,1", "correct", "map", "timed", "mode timed", "? zinc", "? qqq",
		"feed = 7", "wire feed 5", "6 metres per minute", "wire-price 25EUR/kg", "length 2m", "units both",
		"help feed", "help fit"}
	return rapid.OneOf(rapid.SampledFrom(known), rapid.SampledFrom(known), rapid.SampledFrom(known),
		rapid.StringN(0, 30, 120), rapid.Custom(func(r *rapid.T) string {
			return rapid.SampledFrom(known).Draw(r, "word") + " " + rapid.StringN(0, 12, 40).Draw(r, "rest")
		}))
}

// Whatever is typed: no panic, a prompt before every line or an end, and nothing but letters, printable ASCII and line
// breaks.
func TestAnythingTyped(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		lines := rapid.SliceOfN(vocabulary(), 0, 12).Draw(r, "lines")
		for i := range lines {
			lines[i] = strings.NewReplacer("\n", "", "\r", "").Replace(lines[i])
		}
		d := &desk{lines: lines}
		quiet := &echoless{desk: d}
		if err := Run(context.Background(), Options{Book: &shelf{}}, quiet, d); err != nil {
			r.Fatal(err)
		}
		said := d.String()
		if o := odd(said); o >= 0 {
			r.Fatalf("%q is said in %q", o, said)
		}
		if !strings.HasSuffix(said, "Goodbye.\n") {
			r.Fatalf("no end: %.200q", said[max(0, len(said)-200):])
		}
		for i, b := range d.before {
			if !strings.HasSuffix(b, ": ") {
				r.Fatalf("line %d is waited for after %q", i, b)
			}
		}
	})
}

// echoless is a desk that keeps typed lines out of the transcript.
type echoless struct {
	desk *desk
}

func (e *echoless) Read(p []byte) (int, error) {
	n, err := e.desk.Read(p)
	if n > 0 {
		e.desk.Truncate(e.desk.Len() - n)
	}
	return n, err
}
