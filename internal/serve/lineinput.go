package serve

import (
	"io"
	"unicode/utf8"

	"brazebooth/internal/plain"
)

// lineInput turns a terminal's keys into lines. A client with a terminal sends each key when it is pressed and does not
// show it. So lineInput echoes and edits like a local line discipline, as far as a user needs it, and without control
// sequences.
type lineInput struct {
	from  io.Reader
	show  io.Writer
	guard guard
	scrap []byte // the guard's output, which is not used; the guard only tells where a sequence ends
	line  []byte // being typed
	ready []byte // whole lines not yet read
	ended bool
	cr    bool // the last key was a carriage return, whose line feed may follow
	shift bool // after ESC O; one more byte belongs to it (ECMA-35, single shift)
}

// longestInput is more bytes than any valid line has; further keys are ignored.
const longestInput = 1 << 10

func newLineInput(from io.Reader, show io.Writer) *lineInput {
	return &lineInput{from: from, show: show, guard: guard{most: longestInput}}
}

func (l *lineInput) Read(p []byte) (int, error) {
	var keys [256]byte
	for len(l.ready) == 0 {
		if l.ended {
			return 0, io.EOF
		}
		n, err := l.from.Read(keys[:])
		for _, b := range keys[:n] {
			l.key(b)
		}
		l.ended = l.ended || err != nil
	}
	n := copy(p, l.ready)
	l.ready = l.ready[n:]
	return n, nil
}

// key takes one byte. The sequence of a cursor key is ignored.
func (l *lineInput) key(b byte) {
	before := l.guard.state
	l.scrap = l.guard.take(l.scrap[:0], b)
	shifted := l.shift
	l.shift = before == escaped && b == 'O'
	if shifted || before >= escaped || l.guard.state >= escaped || l.ended {
		return
	}
	feed := l.cr && b == '\n'
	l.cr = b == '\r'
	switch {
	case feed:
	case b == '\r', b == '\n':
		l.echo("\n")
		l.ready = append(append(l.ready, l.line...), '\n')
		l.line = l.line[:0]
	case b == 0x7f, b == '\b':
		l.rub()
	case b == 0x15: // ctrl+u
		for len(l.line) > 0 {
			l.rub()
		}
	case b == 0x03, b == 0x04 && len(l.line) == 0: // ctrl+c, ctrl+d
		l.ended = true
	case b >= ' ' && len(l.line) < longestInput:
		l.letter(b)
	}
}

// letter adds a byte and shows the character that it completes.
func (l *lineInput) letter(b byte) {
	l.line = append(l.line, b)
	start := lastRune(l.line)
	if utf8.FullRune(l.line[start:]) {
		l.echo(plain.Line(string(l.line[start:]), 2))
	}
}

func (l *lineInput) rub() {
	if len(l.line) == 0 {
		return
	}
	start := lastRune(l.line)
	for range plain.Width(plain.Line(string(l.line[start:]), 2)) {
		l.echo("\b \b")
	}
	l.line = l.line[:start]
}

// lastRune is where the last character begins.
func lastRune(b []byte) int {
	start := len(b) - 1
	for start > 0 && len(b)-start < utf8.UTFMax && !utf8.RuneStart(b[start]) {
		start--
	}
	return start
}

func (l *lineInput) echo(s string) {
	if _, err := io.WriteString(l.show, s); err != nil {
		l.ended = true
	}
}
