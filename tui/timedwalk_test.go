package tui

import (
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
)

// A timed arc's times depend on the joint and its root opening, so both are asked for on the way to its card.
func TestTimedAsksForJointAndGap(t *testing.T) {
	s := openAt(t, 80, 24, Options{Gap: unfollowed})
	s.press("enter", "enter", "enter")
	s.typed("timed")
	s.press("enter")
	s.has("Which joint?", "times depend on joint and gap")
	s.typed("butt")
	s.press("enter")
	s.has("How wide is the root opening?")
	s.typed("2mm")
	s.press("enter")
	s.onCard()
	s.has("gap 2 mm")
	if j := s.root().job; j.Joint != "butt" || j.Gap != calc.Some(2) || j.Mode != "timed" {
		t.Errorf("the job is %+v", j)
	}
	s.press("esc")
	s.typed("timed")
	s.press("enter")
	s.onCard() // both are known
}

// Without a gap, the card and the page of the beat say beside the times that they are for a closed joint.
func TestTimedSaysThatItIsForAClosedJoint(t *testing.T) {
	deep.Turn(t)
	for _, size := range deep.Of(t, [][2]int{{40, 24}, {60, 20}, {80, 24}, {120, 40}}, 2) {
		s := openAt(t, size[0], size[1], Options{Opening: calc.Job{Metal: "galvanized", Gauge: 20, Mode: "timed"}})
		s.has("no gap")
		s.press("t")
		s.has("These times are for a closed")
		s.fits(size[0], size[1])
	}
}

// At 80x24 there is room for the heat below the remarks on a closed joint, both from a timed card and from one in
// another mode, which has a remark on its feed too.
func TestHeatOfAClosedJointIsShown(t *testing.T) {
	for _, mode := range []string{"timed", "dip"} {
		s := openAt(t, 80, 24, Options{Opening: calc.Job{Metal: "galvanized", Gauge: 20, Mode: mode}})
		s.press("t")
		s.has("base melts", "filler flows", "filler is solid")
		s.fits(80, 24)
	}
}

// A user who leaves the question gets the card, which says what it assumes.
func TestTimedQuestionsCanBeLeft(t *testing.T) {
	s := open80(t)
	s.press("enter", "enter", "enter")
	s.typed("timed")
	s.press("enter", "esc")
	s.onCard()
	s.has("▲ These times are for a closed joint")
}
