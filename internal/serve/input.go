package serve

import (
	"context"
	"io"

	"golang.org/x/time/rate"
)

// input is what a terminal sends: not faster than it may, no paste and no control sequence longer than it may be. A key is
// never lost, only what is too much of a paste.
type input struct {
	ctx   context.Context
	from  io.Reader
	speed *rate.Limiter
	guard guard
	heard func() // called for whatever comes
}

// burst is how many bytes may come at once before the rate counts.
const burst = 8 << 10

func newInput(ctx context.Context, from io.Reader, s *Settings, heard func()) *input {
	return &input{ctx: ctx, from: from, speed: rate.NewLimiter(rate.Limit(s.InputRate), burst), guard: guard{most: s.Paste}, heard: heard}
}

func (i *input) Read(p []byte) (int, error) {
	for {
		n, err := i.from.Read(p[:min(len(p), 1024)])
		if n > 0 {
			i.heard()
			if late := i.speed.WaitN(i.ctx, n); late != nil {
				return 0, io.EOF
			}
		}
		if n = i.guard.sift(p[:n]); n > 0 || err != nil {
			return n, err
		}
	}
}

// guard follows a terminal's byte stream and leaves out what a reader of sequences would have to hoard: the rest of a long
// paste between its two marks, and a sequence without an end.
type guard struct {
	most   int // bytes of a paste
	pasted int
	paste  bool
	state  byte // what the last byte belongs to, one of the states below
	length int  // of the sequence so far
	params [4]byte
}

const (
	ground   = iota
	escaped  // after ESC
	control  // a control sequence, ESC [ parameters final (ECMA-48, 5.4)
	text     // a control string, ESC ] ... until BEL or ESC \ (ECMA-48, 5.6)
	textEnds // ESC within such a string
)

// longestSequence is more than any key's or answer's.
const longestSequence = 256

// sift moves the bytes that stay to the front and returns how many they are.
func (g *guard) sift(p []byte) int {
	n := 0
	for _, b := range p {
		if g.keeps(b) {
			p[n] = b
			n++
		}
	}
	return n
}

func (g *guard) keeps(b byte) bool {
	switch g.state {
	case ground:
		if b == 0x1b {
			g.state, g.length = escaped, 1
			return true
		}
		if g.paste {
			g.pasted++
			return g.pasted <= g.most
		}
		return true
	case escaped:
		g.begin(b)
		return true
	case control:
		return g.inControl(b)
	case textEnds:
		if g.state = text; b == '\\' {
			g.state = ground
		}
		return true
	}
	return g.inText(b)
}

func (g *guard) begin(b byte) {
	switch b {
	case '[':
		g.state, g.length, g.params = control, 0, [4]byte{}
	case ']', 'P', 'X', '^', '_':
		g.state, g.length = text, 0
	case 0x1b:
	default:
		g.state = ground
	}
}

func (g *guard) inControl(b byte) bool {
	switch {
	case b == 0x1b:
		g.state, g.length = escaped, 1
	case b >= 0x40 || b < 0x20: // the final byte
		g.state = ground
		g.mark(b)
	default:
		if g.length++; g.length <= len(g.params) {
			g.params[g.length-1] = b
		}
		return g.length <= longestSequence
	}
	return true
}

// mark notes where a paste begins and ends: ESC [ 200 ~ and ESC [ 201 ~.
func (g *guard) mark(final byte) {
	if final != '~' || g.length != 3 {
		return
	}
	switch string(g.params[:3]) {
	case "200":
		g.paste, g.pasted = true, 0
	case "201":
		g.paste = false
	}
}

func (g *guard) inText(b byte) bool {
	switch b {
	case 0x07, 0x18, 0x1a:
		g.state = ground
	case 0x1b:
		g.state = textEnds
	default:
		g.length++
		return g.length <= longestSequence
	}
	return true
}
