package linear

import (
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"brazebooth/calc"
)

// A described test bead is saved once, judged by what it shows, or as acceptable.
func TestKeepBead(t *testing.T) {
	s := &shelf{}
	got, _ := talkOf(t, Options{Book: s}, "steel", "18", "", "dip", "feed 5.5", "travel 10", "keep-bead",
		"power-source booth 1",
		"correct", "1", "yes", "keep-bead", "keep-bead", "correct", "pores", "no", "keep-bead pretty",
		"keep-bead acceptable")
	if want := []string{"rolled-edge  booth 1", "pores acceptable booth 1"}; !slices.Equal(s.beads, want) {
		t.Errorf("kept %q, want %q in\n%s", s.beads, want, got)
	}
	for _, want := range []string{"No test bead was told of yet.", "Kept: a test bead, bad.",
		"This bead is kept already.", "keep-bead keeps this test bead", "keep-bead acceptable."} {
		if !strings.Contains(strings.Join(strings.Fields(got), " "), want) {
			t.Errorf("%q was not said in\n%s", want, got)
		}
	}
	if got, _ := talkOf(t, Options{}, "steel", "18", "", "dip", "keep-bead"); !strings.Contains(got,
		"There is no book here.") {
		t.Error("kept nowhere")
	}
}

// A dial reading is saved with its power source. Text that is no reading is refused with what to type.
func TestKeepDial(t *testing.T) {
	s := &shelf{}
	got, _ := talkOf(t, Options{Book: s}, "steel", "18", "", "dip", "dial feed 4.2 5.1", "power-source booth 1",
		"dial feed 4.2 5.1 metres per minute", "dial volts -1,5 15.1", "dial feed 250ipm", "dial gas 3 12",
		"dial feed x 5",
		"dial feed 4 fast", "dial")
	want := []calc.Reading{{Feed: 5.1, FeedDial: calc.Some(4.2)}, {Volts: 15.1, VoltsDial: calc.Some(-1.5)}}
	if !slices.EqualFunc(s.read, want, func(a, b calc.Reading) bool {
		return math.Abs(a.Feed-b.Feed) < 1e-9 && a.Volts == b.Volts && a.FeedDial == b.FeedDial &&
			a.VoltsDial == b.VoltsDial
	}) {
		t.Errorf("kept %+v in\n%s", s.read, got)
	}
	for _, want := range []string{"A dial of which power source?", "Kept: reading of booth 1.",
		"This needs a dial, its position and what it gives."} {
		if !strings.Contains(strings.Join(strings.Fields(got), " "), want) {
			t.Errorf("%q was not said in\n%s", want, got)
		}
	}
}

// With a decimal comma, every number that is read out has it, in both systems of units, and nothing else changes.
func TestCommaIsReadOut(t *testing.T) {
	lines := []string{"galv", "18", "", "dip", "feed 5.5", "travel 10", "results", "why feed", "map", "strength",
		"units inch", "card", "results"}
	with, _ := talkOf(t, Options{Comma: true}, lines...)
	without, _ := talkOf(t, Options{}, lines...)
	if strings.ReplaceAll(with, ",", ".") != strings.ReplaceAll(without, ",", ".") {
		t.Error("more than the mark differs")
	}
	if !strings.Contains(with, "5,5 metres per minute") {
		t.Errorf("no comma in\n%s", with)
	}
	point := regexp.MustCompile(`[0-9]*\.[0-9]+`)
	for line := range strings.Lines(with) {
		typed := strings.Contains(line, ": feed") || strings.HasPrefix(line, "Source:")
		for _, found := range point.FindAllString(line, -1) {
			if !typed && found != ".035" && found != "0.035" {
				t.Errorf("%s keeps its point in %q", found, line)
			}
		}
	}
}
