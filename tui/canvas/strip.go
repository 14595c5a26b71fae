package canvas

import (
	"cmp"
	"slices"
	"strings"
)

// Strip is the verdict over the whole width, always on top, seen from afar like a lamp.
type Strip struct {
	State  State
	Word   string // in place of the state's own
	Chance string // how many beads in 100 are good, "" where that is not computed
	Reason string // the one reason
	Brief  string // the reason where there is little room; "" is Reason
	Do     string // what to do about it
	Status string // at the lower right, where there is room: whose job, which units
}

// look is one way to set a strip's big word.
type look struct {
	size Size
	word string
	sign bool
}

// Draw sets the strip into h lines: with big letters from 4 lines on, small on fewer. The largest letters are taken
// that leave room for the reason and what to do; a reason is never shortened for the sake of large letters.
func (s Strip) Draw(th *Theme, w, h int) Block {
	if w < 20 || h < 1 {
		return nil
	}
	c := NewCells(w, h)
	c.Fill(0, 0, w, h, s.State.onGround())
	if !s.large(c, th) {
		s.small(c)
	}
	return c.Lines(th)
}

// Whole reports whether reason and what to do stand whole on a strip of a width and some lines.
func (s Strip) Whole(w, h int) bool {
	for _, l := range s.looks(h - 1) {
		if lines, _ := s.text(s.room(l, w), h); lines != nil {
			return true
		}
	}
	x := margin(w) + 2 + width(s.word()) + margin(w) + 1
	if h < 2 {
		return x+width(s.full()+" – "+s.Do) <= w-margin(w)
	}
	_, rest := s.paragraph(w, x)
	return len(rest) < h
}

// before is the columns before the text beside a big word, room those left for the text.
func (s Strip) before(l look, w int) int {
	x := margin(w) + l.size.Width(l.word) + 3
	if l.sign {
		x += l.size.Width(s.State.Sign()) + 2
	}
	return x
}

func (s Strip) room(l look, w int) int {
	room := w - margin(w) - s.before(l, w)
	if s.State == Stop && w >= 60 {
		room -= stripesWide
	}
	return room
}

// large draws a strip with big letters, or reports that there is no room.
func (s Strip) large(c *Cells, th *Theme) bool {
	for _, l := range s.looks(c.H - 1) {
		text := s.before(l, c.W)
		x := text - l.size.Width(l.word) - 3
		lines, bold := s.text(s.room(l, c.W), c.H)
		if lines == nil {
			continue
		}
		if l.sign {
			l.size.put(c, margin(c.W), 0, s.State.onGround(), s.State.Sign(), true, th.coarse)
		}
		l.size.put(c, x, 0, s.State.onGround(), l.word, true, th.coarse)
		s.beside(c, text, lines, bold)
		return true
	}
	return false
}

// looks are the ways to set the word into some lines, the one read from furthest away first.
func (s Strip) looks(lines int) []look {
	if lines < SizeM.Lines {
		return nil
	}
	lines = min(lines, 8)
	words := slices.Compact([]string{s.word(), s.short()})
	sizes := []Size{{Lines: lines, Columns: lines + lines/3}}
	if lines > SizeL.Lines {
		sizes = append(sizes, Size{Lines: lines, Columns: lines})
	}
	least := max(SizeM.Columns, lines*5/6)
	sizes = append(sizes, Size{Lines: lines, Columns: least}, Size{Lines: lines, Columns: least, Tight: true})
	var list []look
	for _, size := range sizes {
		for _, sign := range [...]bool{true, false} {
			for _, word := range words {
				list = append(list, look{size, word, sign})
			}
		}
	}
	return list
}

func (s Strip) word() string  { return cmp.Or(s.Word, s.State.Word()) }
func (s Strip) short() string { return cmp.Or(s.Word, s.State.Short()) }

