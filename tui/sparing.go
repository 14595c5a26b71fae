package tui

import (
	"io"
	"runtime"
	"sync"
	"unicode/utf8"

	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/term"
)

// sparing passes on to a terminal what Bubble Tea's renderer sends, without the cells that are there already: the
// renderer (ultraviolet's putRange) sends a changed line from its first changed cell to its last one, whatever lies
// between them. What sparing does not understand it passes on as it is and forgets what the terminal shows.
type sparing struct {
	to     io.Writer
	feeds  bool // a line feed returns to the first column too, as Bubble Tea takes it
	mu     sync.Mutex
	w, h   int // of the terminal; nothing is left out while they are 0
	cells  []shown
	x, y   int // the cursor as the renderer sees it; x is w behind the last column
	placed bool
	pen    pen
	behind int    // columns by which the terminal's cursor is behind
	left   []byte // what was left out there
	styles []byte // the styles in it that still count
	out    []byte
}

// shown is what a cell of the terminal shows; the zero shown is not known.
type shown struct {
	r   rune
	pen pen
}

// spared is an output with less sent to it. A terminal stays one: its size and its modes are asked for through it. in is
// where the keys come from: without a terminal there nothing has switched off that a line feed returns.
func spared(in io.Reader, to io.Writer) (io.Writer, *sparing) {
	keys, ok := in.(term.File)
	s := &sparing{to: to, feeds: runtime.GOOS != "windows" && !(ok && term.IsTerminal(keys.Fd()))}
	if f, ok := to.(term.File); ok {
		return sparingFile{f, s}, s
	}
	return s, s
}

type sparingFile struct {
	term.File
	s *sparing
}

func (f sparingFile) Write(b []byte) (int, error) { return f.s.Write(b) }

// resize takes another size of the terminal.
func (s *sparing) resize(w, h int) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if w != s.w || h != s.h {
		s.w, s.h, s.cells = w, h, make([]shown, max(0, w*h))
		s.placed = false
	}
}

// Write sends a frame.
func (s *sparing) Write(b []byte) (int, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.out = s.out[:0]
	for rest := b; len(rest) > 0; {
		seq, wide, n, _ := ansi.DecodeSequence(rest, ansi.NormalState, nil)
		if n <= 0 {
			seq, n = rest, len(rest)
		}
		rest = rest[n:]
		switch {
		case wide > 0:
			s.print(seq, wide)
		case len(seq) > 2 && seq[0] == '\x1b' && seq[1] == '[':
			s.control(seq, seq[2:len(seq)-1], seq[len(seq)-1])
		default:
			s.move(seq)
		}
	}
	s.catchUp()
	if _, err := s.to.Write(s.out); err != nil {
		return 0, err
	}
	return len(b), nil
}

// print sends a character, or leaves it out where it stands already. One in the last column is always sent, since the
// terminal's cursor then waits behind it.
func (s *sparing) print(seq []byte, wide int) {
	r, size := utf8.DecodeRune(seq)
	if !s.placed || s.x >= s.w || s.y >= s.h { // wraps, or is somewhere
		s.pass(seq)
		s.placed = false
		return
	}
	at, cell := s.y*s.w+s.x, shownAs(r, s.pen)
	if wide > 1 || size != len(seq) || s.pen.odd {
		s.pass(seq)
		clear(s.cells[max(at-1, 0):min(at+wide+1, len(s.cells))])
		s.x += wide
		return
	}
	if s.x++; s.cells[at] == cell && s.x < s.w {
		s.behind++
		s.left = append(s.left, seq...)
		return
	}
	s.cells[at] = cell
	s.pass(seq)
}

// pass sends something where the renderer's cursor is.
func (s *sparing) pass(seq []byte) {
	s.catchUp()
	s.out = append(s.out, seq...)
}

// catchUp brings the terminal's cursor to the renderer's: by what was left out, or by a jump where that is shorter.
func (s *sparing) catchUp() {
	if s.behind == 0 {
		return
	}
	if jump := ansi.CursorForward(s.behind); len(s.styles)+len(jump) < len(s.left) {
		s.out = append(append(s.out, s.styles...), jump...)
	} else {
		s.out = append(s.out, s.left...)
	}
	s.behind, s.left, s.styles = 0, s.left[:0], s.styles[:0]
}

// jump sends what sets the cursor's column, wherever it was: what was left out then needs no move.
func (s *sparing) jump(seq []byte) {
	s.out = append(append(s.out, s.styles...), seq...)
	s.behind, s.left, s.styles = 0, s.left[:0], s.styles[:0]
}

// style takes a change of the pen.
func (s *sparing) style(seq, parameters []byte) {
	s.pen.take(parameters)
	if s.behind == 0 {
		s.out = append(s.out, seq...)
		return
	}
	s.left = append(s.left, seq...)
	if s.pen == (pen{}) { // whatever came before
		s.styles = append(s.styles[:0], "\x1b[m"...)
	} else {
		s.styles = append(s.styles, seq...)
	}
}
