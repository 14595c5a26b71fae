package tui

import (
	"regexp"
	"strings"
	"testing"

	"brazebooth/internal/deep"
)

// below is the mark of a text that continues below.
var below = regexp.MustCompile(`↓ \d+ line`)

// F1 opens the help at the part about the open screen, and the help has every part that a screen names.
func TestHelpOpensAtTheScreen(t *testing.T) {
	deep.Turn(t)
	for _, size := range [][2]int{{40, 14}, {60, 20}, {80, 24}, {120, 40}} {
		for keys, want := range map[string]string{
			"": "in a list", "tab tab tab tab": "on the card", "tab tab tab tab m": "on the map",
			"tab tab tab tab t": "on the timed arc's page",
			"tab tab tab tab p": "on the pages", "tab tab tab tab k": "in the book",
			"tab tab tab tab enter": "everywhere", "f3": "everywhere",
		} {
			s := openAt(t, size[0], size[1], Options{Book: &drawer{}})
			s.press(strings.Fields(keys)...)
			s.press("f1")
			s.fits(size[0], size[1])
			text := s.text()
			if at := strings.Index("\n"+text, "\n"+strings.Repeat(" ", s.root().margin())+want+"\n"); at < 0 ||
				below.MatchString(text) && len(strings.Split(text[:at], "\n")) > len(s.root().top())+3 &&
					want != "everywhere" {
				t.Errorf("%v, %q: the help does not begin with %q:\n%s", size, keys, want, text)
			}
		}
	}
}

// For every task without a key, the help and the pages of the book name the command.
func TestCommandsOfTheBookAreNamed(t *testing.T) {
	s := openAt(t, 80, 50, Options{Book: &drawer{}})
	s.press("tab", "tab", "tab", "tab", "k")
	s.has("book export FILE", "import FILE", "del or ctrl+d deletes", "to print a card")
	s.press("f4")
	s.has("del or ctrl+d deletes", "names its commands", "book export FILE")
	s.press("f1")
	s.has("book print NAME", "del ctrl+d", "ctrl+z", "restore ID", "book export FILE", "import FILE")
}
