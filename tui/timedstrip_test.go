package tui

import (
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
	"brazebooth/tui/canvas"
)

// The strip of a timed arc that is hot, cold or without a rhythm says why and what to do, and not only that a steady
// bead's section says nothing of spots.
func TestTimedStripSaysWhy(t *testing.T) {
	deep.Turn(t)
	on := func(seconds float64) calc.Job {
		j := gapped
		j.ArcOn, j.Feed = calc.Some(seconds), calc.Some(5)
		return j
	}
	copper, thick := gapped, gapped
	copper.Metal, copper.Gauge, copper.Thickness = "copper", 0, calc.Some(1)
	thick.Gauge, thick.Thickness = 0, calc.Some(3.5)
	for _, x := range []struct {
		job        calc.Job
		state      canvas.State
		code       string
		says, hint string
	}{
		{on(0.9), canvas.Hot, "timed-on-long", "melts the base metal", "Shorter"},
		{on(0.1), canvas.Cold, "timed-on-short", "does not wet", "Longer"},
		{copper, canvas.NotJudged, "timed-falls", "does not stay in the joint", "Try a closer gap"},
		{thick, canvas.NotJudged, "timed-too-thick", "three dimensions", "Try an arc"},
	} {
		s := openAt(t, 80, 24, Options{Opening: x.job})
		s.press("t", "esc")
		c := &s.root().session.card
		is := stripOf(c)
		if is.State != x.state || stripCode(c) != x.code || !strings.Contains(is.Reason, x.says) ||
			!strings.HasPrefix(is.Do, x.hint) || is.Brief != timedBrief[x.code] {
			t.Errorf("%s: %+v", stripCode(c), is)
		}
		s.has(strings.Fields(x.says)[0])
		if rest := len(warningText(c, x.code)) - len(is.Reason) - len(is.Do); rest > 25 && s.root().lampSays() != "" {
			t.Errorf("%s: %d letters of %q are nowhere", x.code, rest, warningText(c, x.code))
		}
	}
	for code, brief := range timedBrief {
		if width(brief) > 20 {
			t.Errorf("%s: %q has no room on a phone", code, brief)
		}
	}
}

// Times of a cycle that does not repeat are called a start only, and not a rhythm that keeps the sheet.
func TestTimedStripOfAnUnsettledCycle(t *testing.T) {
	deep.Turn(t)
	s := openAt(t, 80, 24, Options{Opening: calc.Job{Metal: "ductile-iron", Thickness: calc.Some(2), Joint: "tee",
		Mode: "timed"}})
	s.press("t", "esc")
	is := stripOf(&s.root().session.card)
	if is.Brief != "a start only" || is.Reason != "these times are a start only" {
		t.Errorf("%+v", is)
	}
	s.has("start only")
}
