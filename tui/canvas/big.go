package canvas

import (
	"math"
	"strings"
	"sync"
)

// Size is the size of big letters: lines high, and columns wide for a digit. A cell is about twice as high as wide. The
// zero Size is ordinary text. Tight letters are half a column apart.
type Size struct {
	Lines, Columns int
	Tight          bool
}

// The small sizes: for names in the booth view and digits below 60 columns; for digits and the verdict at 60 to 110
// columns.
var (
	SizeM = Size{Lines: 3, Columns: 3}
	SizeL = Size{Lines: 3, Columns: 4}
)

// leastLines and mostLines limit the height of big letters.
const leastLines, mostLines = 3, 16

// Fit is the largest size at which a text fits; false if it fits at none. Higher letters are preferred, then wider
// ones. Given the widest text that a place may show, such as "88.88", the size does not change with the text.
func Fit(text string, w, h int) (Size, bool) {
	if !Drawable(text) {
		return Size{}, false
	}
	for lines := min(h, mostLines); lines >= leastLines; lines-- {
		for columns := lines*4/3 + lines/8; columns >= max(SizeM.Columns, lines*5/6); columns-- {
			if s := (Size{Lines: lines, Columns: columns}); s.Width(text) <= w {
				return s, true
			}
		}
	}
	if s := (Size{Lines: SizeM.Lines, Columns: SizeM.Columns, Tight: true}); h >= s.Lines && s.Width(text) <= w {
		return s, true
	}
	return Size{}, false
}

// Drawable reports whether every character of a text can be drawn big.
func Drawable(text string) bool {
	unknown := func(r rune) bool { _, ok := glyphs[r]; return !ok }
	return text != "" && !strings.ContainsFunc(text, unknown)
}

// pen is the pen for a size. A stroke is about a sixth of the height, in whole dots, and leaves the holes of an 8 open.
func (s Size) pen() pen {
	high := max(1, int(math.Round(float64(2*s.Lines)/6)))
	wide := max(2, min(int(math.Round(float64(4*s.Lines)/6)), 2*s.Columns/3))
	return pen{wide: wide, high: high}
}

func (s Size) gap() int {
	if s.Tight {
		return 1
	}
	return max(2, 2*(s.Lines/4))
}

// dotsOf is the width of a character in dots. It is in whole columns, because a coarse terminal has nothing finer.
func (s Size) dotsOf(g glyph) int {
	if g.wide == 0 {
		return (s.pen().wide + 1) / 2 * 2
	}
	return 2 * int(math.Round(float64(s.Columns)*g.wide))
}

// Width is how many columns a text takes.
func (s Size) Width(text string) int {
	if s.Lines == 0 {
		return width(text)
	}
	dots := 0
	for _, r := range text {
		if g, ok := glyphs[r]; ok {
			dots += s.dotsOf(g) + s.gap()
		}
	}
	return (max(0, dots-s.gap()) + 1) / 2
}

// shape is a character in a size. A coarse one is drawn in whole columns instead of halves.
type shape struct {
	r              rune
	lines, columns int
	coarse         bool
}

var shapes sync.Map // of shape to letter: computed once for all sessions

func (s Size) shape(r rune, coarse bool) letter {
	k := shape{r, s.Lines, s.Columns, coarse}
	if l, ok := shapes.Load(k); ok {
		return l.(letter)
	}
	g, p, w, h := glyphs[r], s.pen(), s.dotsOf(glyphs[r]), 2*s.Lines
	if p.fold = 1; coarse {
		p.fold, p.wide = 2, max(1, p.wide/2)
	}
	p.box = complex(float64(w/p.fold)/float64(p.wide), float64(h)/float64(p.high))
	l, _ := shapes.LoadOrStore(k, p.write(g.paths, w, h))
	return l.(letter)
}

