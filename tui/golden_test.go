package tui

import (
	"fmt"
	"strings"
	"testing"

	"github.com/charmbracelet/x/exp/golden"
)

func sizeName(s [2]int) string { return fmt.Sprintf("%dx%d", s[0], s[1]) }

// Every screen as shown on the terminal, without colours, from a phone to a large screen. After an intended change: go
// test ./tui -run Golden -update, and look at the difference.
func TestGolden(t *testing.T) {
	if testing.Short() {
		t.Skip("compared without -short: nothing here runs side by side")
	}
	phone, small, narrow, usual, large, huge := [2]int{32, 10}, [2]int{40, 14}, [2]int{60, 20}, [2]int{80, 24},
		[2]int{120, 40}, [2]int{200, 60}
	all := [][2]int{phone, small, narrow, usual, large, huge}
	some := [][2]int{small, usual, large}
	const toCard = "enter enter enter enter "
	for _, x := range []struct {
		name, keys string
		sizes      [][2]int
	}{
		{"metal", "", all},
		{"metal-filter", "s t a i", some},
		{"gauge", "enter", some},
		{"gauge-typed", "enter 1 . 5", some},
		{"gauge-kept", "enter 1 . 5 enter esc", some},
		{"gauge-refused", "enter 9 9 g a enter", some},
		{"card", "enter 1 8 enter enter enter", all},
		{"card-chip", toCard + ". 5", some},
		{"card-typing", toCard + "4 . 5", some},
		{"card-yours", toCard + "+ + right right down", some},
		{"card-figures", toCard + "tab down down", some},
		{"card-stop", "b r a s s " + toCard, all},
		{"card-inch", toCard + "u", some},
		{"card-both", toCard + "u u", all},
		{"card-timed", "enter enter enter t i m e d enter enter", all},
		{"timed-gap", "enter enter enter t i m e d enter b u t t enter", some},
		{"rest", toCard + ". 0", some},
		{"why", toCard + "right enter", some},
		{"why-feed", toCard + "enter", some},
		{"why-note", toCard + "tab up *", some},
		{"cautions", toCard + "c", some},
		{"section", toCard + "x", some},
		{"map", toCard + "m", all},
		{"explain", "enter *", some},
		{"page-fit", toCard + "p", some},
		{"measure-no-book", toCard + "p m m", some},
		{"words", toCard + "g", some},
		{"help", "f1", some},
		{"booth", "enter 1 8 enter enter enter b", all},
		{"booth-stop", "b r a s s " + toCard + "b", some},
		{"booth-timed", "enter enter enter t i m e d enter enter right b", some},
	} {
		for _, size := range x.sizes {
			t.Run(x.name+"/"+sizeName(size), func(t *testing.T) {
				s := openAt(t, size[0], size[1], Options{})
				s.press(strings.Fields(x.keys)...)
				s.fits(size[0], size[1])
				golden.RequireEqual(t, s.text()+"\n")
			})
		}
	}
}
