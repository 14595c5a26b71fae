package tui

import (
	"bytes"
	"strconv"
	"strings"
)

// move follows characters that move the cursor.
func (s *sparing) move(seq []byte) {
	x := min(s.x, s.w-1)
	switch text := string(seq); {
	case text == "\r":
		s.jump(seq)
		s.x = 0
		return
	case text == "\n" && s.y+1 < s.h:
		s.y++
		if s.feeds {
			s.x = 0
		}
	case text == "\b":
		s.x = max(0, x-1)
	case text == "\t":
		s.x = min(s.w-1, (x/8+1)*8)
	case text == "\x1bM" && s.y > 0: // up
		s.y--
	case strings.HasPrefix(text, "\x1b]"): // a title, a colour
	default:
		s.forget()
	}
	s.pass(seq)
}

// control follows a sequence that moves the cursor, erases or changes the pen.
func (s *sparing) control(seq, parameters []byte, final byte) {
	n, second, ok := numbers(parameters)
	switch {
	case final == 'm' && !bytes.ContainsAny(parameters, "<=>?"):
		s.style(seq, parameters)
	case final == 'H' && ok:
		s.jump(seq)
		s.x, s.y, s.placed = min(second, s.w)-1, min(n, s.h)-1, s.w > 0 && s.h > 0
	case (final == 'G' || final == '`') && ok:
		s.jump(seq)
		s.x = min(n, s.w) - 1
	default:
		s.pass(seq)
		known := ok && (s.steps(final, n) || s.edits(final, n))
		known = known || s.erases(final, string(parameters))
		if p := string(parameters); !known && p != "?25" && p != "?2026" { // the cursor's look; a frame at once
			s.forget()
		}
	}
}

// steps follows a move from where the cursor is, if it is one.
func (s *sparing) steps(final byte, n int) bool {
	x := min(s.x, s.w-1)
	switch final {
	case 'd':
		s.y = min(n, s.h) - 1
	case 'A':
		s.y = max(0, s.y-n)
	case 'B':
		s.y = min(s.h-1, s.y+n)
	case 'C':
		s.x = min(s.w-1, x+n)
	case 'D':
		s.x = max(0, x-n)
	default:
		return false
	}
	return true
}

// edits follows a change of n cells from the cursor on, if it is one.
func (s *sparing) edits(final byte, n int) bool {
	x := min(s.x, s.w-1)
	switch {
	case !s.placed:
		return false
	case final == 'X':
		s.blank(x, x+n)
	case final == 'P' || final == '@':
		s.shift(s.cells[s.y*s.w+x:(s.y+1)*s.w], n, final == '@')
	default:
		return false
	}
	return true
}

// erases follows an erasing of a line or of all, if it is one.
func (s *sparing) erases(final byte, parameters string) bool {
	x := min(s.x, s.w-1)
	switch {
	case final == 'K' && parameters == "":
		s.blank(x, s.w)
	case final == 'K' && parameters == "1":
		s.blank(0, x+1)
	case final == 'J' && parameters == "2" && s.pen == (pen{}): // not every terminal takes another ground for it
		for i := range s.cells {
			s.cells[i] = shownAs(' ', s.pen)
		}
	default:
		return false
	}
	return true
}

// numbers are the two parameters of a sequence; one that is missing or zero is 1.
func numbers(parameters []byte) (first, second int, ok bool) {
	a, b, _ := bytes.Cut(parameters, []byte(";"))
	number := func(text []byte) int {
		if len(text) == 0 {
			return 1
		}
		n, err := strconv.Atoi(string(text))
		if err != nil || n < 0 {
			ok = false
		}
		return max(1, n)
	}
	ok = true
	return number(a), number(b), ok
}

// blank takes the blanks of an erased piece of the cursor's line.
func (s *sparing) blank(from, to int) {
	if !s.placed || s.pen.odd {
		s.forget()
		return
	}
	for x := from; x < min(to, s.w); x++ {
		s.cells[s.y*s.w+x] = shownAs(' ', s.pen)
	}
}

// shift moves the end of a line, which comes closer or makes room.
func (*sparing) shift(end []shown, n int, room bool) {
	n = min(n, len(end))
	if room {
		copy(end[n:], end)
		clear(end[:n])
		return
	}
	copy(end, end[n:])
	clear(end[len(end)-n:])
}

// forget sends everything again, until the cursor's place is known.
func (s *sparing) forget() {
	clear(s.cells)
	s.placed = false
}
