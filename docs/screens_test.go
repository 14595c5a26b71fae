package docs

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/colorprofile"

	"brazebooth/internal/book"
	"brazebooth/internal/deep"
	"brazebooth/internal/shop"
	"brazebooth/tui"
	"brazebooth/tui/canvas"
)

// screen is a screen of docs/screens.md: its name, what it tells, and how it is reached from the first screen. file is
// the name of its picture.
type screen struct {
	file, title, tells string
	keys               string
	shows              string // words that it must show
	walk               bool   // at the first start, with the walk
	dear               bool   // a timed arc is computed for it
}

const (
	toCard = "enter enter enter enter"
	toRoot = toCard + " . 5 + . 6 2 enter" // a butt with an open root of 2 mm
)

// screens are in the order in which a job meets them.
var screens = []screen{
	{"screen-walk", "The first walk", "The first start shows the screens, one key a step.", "enter enter",
		"first walk", true, false},
	{"screen-question", "A question with its answers", "Typing finds a row or gives a size. The card beside it is " +
		"the one with this answer.", "enter", "Which gauge or thickness", false, false},
	{"screen-card", "The card", "At the top the verdict, its chance and the closest edge. Below, what was chosen, " +
		"then the three settings to dial with their good spans. What was assumed is grey and has a ~.", toCard,
		"wire feed", false, false},
	{"screen-chip", "A choice changed in place", "A point and its number, or tab, lead to a choice; + and − go " +
		"through its answers.", toCard + " . 5", "lap", false, false},
	{"screen-rest", "The rest", "Choices that seldom change, in one list.", toCard + " . 0", "the rest", false, false},
	{"screen-why", "Why this figure", "Its inputs, the edges as bars, the formula with its numbers, and " +
		"their sources.", toCard + " enter", "wire feed", false, false},
	{"screen-cautions", "All cautions", "This job's own first.", toCard + " c", "fume", false, false},
	{"screen-section", "The cross-section", "The bead to scale, and each edge with its margin.",
		toCard + " x", "wets", false, false},
	{"screen-map", "The map", "What every wire feed and travel would do; the arrows move on it.",
		toCard + " m right right", "wire feed", false, false},
	{"screen-timed", "Arc on and arc off", "Over an open root the arc goes on and off. The spot's temperature in one " +
		"cycle, between its limits; space plays the beat.", toRoot + " t", "arc on", false, true},
	{"screen-booth", "The booth view", "The figures to dial, read from two metres; arrows change them.", toCard + " b",
		"GAS L/min", false, false},
	{"screen-pages", "A page: does arc brazing fit?",
		"Every page is opened from the card; the first letters of its name lead to it.", toCard + " p", "arc brazing:",
		false,
		false},
	{"screen-strength", "A page: strength", "What load a seam may carry, and when no load is given.",
		toCard + " p s t", "strength", false, false},
	{"screen-sights", "What does the test bead show?", "What a bead may look like, drawn.", toCard + " p c enter",
		"bead", false, false},
	{"screen-correct", "The one change", "What to change by how much, and why.", toCard + " p c enter enter enter",
		"bead", false, false},
	{"screen-measure", "Meter readings", "What the meters showed; each field says how it was read.",
		toCard + " p m m", "measure", false, false},
	{"screen-practice", "Practice", "A simulated booth: the wanted bead and the laid bead, to the same scale.",
		"enter enter enter enter p left left left left left 5 + enter right right up enter up enter", "bead", false,
		true},
	{"screen-book", "The book", "Under a name the card is kept; letters find one.", toCard +
		" k p l a n t e r space s i d e enter", "planter side", false, false},
}

// looks are pictures of the card in other terminals.
var looks = []struct {
	file, title string
	w, h        int
	profile     colorprofile.Profile
	theme       tui.Theme
	ground      ground
}{
	{"card-32x10", "A phone, 32 columns by 10 lines", 32, 10, colorprofile.ANSI256, canvas.ThemeDark, darkGround},
	{"card-40x14", "40 by 14", 40, 14, colorprofile.ANSI256, canvas.ThemeDark, darkGround},
	{"card-60x20", "60 by 20, on a light ground", 60, 20, colorprofile.ANSI256, canvas.ThemeLight, lightGround},
	{"card-120x40", "120 by 40, in 16 colours", 120, 40, colorprofile.ANSI, canvas.ThemeDark, darkGround},
	{"card-plain", "80 by 24 without colour: words, signs and reversed background replace it", 80, 24,
		colorprofile.ASCII,
		canvas.ThemeNone, darkGround},
}