// put draws a text with its upper left corner at a cell, or half a line lower: on a coloured background, letters keep
// half a line free above and below. A text that cannot be drawn big is written small on the middle line. So are tight
// letters on a coarse terminal, where they would touch.
func (s Size) put(c *Cells, x, y int, k Ink, text string, half, coarse bool) {
	if s.Lines == 0 || coarse && s.Tight || !Drawable(text) {
		c.Put(x, y+s.Lines/2, k, text)
		return
	}
	at, down := 2*x, 2*y
	if half {
		down++
	}
	for _, r := range text {
		l := s.shape(r, coarse)
		for i, inked := range l.list {
			if inked {
				c.dot(quadrants, at+i%l.w, down+i/l.w, k&^Bold)
			}
		}
		at += l.w + s.gap()
	}
}

// BigText is a text in a size.
func BigText(th *Theme, s Size, k Ink, text string) Block {
	c := NewCells(s.Width(text), max(1, s.Lines))
	s.put(c, 0, 0, k, text, false, th.coarse)
	return c.Lines(th)
}

// glyph describes how a big letter is drawn: paths separated by ";", each a list of points. A point is two digits,
// across and down, from 0 to 4 between the middles of the outermost strokes. An "o" after it rounds the corner, or both
// ends of a line; "z" at the end closes the path. A path that begins with "f" is an area between the edges of the
// letter's box; one that begins with "e" is erased.
type glyph struct {
	paths string
	wide  float64 // in widths of a digit; 0 is the width of a stroke
}

// glyphs are the characters that can be drawn big: digits with both decimal marks, capitals, and the signs of the
// states.
var glyphs = map[rune]glyph{
	'0': {"00o 40o 44o 04oz", 1},
	'1': {"11o 20o; 20 24; 04 44", 1},
	'2': {"00 40o 42o 02o 04 44", 1},
	'3': {"00 40o 42o 12; 12 42o 44o 04", 1},
	'4': {"00 02 42; 40 44", 1},
	'5': {"40 00 02 42o 44o 04", 1},
	'6': {"40 00o 04o 44o 42o 02", 1},
	'7': {"00 40 41 14", 1},
	'8': {"00o 40o 42o 02oz; 02o 42o 44o 04oz", 1},
	'9': {"42 02o 00o 40o 44o 04", 1},
	'.': {"04", 0},
	',': {"03 04", 0},
	'-': {"02 42", 0.75},
	'/': {"40 04", 1},
	'>': {"00 42 04", 0.75},
	'%': {"40 04; 00; 44", 1},
	'A': {"04 00o 40o 44; 02 42", 1},
	'B': {"00 40o 42o 02; 02 42o 44o 04; 00 04", 1},
	'C': {"40 00o 04o 44", 1},
	'D': {"00 40o 44o 04z", 1},
	'E': {"40 00 04 44; 02 32", 1},
	'F': {"40 00 04; 02 32", 1},
	'G': {"40 00o 04o 44 42 32", 1},
	'H': {"00 04; 40 44; 02 42", 1},
	'I': {"00 04", 0},
	'J': {"40 44o 04o 03", 1},
	'K': {"00 04; 40 02 44", 1},
	'L': {"00 04 44", 1},
	'M': {"04 00 22 40 44", 1.25},
	'N': {"04 00 44 40", 1},
	'O': {"00o 40o 44o 04oz", 1},
	'P': {"04 00 40o 42o 02", 1},
	'Q': {"00o 40o 44o 04oz; 23 44", 1},
	'R': {"04 00 40o 42o 02; 22 44", 1},
	'S': {"40 00o 02o 42o 44o 04", 1},
	'T': {"00 40; 20 24", 1},
	'U': {"00 04o 44o 40", 1},
	'V': {"00 02 24 42 40", 1},
	'W': {"00 04 22 44 40", 1.25},
	'X': {"00 44; 40 04", 1},
	'Y': {"00 22 40; 22 24", 1},
	'Z': {"00 40 04 44", 1},
	' ': {"", 0.5},
	'✓': {"02 14 40", 1.5},
	'▼': {"f10 30 32 42 24 02 12", 1.5},
	'▲': {"f14 34 32 42 20 02 12", 1.5},
	'✕': {"00 44; 40 04", 1.25},
	'◇': {"20 42 24 02z", 1.5},
	'~': {"03 11o 33o 41", 1.5},
	'?': {"00 40o 42o 22 23; 24", 1},
	'■': {"f10 30 41 43 34 14 03 01; e12 32", 1.5},
}
