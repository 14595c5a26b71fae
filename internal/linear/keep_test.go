package linear

import (
	"regexp"
	"slices"
	"strings"
	"testing"
)

// A test bead that was told of is kept once, as what it looks or as acceptable.
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

// With a decimal comma every number that is read out has it, in both systems of units; more than the mark does not
// change.
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
