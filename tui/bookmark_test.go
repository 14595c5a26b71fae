package tui

import (
	"errors"
	"testing"

	"brazebooth/calc"
)

// A record is deleted by pressing one key twice, and another key restores it. After any other key, or on another row,
// the first press only asks again.
func TestDeleteOnTheScreens(t *testing.T) {
	for _, size := range [][2]int{{40, 14}, {60, 20}, {80, 24}} {
		for _, page := range []string{"book", "records"} {
			for _, del := range []string{"delete", "ctrl+d"} {
				d := &drawer{cards: []Entry{{"1", "card", "tank lid", "2026-03-01", "galvanized"}, {"2", "card",
					"planter", "2026-03-01", "galvanized"}}, jobs: map[string]calc.Job{}}
				s := openBook(t, d, page, size)
				s.press("ctrl+z")
				s.has("nothing was deleted on this page")
				s.press(del)
				s.has("delete tank lid?")
				s.press("down", del)
				s.has("delete planter?")
				s.press("up", "down", del)
				s.has("delete planter?")
				if len(d.cards) != 2 {
					t.Fatalf("%v: deleted unasked: %v", size, d.cards)
				}
				s.press(del)
				s.has("planter: deleted", "tank lid")
				s.fits(size[0], size[1])
				if len(d.cards) != 1 || d.cards[0].ID != "1" {
					t.Fatalf("%v: left are %v", size, d.cards)
				}
				s.press("ctrl+z")
				s.has("planter: back in the book")
				if len(d.cards) != 2 {
					t.Errorf("%v: back are %v", size, d.cards)
				}
			}
		}
	}
}

// While text is typed, the delete key first deletes the text after the cursor.
func TestDeleteInTypedText(t *testing.T) {
	d := &drawer{cards: []Entry{{"1", "card", "tank lid", "2026-03-01", "galvanized"}}}
	s := openBook(t, d, "book", [2]int{80, 24})
	s.typed("tan")
	s.press("left", "delete")
	s.has("keep the card as “ta”", "tank lid")
	s.hasNot("delete tank lid?")
	s.press("delete")
	s.has("delete tank lid?")
	s.press("down", "delete")
	s.has("no record under the cursor")
}

// If a record cannot be deleted, the page says why, and the record stays.
func TestDeleteThatFails(t *testing.T) {
	d := &drawer{cards: []Entry{{"1", "card", "tank lid", "2026-03-01", "galvanized"}}}
	s := openBook(t, d, "book", [2]int{80, 24})
	d.fail = errors.New("the server is away")
	s.press("delete", "delete")
	s.has("the server is away", "nothing was changed", "tank lid")
}
