package program

import (
	"bytes"
	"io"
	"os"
	"slices"
	"time"
)

// keyboard is the terminal's input for the screens. Between the two marks of a paste the reader of keys takes
// everything for text, so that after a paste whose end never came no key would do anything, not even ctrl+c. One that
// comes by itself, a while after all else, was pressed and not pasted: it ends such a paste. A ctrl+c in the middle of
// a paste is text, lest what is pasted end the program and the rest of it run in the shell.
type keyboard struct {
	*os.File
	follow pasteMarks
	last   time.Time // when something came
}

// alone is how long after all else a key must come to be by itself.
const alone = 250 * time.Millisecond

func (k *keyboard) Read(p []byte) (int, error) {
	n, err := k.File.Read(p)
	late := time.Since(k.last) > alone
	k.last = time.Now()
	return k.follow.pass(p, n, late), err
}

// terminalInput is standard input as the screens read it.
func terminalInput(in *os.File) io.Reader {
	if !keysAreBytes {
		return in
	}
	return &keyboard{File: in}
}

var (
	pasteBegins = []byte("\x1b[200~")
	pasteEnds   = []byte("\x1b[201~")
	// stopKeys are the ways in which terminals send ctrl+c: as a byte, or as a number with its shift keys.
	stopKeys = []string{"\x03", "\x1b[99;5u", "\x1b[27;5;99~"}
)

// pasteMarks follows whether a paste is open.
type pasteMarks struct {
	open bool
	tail []byte // of what came before: a mark may come in pieces
}

// pass looks at the n bytes that were read into p and returns how many there are then: more where the end of a paste
// was put before a ctrl+c that came alone.
func (m *pasteMarks) pass(p []byte, n int, late bool) int {
	if m.open && late && slices.Contains(stopKeys, string(p[:n])) && n+len(pasteEnds) <= len(p) {
		copy(p[len(pasteEnds):], p[:n])
		copy(p, pasteEnds)
		m.open, m.tail = false, m.tail[:0]
		return n + len(pasteEnds)
	}
	seen := append(m.tail, p[:n]...)
	begin, end := bytes.LastIndex(seen, pasteBegins), bytes.LastIndex(seen, pasteEnds)
	switch {
	case begin > end:
		m.open = true
	case end > begin:
		m.open = false
	}
	m.tail = append(m.tail[:0], seen[max(0, len(seen)-len(pasteEnds)+1):]...)
	return n
}