// tasks are the usual tasks, each from the first screen (first) or from the example's card, with the words on the
// screen when it is done. Letters of a typed name do not count as presses.
var tasks = []struct {
	task         string
	first        bool
	keys, shows  string
	presses      int
	name, beyond string
}{
	{"a card for galvanized sheet of 20 gauge", true, "enter 2 0 enter enter enter", "20 ga", 6, "", ""},
	{"a butt with an open root of 2 mm", false, ". 5 + . 6 2 enter", "butt", 7, "", ""},
	{"a second plate of 14 gauge", false, ". 9 1 4 enter", "2nd 14 ga", 5, "", ""},
	{"your own wire feed, 4.5 m/min", false, "4 . 5 enter", "yours", 4, "", ""},
	{"undo the last change", false, "+ ctrl+z", "good 4", 2, "", ""},
	{"what to change after a test bead", false, "p c enter enter", "bead", 4, "", ""},
	{"keep the card", false, "k l i d enter", "lid", 2, "l i d", " and a name"},
}

// docs/screens.md shows every screen as the program draws it, how it is reached, and how many keys the usual tasks
// need. After an intended change: BRAZEBOOTH_DEEP=1 go test ./docs -run Screens -update, and look at the pictures.
func TestScreensAreShown(t *testing.T) {
	var b strings.Builder
	b.WriteString("# The screens\n\nEach picture is drawn from the running program, in a terminal of 80 columns by " +
		"24 lines\n(`BRAZEBOOTH_DEEP=1 go test ./docs -run Screens -update` writes this file and the " +
		"pictures).\n\n## Keys for the usual tasks\n\nFrom the first screen, or from the card:\n\n| task | keys | " +
		"presses |\n|---|---|---|\n")
	for _, x := range tasks {
		fmt.Fprintf(&b, "| %s | `%s` | %d%s |\n", x.task, x.keys, x.presses, x.beyond)
	}
	for _, s := range screens {
		fmt.Fprintf(&b, "\n## %s\n\n%s Keys: `%s`\n\n![%s](%s.svg)\n", s.title, s.tells, s.keys, s.title, s.file)
	}
	b.WriteString("\n## The card in other terminals\n")
	for _, l := range looks {
		fmt.Fprintf(&b, "\n%s:\n\n![%s](%s.svg)\n", l.title, l.title, l.file)
	}
	compare(t, "screens.md", b.String())
}

// Each task takes as many keys as the document says, and does what it says.
func TestScreensTakeFewKeys(t *testing.T) {
	for _, x := range deep.Of(t, tasks, 3) {
		h := newHand(tui.Options{Book: shelf(t)})
		if !x.first {
			h.pressAll(t, toCard)
		}
		h.pressAll(t, x.keys)
		if !strings.Contains(h.text(), x.shows) {
			t.Errorf("%s: the screen does not show %q:\n%s", x.task, x.shows, h.text())
		}
		if n := len(strings.Fields(x.keys)) - len(strings.Fields(x.name)); n != x.presses {
			t.Errorf("%s: %d presses, and the document says %d", x.task, n, x.presses)
		}
	}
}

// The pictures show the screens as the program draws them now.
func TestScreensPictures(t *testing.T) {
	for _, s := range deep.Of(t, screens, 5) {
		if s.dear && !deep.Run() {
			continue
		}
		h := newHand(tui.Options{Book: shelf(t), Walk: s.walk})
		h.pressAll(t, s.keys)
		if !strings.Contains(h.text(), s.shows) {
			t.Errorf("%s does not show %q:\n%s", s.file, s.shows, h.text())
		}
		compare(t, s.file+".svg", svg(h.frame(), s.title, 80, 24, darkGround))
	}
	for _, l := range deep.Of(t, looks, 2) {
		h := handAt(tui.Options{Profile: l.profile, Theme: l.theme}, l.w, l.h)
		h.pressAll(t, toCard)
		compare(t, l.file+".svg", svg(h.frame(), l.title, l.w, l.h, l.ground))
	}
}

// shelf is an empty book.
func shelf(t testing.TB) *shop.Shop {
	return &shop.Shop{Where: t.TempDir() + "/book.db", Author: author()}
}

// author saves with a fixed clock, so that the date on a picture does not change.
func author() book.Author {
	return book.Author{Who: "shop", Where: "booth 1", Program: "0.2.0", Now: func() time.Time {
		return time.Date(2026, 3, 2, 9, 30, 0, 0, time.UTC)
	}}
}

func (h *hand) pressAll(t testing.TB, keys string) {
	t.Helper()
	for _, name := range strings.Fields(keys) {
		h.press(t, name)
	}
}
