package canvas

import (
	"fmt"
	"os"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/colorprofile"
)

// To look at the parts, build the tests and run this one in a terminal:
//
//	go test -c -o /tmp/canvas ./tui/canvas
//	SHOW="card 80 24 dark full" /tmp/canvas -test.run TestShow
//
// SHOW is one of the pictures below, then columns, lines, a theme, and full, 16 or none for the colours.
func TestShow(t *testing.T) {
	arg := strings.Fields(os.Getenv("SHOW"))
	if len(arg) != 5 {
		t.Skip("SHOW says what to show")
	}
	w, _ := strconv.Atoi(arg[1])
	h, _ := strconv.Atoi(arg[2])
	depth := colorprofile.TrueColor
	switch arg[4] {
	case "16":
		depth = colorprofile.ANSI
	case "none":
		depth = colorprofile.ASCII
	}
	th := ThemeOf(Kind(arg[3]), arg[3] != "light", depth, os.Getenv("COARSE") != "")
	fmt.Print("\x1b[2J\x1b[H" + strings.ReplaceAll(pictures[arg[0]](th, w, h).String(), "\n", "\r\n"))
	time.Sleep(time.Hour) // the picture stays until somebody ends the program
}

var pictures = map[string]func(th *Theme, w, h int) Block{
	"card": showCard,
	"states": func(th *Theme, w, h int) (b Block) {
		for s := range State(states) {
			strip := tryStrip
			strip.State = s
			b = append(b, strip.Draw(th, w, h)...)
		}
		return b
	},
	"map": func(th *Theme, w, h int) Block {
		return append(tryMap().Draw(th, w-30, h-1).beside(w-28, tryEdges.Draw(th, 28, h)), Legend(th, w)...)
	},
	"joints": func(th *Theme, w, h int) (b Block) {
		for _, j := range tryJoints() {
			b = append(append(b, j.Draw(th, w, h)...), Line{})
		}
		return b
	},
	"chart": func(th *Theme, w, h int) Block { return tryChart().Draw(th, w, h) },
	"sights": func(th *Theme, w, h int) (b Block) {
		for i, id := range sightIDs() {
			if i%4 == 0 {
				b = append(b, make(Block, h+1)...)
			}
			row := b[len(b)-h-1:]
			copy(row, row.beside(i%4*(w/4), DrawSight(th, id, w/4-1, h)))
		}
		return b
	},
	"booth": func(th *Theme, w, h int) Block { return tryBooth().Draw(th, w, h) },
}

func showCard(th *Theme, w, h int) Block {
	strip, chips := 1, 1
	switch {
	case h >= 60:
		strip, chips = 7, 3
	case h >= 40:
		strip, chips = 4, 3
	case w >= 60:
		strip, chips = 4, 2
	}
	b := append(tryStrip.Draw(th, w, strip), tryChips.Draw(th, w, chips)...)
	wide := w
	if w >= 80 {
		wide = w * 3 / 4
	}
	dials := tryDials.Draw(th, wide, max(5, h/4+1))
	if wide < w {
		dials = dials.beside(wide+1, tryLap.Draw(th, w-wide-1, len(dials)))
	}
	b = append(append(append(b, Line{}), dials...), Line{})
	return append(b, tryBeat.Draw(th, w, 2)...)
}

// beside puts a block to the right of another one, starting at a column. The left block must not be wider than that.
func (b Block) beside(column int, right Block) Block {
	out := make(Block, max(len(b), len(right)))
	copy(out, b)
	for i, l := range right {
		if l.Width > 0 {
			blank := column - out[i].Width
			out[i] = Line{out[i].Text + strings.Repeat(" ", max(0, blank)) + l.Text, column + l.Width}
		}
	}
	return out
}