// text is the reason and what to do as lines of a width, and how many of them are the reason; nil where they do not
// fit.
func (s Strip) text(room, h int) (lines []string, bold int) {
	if room < 16 {
		return nil, 0
	}
	reason := Wrap(s.full(), room)
	if do := Wrap(s.Do, room); len(reason)+len(do) <= h {
		return append(append(make([]string, 0, h), reason...), do...), len(reason)
	}
	return nil, 0
}

// beside writes the lines beside the word, the status at the lower right, and the hazard stripes of a stop.
func (s Strip) beside(c *Cells, x int, lines []string, bold int) {
	k := s.State.onGround()
	y := (c.H - len(lines)) / 2
	for i, l := range lines {
		ink := k
		if i < bold {
			ink |= Bold
			c.Fill(x, y+i, c.W-x, 1, ink) // as bold as the text, so that nothing is switched back behind it
		}
		c.Put(x, y+i, ink, l)
	}
	last, high := x, c.H
	if n := c.H - 1 - y; n < len(lines) {
		last += width(lines[n]) + 2
	}
	if at := c.W - margin(c.W) - width(s.Status); s.Status != "" && at >= last {
		c.Put(at, c.H-1, k, s.Status)
		high--
	}
	if end := x + widest(lines) + 2; s.State == Stop {
		c.stripes(end, 0, c.W-end, high, k)
	}
}

// stripesWide is the room that a wide strip keeps for its hazard stripes.
const stripesWide = 8

// small writes a strip without big letters: sign, word, reason and what to do, over all the lines there are.
func (s Strip) small(c *Cells) {
	k, m, gap := s.State.onGround(), margin(c.W), margin(c.W)+1
	x, word := c.Put(m, 0, k, s.State.Sign()+" "), s.word()
	if room := c.W - m - x - width(word) - gap; width(s.reason(room)) > room {
		word = s.short()
	}
	x = c.Put(x, 0, k|Bold, cut(word, c.W-m-x)) + gap
	if c.H > 1 {
		s.below(c, x)
		return
	}
	room := c.W - m - x
	if less := room - width(s.Status) - 2; s.Chance != "" && s.Status != "" && width(s.brief()) <= less {
		room = less // whose job it is comes before the words around the chance
	}
	reason := s.reason(room)
	x = c.PutCut(x, 0, k, reason, c.W-m-x)
	if do := " – " + s.Do; s.Do != "" && x+width(do) <= c.W-m {
		x = c.Put(x, 0, k, do)
	}
	switch room := c.W - m - x - 2; {
	case s.Status != "" && width(s.Status) <= room:
		c.Put(c.W-m-width(s.Status), 0, k, s.Status)
	case s.State == Stop && room >= 3:
		c.stripes(x+2, 0, c.W-x-2, 1, k)
	}
}

// paragraph is reason and what to do, from a column on beside the word and over the whole width below it.
func (s Strip) paragraph(w, x int) (first string, rest []string) {
	text := strings.TrimSuffix(s.full(), ".")
	if s.Do != "" {
		text += ". " + s.Do
	}
	lines := Wrap(text, w-margin(w)-x)
	if len(lines) <= 1 {
		return text, nil
	}
	return lines[0], Wrap(strings.TrimSpace(strings.TrimPrefix(text, lines[0])), w-2*margin(w))
}

// below writes them.
func (s Strip) below(c *Cells, x int) {
	k, m := s.State.onGround(), margin(c.W)
	first, rest := s.paragraph(c.W, x)
	c.Put(x, 0, k, first)
	for i, l := range rest {
		switch {
		case i+2 < c.H, i+2 == c.H && i+1 == len(rest):
			c.Put(m, i+1, k, l)
		case i+2 == c.H:
			c.PutCut(m, i+1, k, l+" "+rest[i+1], c.W-2*m)
		}
	}
}

// margin is the room left at either side of a strip.
func margin(w int) int {
	if w < 60 {
		return 1
	}
	return 2
}
