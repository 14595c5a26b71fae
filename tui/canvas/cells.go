package canvas

import (
	"cmp"
	"reflect"
	"strings"
	"sync"

	"github.com/charmbracelet/x/ansi"

	"brazebooth/internal/plain"
)

// Line is a line with its styles, and its width in columns.
type Line struct {
	Text  string
	Width int
}

// Block is lines from top to bottom.
type Block []Line

// String is the lines joined by line breaks.
func (b Block) String() string {
	lines := make([]string, len(b))
	for i, l := range b {
		lines[i] = l.Text
	}
	return strings.Join(lines, "\n")
}

// cell is one place: its text, its ink, and the dots that the text shows. A blank has no text. The cell to the right of
// a wide character contains follower.
type cell struct {
	text string
	ink  Ink
	dots uint8
}

const follower = "\x00"

// Cells is a grid of cells to draw on. Drawing beyond its edges has no effect.
type Cells struct {
	W, H int
	list []cell
}

var pool = sync.Pool{New: func() any { return new(Cells) }}

// NewCells returns an empty grid. It must not be used after Lines, which puts it back into a pool.
func NewCells(w, h int) *Cells {
	c := pool.Get().(*Cells)
	c.W, c.H = max(0, w), max(0, h)
	n := c.W * c.H
	if cap(c.list) < n {
		c.list = make([]cell, n)
	}
	c.list = c.list[:n]
	clear(c.list)
	return c
}

// at is the cell at a place, nil beyond the edges.
func (c *Cells) at(x, y int) *cell {
	if x < 0 || y < 0 || x >= c.W || y >= c.H {
		return nil
	}
	return &c.list[y*c.W+x]
}

// Set puts one character, which must be one column wide.
func (c *Cells) Set(x, y int, k Ink, text string) {
	if p := c.at(x, y); p != nil {
		c.free(x, y)
		*p = cell{text: text, ink: k}
	}
}

// free blanks the rest of a wide character when a part of it is overwritten.
func (c *Cells) free(x, y int) {
	for i := x; c.at(i, y) != nil && c.at(i, y).text == follower; i-- {
		c.at(i, y).text = ""
		if p := c.at(i-1, y); p.text != follower {
			p.text = ""
		}
	}
	for i := x + 1; c.at(i, y) != nil && c.at(i, y).text == follower; i++ {
		c.at(i, y).text = ""
	}
}

// Fill blanks a rectangle and gives it an ink.
func (c *Cells) Fill(x, y, w, h int, k Ink) {
	for j := max(0, y); j < min(c.H, y+h); j++ {
		for i := max(0, x); i < min(c.W, x+w); i++ {
			c.Set(i, j, k, "")
		}
	}
}

// Put writes a text and returns the column after it. It stops before the first character that does not fit.
func (c *Cells) Put(x, y int, k Ink, text string) int {
	for text != "" {
		char, w := first(text)
		if text = text[len(char):]; x+w > c.W {
			return x
		}
		for range w {
			c.Set(x, y, k, char)
			x, char = x+1, follower
		}
	}
	return x
}

// putFree writes a text if there is room for it and it touches nothing else on its line.
func (c *Cells) putFree(x, y int, k Ink, text string) {
	for i := x - 1; i <= x+width(text); i++ {
		if p := c.at(i, y); p != nil && p.text != "" {
			return
		}
	}
	if x+width(text) <= c.W {
		c.Put(x, y, k, text)
	}
}

// PutCut writes a text into some columns, and ends it with an ellipsis if it is too long.
func (c *Cells) PutCut(x, y int, k Ink, text string, room int) int {
	return c.Put(x, y, k, cut(text, min(room, c.W-x)))
}

// Lines returns the grid as lines without trailing blanks. After this the grid must not be used.
func (c *Cells) Lines(th *Theme) Block {
	defer pool.Put(c)
	b := make(Block, c.H)
	bytes := make([]byte, 0, 4*c.W+64)
	for y := range b {
		row := c.list[y*c.W : (y+1)*c.W]
		for len(row) > 0 && row[len(row)-1].text == "" && th.plain(row[len(row)-1].ink) {
			row = row[:len(row)-1]
		}
		bytes = th.row(bytes[:0], row)
		b[y] = Line{string(bytes), len(row)}
	}
	return b
}

// row appends a row of cells, with one escape sequence for each run of equal ink.
func (th *Theme) row(to []byte, row []cell) []byte {
	now, style := Plain, ansi.Style(nil)
	for i := range row {
		p := &row[i]
		if p.text == follower {
			continue
		}
		if p.ink != now && !(p.text == "" && th.plain(p.ink) && th.plain(now)) {
			if len(style) > 0 {
				to = append(to, ansi.ResetStyle...)
			}
			if now, style = p.ink, th.style(p.ink); len(style) > 0 {
				to = append(to, style.String()...)
			}
		}
		to = append(to, cmp.Or(p.text, " ")...)
	}
	if len(style) > 0 {
		to = append(to, ansi.ResetStyle...)
	}
	return to
}

func width(s string) int { return plain.Width(s) }

// cut shortens a text to some columns, and ends it with an ellipsis if something is missing.
func cut(s string, room int) string { return plain.Cut(s, room) }

// first is a text's first character, with the characters combined with it, and its width in columns.
func first(s string) (char string, columns int) {
	if s[0] < 0x80 && (len(s) == 1 || s[1] < 0x80) {
		if s[0] < ' ' || s[0] == 0x7f {
			return s[:1], 0
		}
		return s[:1], 1
	}
	return ansi.FirstGraphemeCluster(s, ansi.WcWidth)
}

// Wrap breaks a text at blanks into lines of at most room cells. A word longer than a line is broken anywhere, so that
// nothing is lost.
func Wrap(s string, room int) []string {
	var words []string
	for word := range strings.FieldsSeq(s) {
		for width(word) > room {
			head := ansi.TruncateWc(word, room, "")
			if room < 1 || head == "" {
				return nil // a character wider than the room
			}
			words, word = append(words, head), word[len(head):]
		}
		words = append(words, word)
	}
	if words == nil {
		return nil
	}
	return plain.Wrap(strings.Join(words, " "), room)
}

// Part is something that can be drawn into a rectangle.
type Part interface {
	Draw(th *Theme, w, h int) Block
}

// Cached remembers the last drawing of a part, so that an unchanged part is not drawn again. A part must not be
// modified after it was drawn: a changed part is a new value. The zero Cached is ready to use.
type Cached[P Part] struct {
	part  P
	th    *Theme
	w, h  int
	lines Block
}

// Draw returns the drawing of a part.
func (k *Cached[P]) Draw(p P, th *Theme, w, h int) Block {
	if k.th != th || k.w != w || k.h != h || !reflect.DeepEqual(k.part, p) {
		k.part, k.th, k.w, k.h, k.lines = p, th, w, h, p.Draw(th, w, h)
	}
	return k.lines
}
