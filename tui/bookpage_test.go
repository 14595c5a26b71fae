package tui

import (
	"context"
	"errors"
	"slices"
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
	"brazebooth/internal/deep"
)

// A card is saved under the typed name, found while typing, and opened again.
func TestBookOnTheScreens(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {60, 20}, {120, 40}, {40, 14}} {
		d := &drawer{}
		s := openBook(t, d, "book", size)
		s.has("nothing is kept yet")
		s.typed("tank lid")
		s.fits(size[0], size[1])
		s.has("keep the card as")
		s.press("enter")
		s.has("kept tank lid")
		s.press("esc", "q")
		s.has("q again quits", "the card is kept")
		s.press("up", "q")
		s.has("q again quits", "is not", "kept")
		s.press("p")
		s.typed("tan")
		s.has("tank lid")
		s.press("enter") // a setting was changed after saving
		s.has("not kept")
		s.press("enter")
		s.has("as it was kept")
		if v := s.m.(*root).session.job.Feed.V; v != 6.35 {
			t.Errorf("feed %g came back", v)
		}
	}
}

// A key opens the saved cards from the first screen on, which names that key, and from every screen over the path. In a
// field, letters are typed as usual.
func TestKeptCardsFromTheFirstScreen(t *testing.T) {
	for _, size := range deep.Of(t, [][2]int{{40, 14}, {60, 20}, {80, 24}}, 2) {
		d := &drawer{}
		s := openAt(t, size[0], size[1], Options{Book: d, Opening: calc.Job{Metal: "mild-steel", Gauge: 18}})
		s.press("k")
		s.typed("tank lid")
		s.press("down", "enter")

		s = openAt(t, size[0], size[1], Options{Book: d, Gap: unfollowed})
		s.has("f5 kept")
		s.press("f5")
		s.has("find or name:", "tank lid")
		s.press("esc")
		s.has("Which metal?")
		s.press("f5", "enter")
		s.onCard()
		s.has("as it was kept")
		if j := s.root().job; j.Metal != "mild-steel" || j.Gauge != 18 {
			t.Errorf("%v: the job is %+v", size, j)
		}
		for _, keys := range []string{"f1", "*", "m", "t", "p", "g", "tab enter", "right enter"} {
			s.press(strings.Fields(keys)...)
			s.press("f5")
			s.has("find or name:")
			s.press("esc")
			s.onCard()
		}
	}
	s := openAt(t, 80, 24, Options{})
	s.hasNot("f5")
	s.press("f5")
	s.has("Which metal?")
}

// After saving under a name that exists already, the new card is under the cursor.
func TestTheNewestIsUnderTheCursor(t *testing.T) {
	d := &drawer{}
	s := openAt(t, 80, 24, Options{Book: d, Opening: calc.Job{Metal: "galvanized", Gauge: 18}})
	s.press("k")
	for range 2 {
		s.typed("tank lid")
		s.press("down", "enter")
	}
	if len(d.cards) != 2 {
		t.Fatalf("kept %v:\n%s", d.cards, s.text())
	}
	if e := s.root().shelf.entry(); e == nil || e.ID != d.cards[0].ID {
		t.Errorf("under the cursor is %v, the newest is %v", e, d.cards[0])
	}
}

// A card that another booth has deleted leaves the list when it is opened, with the reason.
func TestDeletedAtAnotherBooth(t *testing.T) {
	for _, keys := range []string{"enter enter", "f4 enter"} { // the book asks once: the card on the screen is not kept
		d := &drawer{cards: []Entry{{"1", "card", "tank lid", "2026-03-01", "galvanized"}}}
		s := openAt(t, 80, 24, Options{Book: otherBooth{d}, Opening: calc.Job{Metal: "mild-steel", Gauge: 18}})
		s.press("k")
		s.has("tank lid")
		s.press(strings.Fields(keys)...)
		s.has("it was deleted")
		s.hasNot("tank lid")
	}
}

// q says that a kept card is kept, until a record was deleted: it may have been that card.
func TestKeptUntilDeleted(t *testing.T) {
	d := &drawer{}
	s := openBook(t, d, "book", [2]int{80, 24})
	s.typed("lid")
	s.press("enter", "esc", "q")
	s.has("the card is kept")
	s.press("k", "delete", "delete")
	s.has("deleted; ctrl+z brings it back")
	s.press("esc", "q")
	s.has("the card is not kept")
}

// If a card cannot be saved, the page says so, and the card stays.
func TestBookThatFails(t *testing.T) {
	d := &drawer{fail: errors.New("disk full")}
	s := openBook(t, d, "book", [2]int{80, 24})
	s.has("disk full")
	s.typed("x")
	s.press("enter")
	s.has("not kept", "the card stays")
	s.press("esc", "esc")
	s.onCard()
}

