package canvas

import (
	"fmt"
	"strings"
	"testing"

	"github.com/charmbracelet/x/exp/golden"
)

// drawn is a part, its name, and how many lines it gets at a width.
type drawn struct {
	name  string
	lines int
	draw  func(th *Theme, w, h int) Block
}

// allParts are the parts as screens of a width use them.
func allParts(w int) []drawn {
	strip, dials, pictures, map_ := 4, 7, 7, 18
	switch {
	case w < 60:
		strip, dials, pictures, map_ = 1, 5, 6, 12
	case w >= 200:
		strip, dials, pictures, map_ = 7, 13, 16, 30
	case w >= 120:
		dials, pictures = 8, 10
	}
	list := []drawn{
		{"strip", strip, tryStrip.Draw},
		{"stop", strip, tryStop.Draw},
		{"burns", strip, tryBurns.Draw},
		{"chips", 3, tryChips.Draw},
		{"dials", dials, tryDials.Draw},
		{"booth", max(9, 2*dials-4), tryBooth().Draw},
		{"edges", 6, tryEdges.Draw},
		{"map", map_, tryMap().Draw},
		{"chart", map_, tryChart().Draw},
		{"beat", 2, tryBeat.Draw},
	}
	for _, j := range tryJoints() {
		list = append(list, drawn{"joint", pictures, j.Draw})
	}
	return list
}

// Every part at the widths of the screens, once with its colours removed afterwards and once drawn without any. After
// an intended change: go test ./tui/canvas -update, and look at the difference.
func TestGolden(t *testing.T) {
	for name, th := range themesToTry() {
		for _, w := range []int{32, 40, 60, 80, 120, 200} {
			t.Run(fmt.Sprintf("%s/%d", name, w), func(t *testing.T) {
				var s strings.Builder
				for _, p := range allParts(w) {
					fmt.Fprintf(&s, "## %s\n%s\n", p.name, seenBlock(t, p.name, p.draw(th, w, p.lines), w, p.lines))
				}
				golden.RequireEqual(t, s.String())
			})
		}
	}
}

// Every character that can be drawn big, in each size.
func TestGoldenLetters(t *testing.T) {
	th := themesToTry()["none"]
	var s strings.Builder
	sizes := []Size{SizeM, SizeL, {Lines: 4, Columns: 5}, {Lines: 6, Columns: 8}, {Lines: 10, Columns: 14}}
	for _, size := range sizes {
		for _, text := range []string{"0123456789", ".,-/>% ✓▼▲", "ABCDEFGHI", "JKLMNOPQR", "STUVWXYZ", "✕◇~?■"} {
			fmt.Fprintf(&s, "%s\n", seenBlock(t, text, BigText(th, size, Plain, text), 250, size.Lines))
		}
	}
	golden.RequireEqual(t, s.String())
}

// Everything that a test bead may show, small and large.
func TestGoldenSights(t *testing.T) {
	for _, name := range []string{"full", "none"} {
		t.Run(name, func(t *testing.T) {
			var s strings.Builder
			for _, id := range sightIDs() {
				for _, size := range [][2]int{{18, 4}, {36, 8}} {
					b := DrawSight(themesToTry()[name], id, size[0], size[1])
					fmt.Fprintf(&s, "## %s\n%s\n", id, seenBlock(t, id, b, size[0], size[1]))
				}
			}
			golden.RequireEqual(t, s.String())
		})
	}
}
