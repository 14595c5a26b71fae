package tui

import (
	"fmt"
	"testing"

	"github.com/charmbracelet/x/exp/golden"
)

var walkSizes = [][2]int{{40, 14}, {60, 20}, {80, 24}, {120, 40}}

// openWalk is the first start of all, some steps on.
func openWalk(t testing.TB, size [2]int, steps int) *screen {
	s := openAt(t, size[0], size[1], Options{Walk: true, Book: &drawer{}})
	for range steps {
		s.press("enter")
	}
	return s
}

// Every step of the walk at every size.
func TestGoldenWalk(t *testing.T) {
	for i := range walkSteps {
		for _, size := range walkSizes {
			t.Run(fmt.Sprintf("walk-%02d/%s", i+1, sizeName(size)), func(t *testing.T) {
				s := openWalk(t, size, i)
				s.fits(size[0], size[1])
				golden.RequireEqual(t, s.text()+"\n")
			})
		}
	}
}
