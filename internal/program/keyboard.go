package program

import (
	"bytes"
	"io"
	"os"
	"runtime"
	"slices"
	"time"
)

// keyboard is the terminal's input for the screens. Between the two marks of a paste the key reader takes everything
// for text, so that after a paste without an end no key would work, not even ctrl+c. A ctrl+c that comes alone, some
// time after other input, was pressed and not pasted: it ends such a paste. A ctrl+c within a paste is text; otherwise
// it would end the program, and the rest of the paste would run in the shell.
type keyboard struct {
	*os.File
	follow pasteMarks
	last   time.Time // time of the last input
}

// alone is how long after other input a key must come to count as pressed alone.
const alone = 250 * time.Millisecond

func (k *keyboard) Read(p []byte) (int, error) {
	n, err := k.File.Read(p)
	late := time.Since(k.last) > alone
	k.last = time.Now()
	return k.follow.pass(p, n, late), err
}

// terminalInput is standard input as the screens read it.
func terminalInput(in *os.File) io.Reader {
	if runtime.GOOS == "windows" { // a console sends keys as events, and its own file must be read
		return in
	}
	return &keyboard{File: in}
}

var (
	pasteBegins = []byte("\x1b[200~")
	pasteEnds   = []byte("\x1b[201~")
	// stopKeys are the ways in which terminals send ctrl+c: as a byte, or as a number with its modifiers.
	stopKeys = []string{"\x03", "\x1b[99;5u", "\x1b[27;5;99~"}
)

// pasteMarks tracks whether a paste is open.
type pasteMarks struct {
	open bool
	tail []byte // end of the earlier input: a mark may come in pieces
}

// pass checks the n bytes that were read into p and returns their new number, which is greater if it put the end of a
// paste before a ctrl+c that came alone.
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
