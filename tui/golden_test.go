package tui

import (
	"fmt"
	"strings"
	"testing"

	"github.com/charmbracelet/x/exp/golden"
)

func sizeName(s [2]int) string { return fmt.Sprintf("%dx%d", s[0], s[1]) }

// Every screen as it stands on the terminal, colours left out, at the three widths and on a phone.
// After a change that is meant: go test ./tui -run Golden -update, and look at the difference.
func TestGolden(t *testing.T) {
	if testing.Short() {
		t.Skip("compared without -short: nothing here runs side by side")
	}
	screens := []struct {
		name string
		keys string
	}{
		{"metal", ""},
		{"metal-filter", "s t a i"},
		{"gauge", "enter"},
		{"gauge-typed", "enter 1 . 5"},
		{"gauge-refused", "enter 9 9 g a enter"},
		{"wire", "enter enter"},
		{"mode", "enter enter enter"},
		{"card", "enter 1 8 enter enter enter"},
		{"timed-joint", "enter enter enter t i m e d enter"},
		{"timed-gap", "enter enter enter t i m e d enter b u t t enter"},
		{"card-timed", "enter enter enter t i m e d enter enter"},
		{"card-yours", "enter enter enter enter down + +"},
		{"card-end", "enter enter enter enter end"},
		{"card-stop", "b r a s s enter enter enter enter"},
		{"card-inch", "enter enter enter enter u"},
		{"card-both", "enter enter enter enter u u"},
		{"why", "enter enter enter enter down enter"},
		{"why-note", "enter enter enter enter down down down down down down *"},
		{"cautions", "enter enter enter enter c"},
		{"section", "enter enter enter enter x"},
		{"map", "enter enter enter enter m"},
		{"map-walk", "enter enter enter enter m right right up"},
		{"choice", "enter enter enter enter end up up up up enter"},
		{"explain", "enter *"},
		{"help", "f1"},
		{"booth", "enter 1 8 enter enter enter b"},
		{"booth-both", "enter 1 8 enter enter enter u u b"},
		{"booth-stop", "b r a s s enter enter enter enter b"},
		{"booth-timed", "enter enter enter t i m e d enter enter down b"},
	}
	for _, x := range screens {
		for _, size := range [][2]int{{40, 14}, {40, 24}, {60, 20}, {80, 24}, {120, 40}} {
			t.Run(x.name+"/"+sizeName(size), func(t *testing.T) {
				s := openAt(t, size[0], size[1], Options{})
				s.press(strings.Fields(x.keys)...)
				s.fits(size[0], size[1])
				golden.RequireEqual(t, s.text()+"\n")
			})
		}
	}
}
