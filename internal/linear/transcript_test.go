package linear

import (
	"errors"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
	"brazebooth/internal/quantity"
)

var update = flag.Bool("update", false, "rewrite the transcripts by what is said now")

// transcripts are whole talks. Typed text stands after its prompt, as on a terminal.
var transcripts = []struct {
	name  string
	o     Options
	lines []string
}{
	{"first-card", Options{}, []string{"?", "2", "? zinc", "", "20ga", "?", ".035", "?", "1", "quit"}},
	{"mistakes", Options{}, []string{"back", "unobtainium", "99", "row 99", "galv", "7ga", "banana", "3/32", "5mm",
		"0.9mm", "wobble", "card",
		"6.2", "fead 6", "feed", "fast", "7", "volts", "back", "keep", "keep lid", "open 1", "units furlong", "why",
		"why moon", "words throt", "help moon", "travel 900", "gauge 0.01mm", ""}},
	{"setting", Options{Units: quantity.Both}, []string{"example", "feed 6.35 metres per minute", "wire feed 250ipm",
		"travel = 9", "joint ?", "tee", "reset joint", "reset", "hazard tank", "correct", "hazard none", "why feed",
		"why stick-out",
		"why gun angle", "why joint", "why net heat", "again", "assumed", "cautions", "travel 9", "undo"}},
	{"timed-walk", Options{}, []string{"steel", "16ga", "", "timed", "butt", "2mm", "back", "back", "back", "dip"}},
	{"map-and-timed", Options{}, []string{"steel", "16ga", "", "dip", "joint butt", "gap 2mm", "map", "units inch",
		"map", "timed", "mode timed", "results", "map"}},
	{"pages", Options{}, []string{"galv", "20ga", "", "", "fit", "use seal", "wire-price 25EUR/kg", "filler", "prepare",
		"strength", "air", "machine", "cost", "overlay", "fit", "why fit", "strength", "why throat capacity",
		"help cost"}},
	{"correct", Options{}, []string{"steel", "18", "", "dip", "feed 5.5", "travel 10", "correct", "?", "16", "good, 1",
		"1", "maybe", "", "correct", "rolled edge, pores", "no", "correct", "", "joint tee", "correct", "back"}},
	{"book", Options{Book: &shelf{names: []string{"stove plate"},
		jobs: []calc.Job{{Metal: "grey-iron", Thickness: calc.Some(6), Joint: "butt"}}}},
		[]string{"galv", "20ga", "", "", "find", "find moon", "open stove plate", "no", "keep tank ~ lid \x1b[2J",
			"open 5", "open 1", "find tank", "open tank", "power-source booth 1", "open"}},
	{"no-book", Options{Book: &shelf{names: []string{"x"}, err: errors.New("the server is away: \x1b[31mno route")}},
		[]string{"card", "keep lid", "find", "open lid", "power-source x"}},
}

func TestTranscripts(t *testing.T) {
	if testing.Short() {
		t.Skip("compared without -short: nothing here runs side by side")
	}
	list := transcripts
	if !*update {
		list = deep.Of(t, transcripts, 6)
	}
	for _, x := range list {
		got, d := talkOf(t, x.o, x.lines...)
		if d.prompts != len(d.before) {
			t.Errorf("%s: %d waits and %d prompts", x.name, len(d.before), d.prompts)
		}
		for line := range strings.Lines(got) {
			if r := odd(strings.ReplaceAll(line, "\x1b", "")); r >= 0 || strings.ContainsAny(line, "|^▸–×°") {
				t.Errorf("%s: a sign in %q", x.name, line)
			}
		}
		file := filepath.Join("testdata", x.name+".txt")
		if *update {
			if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if got != string(want) {
			t.Errorf("%s differs from the recorded talk; look at it, then go test ./internal/linear -update. "+
				"The first difference:\n%s", x.name, differs(got, string(want)))
		}
	}
}

// differs is the first line that differs.
func differs(got, want string) string {
	a, b := strings.Split(got, "\n"), strings.Split(want, "\n")
	for i := range a {
		if i >= len(b) || a[i] != b[i] {
			return a[i]
		}
	}
	return "its end"
}
