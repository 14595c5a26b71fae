package docs

import (
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"brazebooth/internal/deep"
	"brazebooth/tui"
)

// stage is one step of the recorded walk: what the user wants, the words on the screen that name the keys, the keys,
// and what the screen shows then.
type stage struct {
	after string
	told  []string
	keys  string
	shows string // "" if the screen is not printed
}

// wayToPractice is the whole way of a user who has never seen the program.
var wayToPractice = []stage{
	{"The first start shows a walk over the screens, one key a step.", nil, "", "1 of"},
	{"The walk continues, as far as the card.", []string{"enter next"}, "enter enter", "first a bead on scrap"},
	{"Esc leaves the walk. The screens wait at their first question.", []string{"esc leave"}, "esc", ""},
	{"The sheet is galvanized; that row is already picked.", []string{"enter choose", "▸  2 galvanized"}, "enter", ""},
	{"It is 20 gauge. The size is typed; the card beside it follows.", []string{"type it, or pick"},
		"2 0", "galvanized   20 ga"},
	{"Wire and mode stay as assumed.", []string{"enter choose"}, "enter enter enter", "galvanized   20 ga"},
	{"Why this wire feed?", []string{"enter why", "wire feed"}, "enter", "The edges, nearest first"},
	{"Back. With a keypad and NumLock on, a point goes to the next dial, and the bottom line says which keys " +
		"may follow.",
		[]string{"esc back"}, "esc .", "enter type it  . next dial"},
	{"The choices that are not on the card are in one list.", []string{"0 rest"}, "0", "the rest"},
	{"Back, and to the pages: practice is one of them.", []string{"esc back"}, "esc", ""},
	{"F1 tells which key leads there.", []string{"f1 help"}, "f1 down down", "p f4"},
	{"", []string{"p f4", "the pages"}, "esc p", ""},
	{"", []string{"←→ pages"}, "left left left left left", "[practice]"},
	{"Level 5 has timed arcs over an open root; its booth 2 is one.", []string{"a timed arc over an open root",
		"− + another"}, "5 +", ""},
	{"", []string{"enter opens the job: patch in a planter side, timed arc"}, "enter", "as the last welder left it"},
	{"A rolled edge, the bead sits on top: what does arc on do to it? The glossary knows the setting under the cursor.",
		[]string{"←→ pick"}, "right right", ""},
	{"", []string{"g words"}, "g", "How long a timed arc burns"},
	{"So it is too short. One step longer, and the next bead.", []string{"esc back"}, "esc", ""},
	{"", []string{"↑↓ change", "enter lays bead 2"}, "up enter", "bead 2:"},
	{"Better, but still rolled. One step longer.", []string{"enter lays bead 3"}, "up enter",
		"good: both toes washed in"},
	{"What did the booth hide?", []string{"* why"}, "*", "what this booth hid"},
}

// docs/walk.md is the way from an empty terminal to a card for one's own sheet, the reason for its wire feed, and a
// practised job with a timed arc, as the program shows it. The screens alone must suffice: the words that name the keys
// of a stage must be on the screen before it. After an intended change: go test ./docs -run Walk -update, and read it.
func TestWalkIsRecorded(t *testing.T) {
	if testing.Short() {
		t.Skip("computes a timed arc's beads")
	}
	h := newHand(tui.Options{Walk: true})
	var b strings.Builder
	b.WriteString("# A first sitting\n\nFrom an empty terminal to a card for your own sheet, the reason for its wire " +
		"feed, and one practised job with a timed arc.\nEach frame is from the running program; `go test ./docs -run " +
		"Walk -update` writes this file.\n\n```\n$ brazebooth\n```\n")
	way, whole := wayToPractice, deep.Run() || *update
	if !whole { // only up to the timed arc, each bead of which takes seconds
		way = way[:slices.IndexFunc(way, func(s stage) bool { return strings.HasPrefix(s.after, "Level 5") })]
	}
	for _, s := range way {
		for _, words := range s.told {
			if !strings.Contains(h.text(), words) {
				t.Errorf("before %q the screen does not say %q:\n%s", s.keys, words, h.text())
			}
		}
		for _, name := range strings.Fields(s.keys) {
			h.press(t, name)
		}
		record(t, &b, &s, h.text())
	}
	if recorded := read(t, "walk.md"); whole {
		compare(t, "walk.md", b.String())
	} else if !strings.HasPrefix(recorded, b.String()) {
		t.Errorf("walk.md does not begin with what the program shows now; after an intended change: go test "+
			"./docs -run Walk -update\n%s", b.String())
	}
}

// record writes a stage to the document.
func record(t *testing.T, b *strings.Builder, s *stage, screen string) {
	t.Helper()
	if s.after != "" {
		fmt.Fprintf(b, "\n%s\n", s.after)
	}
	if s.keys != "" {
		fmt.Fprintf(b, "\nKeys: `%s`\n", s.keys)
	}
	if s.shows == "" {
		return
	}
	if !strings.Contains(screen, s.shows) {
		t.Errorf("after %q the screen does not show %q:\n%s", s.keys, s.shows, screen)
	}
	b.WriteString("\n```\n")
	for _, l := range strings.Split(screen, "\n") {
		b.WriteString(strings.TrimRight(l, " ") + "\n")
	}
	b.WriteString("```\n")
}

// compare compares a file of the project with what it must be, or writes it with -update.
func compare(t *testing.T, file, want string) {
	t.Helper()
	if *update {
		if err := os.WriteFile(file, []byte(want), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	got, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if string(got) != want {
		t.Errorf("%s is not what the program shows now; after an intended change: go test ./docs "+
			"-run '%s' -update\n%s", file, t.Name(), want)
	}
}