// A card that arrives after its page was left changes nothing.
func TestCardLoadedTooLate(t *testing.T) {
	s := openBook(t, &drawer{}, "book", [2]int{80, 24})
	s.press("esc")
	m := s.m.(*root)
	before := m.session.base()
	m.Update(answered{func(m *root) tea.Cmd { return m.loaded(calc.Job{Metal: "brass", Gauge: 22}, "late", nil) }})
	if m.session.base() != before {
		t.Error("it was opened all the same")
	}
}

// Every kind of record is found while typing, and enter shows one in full.
func TestRecordsOnTheScreens(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {60, 20}, {120, 40}, {40, 14}} {
		d := &drawer{}
		s := openBook(t, d, "records", size)
		s.has("enter a power source")
		card := s.m.(*root).session.card
		if _, err := d.Keep(context.Background(), "tank lid", &card); err != nil {
			t.Fatal(err)
		}
		s.typed("tank")
		s.has("tank lid")
		s.hasNot("keep the card as")
		s.press("enter")
		s.has("all of ", "history")
		s.fits(size[0], size[1])
		s.press("esc")
		s.has("[records]")
		d.fail = errors.New("the server is away")
		s.press("enter")
		s.has("the server is away", "the list stays")
	}
}

// A test bead can be saved from the page of test beads: once, with the verdict that its look means or as acceptable.
func TestTrialOnTheScreens(t *testing.T) {
	d := &drawer{}
	s := openBook(t, d, "correct", [2]int{80, 24})
	s.press("k")
	s.has("no test bead")
	m := s.m.(*root)
	tell := func(seen string) {
		m.fix.saw(m, []string{seen})
		m.fix.applied = true
	}
	m.meter.kept = "booth 1"
	tell("rolled-edge")
	d.fail = errors.New("disk full")
	s.press("k")
	s.has("not kept: disk full")
	d.fail = nil
	s.press("k")
	s.has("kept: a bead that is bad")
	s.press("k")
	s.has("kept already")
	tell("spatter")
	s.press("a")
	tell("good")
	s.press("7")
	if want := []string{"rolled-edge  booth 1 {0 0 0 0}", "spatter acceptable booth 1 {0 0 0 0}",
		"good  booth 1 {0 0 0 0}"}; !slices.Equal(d.cuts, want) {
		t.Errorf("%q", d.cuts)
	}
}

// A power source, a spool, a person: row by row. After a fault all typed text stays.
func TestFormsOnTheScreens(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {60, 20}, {120, 40}, {40, 14}} {
		d := &drawer{}
		s := openBook(t, d, "records", size)
		s.press("enter", "enter")
		s.has("it has no name yet")
		s.typed("booth 1")
		s.press("enter")
		s.typed("much")
		s.press("enter", "enter", "enter", "enter", "enter", "enter")
		s.fits(size[0], size[1])
		s.has("puts it into the book")
		s.press("enter")
		s.has("type 200A")
		s.press("up", "up", "up", "up", "up", "up")
		s.has("rated amps   much")
		s.press("esc")
		s.typed("200A")
		s.press("enter", "enter", "enter", "enter", "enter", "enter", "enter")
		s.has("saved source", "[records]")
		if want := "sourcemap[name:booth 1 rated-amps:200A]"; len(d.entered) != 1 || d.entered[0] != want {
			t.Errorf("%q", d.entered)
		}
		s.press("down", "down", "enter")
		s.has("a person")
		s.press("esc")
		s.has("[records]")
	}
}

// A card can be saved from the card itself. The foot names the key at every size that has room for it, help names it at
// all sizes, and the text typed then is the card's name.
func TestCardIsSavedByAKey(t *testing.T) {
	for _, key := range []string{"k", "s"} {
		for _, size := range [][2]int{{60, 20}, {80, 24}, {120, 40}} {
			d := &drawer{}
			s := openAt(t, size[0], size[1], Options{Book: d, Opening: calc.Job{Metal: "galvanized", Gauge: 18}})
			s.has("k keep")
			s.press(key)
			s.has("[book]", "type a name")
			s.typed("tank lid")
			s.press("enter")
			if len(d.cards) != 1 {
				t.Fatalf("%s at %v: kept %v", key, size, d.cards)
			}
			s.press("esc")
			s.onCard()
		}
	}
	s := openAt(t, 40, 200, Options{Opening: calc.Job{Metal: "galvanized", Gauge: 18}})
	s.press("f1")
	s.has("keep the card in the book")
}
