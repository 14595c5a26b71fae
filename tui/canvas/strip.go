package canvas

import (
	"cmp"
	"slices"
	"strings"
)

// Strip shows the verdict over the whole width at the top of the screen, visible from afar like a lamp.
type Strip struct {
	State  State
	Word   string // replaces the state's own word
	Chance string // how many beads in 100 are good, "" if that is not computed
	Reason string // the most important reason
	Brief  string // the reason for little room; "" means Reason
	Do     string // what to do about it
	Status string // at the lower right, if there is room: whose job it is, which units
}

// look is one way to arrange a strip's big word and the lines beside it.
type look struct {
	size  Size
	word  string
	sign  bool
	x     int      // where the lines begin
	lines []string // the reason and what to do
	bold  int      // how many of the lines are the reason
}

// Draw draws the strip on h lines: with big letters from 4 lines on, small with fewer. It uses the largest letters that
// leave room for the reason and what to do. A reason is never shortened to get larger letters.
func (s Strip) Draw(th *Theme, w, h int) Block {
	if w < 20 || h < 1 {
		return nil
	}
	c := NewCells(w, h)
	c.Fill(0, 0, w, h, s.State.onGround())
	if l := s.laid(w, h); l.lines != nil {
		s.large(c, th, l)
	} else {
		s.small(c)
	}
	return c.Lines(th)
}

// Whole reports whether a strip of two lines or more has room for the whole reason and what to do.
func (s Strip) Whole(w, h int) bool {
	if s.laid(w, h).lines != nil {
		return true
	}
	x := margin(w) + 2 + width(s.word()) + margin(w) + 1
	_, rest := s.paragraph(w, x)
	return len(rest) < h
}

// laid is the arrangement with the largest letters that has room for all lines. It has no lines if there is none.
func (s Strip) laid(w, h int) look {
	for _, l := range s.looks(h - 1) {
		l.x = margin(w) + l.size.Width(l.word) + 3
		if l.sign {
			l.x += l.size.Width(s.State.Sign()) + 2
		}
		room := w - margin(w) - l.x
		if s.State == Stop && w >= 60 {
			room -= stripesWide
		}
		reason := Wrap(s.full(), room)
		l.bold, l.lines = len(reason), append(append([]string{}, reason...), Wrap(s.Do, room)...)
		if room >= 16 && len(l.lines) <= h {
			return l
		}
	}
	return look{}
}

// large draws a strip with big letters, the lines beside them, the status at the lower right, and the hazard stripes of
// a stop.
func (s Strip) large(c *Cells, th *Theme, l look) {
	k := s.State.onGround()
	if l.sign {
		l.size.put(c, margin(c.W), 0, k, s.State.Sign(), true, th.coarse)
	}
	l.size.put(c, l.x-3-l.size.Width(l.word), 0, k, l.word, true, th.coarse)
	y := (c.H - len(l.lines)) / 2
	for i, text := range l.lines {
		ink := k
		if i < l.bold {
			ink |= Bold
			c.Fill(l.x, y+i, c.W-l.x, 1, ink) // blanks in bold too, so that no ink is switched back between the texts
		}
		c.Put(l.x, y+i, ink, text)
	}
	last, high := l.x, c.H
	if n := c.H - 1 - y; n < len(l.lines) {
		last += width(l.lines[n]) + 2
	}
	if at := c.W - margin(c.W) - width(s.Status); s.Status != "" && at >= last {
		c.Put(at, c.H-1, k, s.Status)
		high--
	}
	if s.State == Stop {
		longest := slices.MaxFunc(l.lines, func(a, b string) int { return width(a) - width(b) })
		end := l.x + width(longest) + 2
		c.stripes(end, 0, c.W-end, high, k)
	}
}

// looks are the ways to arrange the word on some lines, the one that can be read from furthest away first.
func (s Strip) looks(lines int) (list []look) {
	if lines < SizeM.Lines {
		return nil
	}
	lines = min(lines, 8)
	least := max(SizeM.Columns, lines*5/6)
	for _, size := range [...]Size{{lines, lines + lines/3, false}, {lines, lines, false}, {lines, least, false},
		{lines, least, true}} {
		for _, sign := range [...]bool{true, false} {
			for _, word := range [...]string{s.word(), s.short()} {
				list = append(list, look{size: size, word: word, sign: sign})
			}
		}
	}
	return list
}

func (s Strip) word() string  { return cmp.Or(s.Word, s.State.Word()) }
func (s Strip) short() string { return cmp.Or(s.Word, s.State.Short()) }

// stripesWide is the room that a wide strip keeps for its hazard stripes.
const stripesWide = 8

// small writes a strip without big letters: sign, word, reason and what to do, over all lines.
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
		room = less // the status is more important than the words around the chance
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

// paragraph is the reason and what to do: the first line beside the word, the rest over the whole width below it.
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

// below writes this paragraph.
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

// margin is the room left at both sides of a strip.
func margin(w int) int {
	if w < 60 {
		return 1
	}
	return 2
}

// full is the chance and the reason.
func (s Strip) full() string {
	if s.Chance == "" {
		return s.Reason
	}
	return s.Chance + " good; " + s.Reason
}

// reason is the chance and the reason in some columns: brief if there is little room, and the chance alone if there is
// less.
func (s Strip) reason(room int) (form string) {
	for _, f := range [...]string{s.full(), s.brief(), s.Chance} {
		if form == "" || f != "" && width(form) > room {
			form = f
		}
	}
	return form
}

// brief is the chance and the brief reason.
func (s Strip) brief() string {
	if s.Chance == "" || s.Brief == "" {
		return s.Brief
	}
	return s.Chance + ", " + s.Brief
}
