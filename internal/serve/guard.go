package serve

import (
	"bytes"
	"unicode/utf8"
)

// guard filters a terminal's input so that the key reader behind it never has to store much: it drops the excess of a
// long paste, between its two marks, and the rest of a sequence without an end. For that it must see every beginning of
// a paste that the reader sees. So it makes everything invalid that the reader may take for a mark but terminals do not
// write: odd spellings of the mark, one-byte control characters of the C1 set, and keys written as numbers, which the
// reader would join. The output is never longer than the input.
type guard struct {
	most   int // most bytes of a paste
	pasted int
	paste  bool
	state  byte   // what the last byte belongs to, one of the constants below
	length int    // of the sequence so far
	params []byte // of a control sequence
	held   []byte // an incomplete character, or an incomplete mark of a paste's end
}

const (
	ground    = iota
	character // of more than one byte (RFC 3629)
	escaped   // after ESC; this and the following states are in a sequence
	control   // a control sequence, ESC [ parameters final (ECMA-48, 5.4)
	command   // an operating system command, ESC ] ... until BEL or ESC \ (ECMA-48, 8.3.89)
	text      // another control string, ESC P ... until ESC \ (ECMA-48, 5.6)
	ending    // perhaps the end of a paste
)

const (
	longestControl = 64  // bytes of parameters; more than any key's or answer's
	longestText    = 256 // bytes of a control string; more than any answer's
	broken         = 0   // replaces bytes that are not a character
	spoiled        = 'y' // final byte that makes a control sequence meaningless
)

var pasteEnds = []byte("\x1b[201~")

// rest ends an incomplete sequence when no more bytes come.
func (g *guard) rest() {
	if g.state != ending {
		g.state, g.held = ground, g.held[:0]
	}
}

func (g *guard) sift(out, in []byte) []byte {
	for _, b := range in {
		out = g.take(out, b)
	}
	return out
}

func (g *guard) take(out []byte, b byte) []byte {
	switch g.state {
	case character:
		return g.inCharacter(out, b)
	case escaped:
		return g.afterEscape(out, b)
	case control:
		return g.inControl(out, b)
	case command, text:
		return g.inText(out, b)
	case ending:
		return g.inEnding(out, b)
	}
	return g.onGround(out, b)
}

func (g *guard) onGround(out []byte, b byte) []byte {
	g.state = ground
	switch {
	case b == 0x1b && g.paste:
		g.state, g.held = ending, append(g.held[:0], b)
		return out
	case b == 0x1b:
		g.state = escaped
	case b >= 0x80:
		g.state, g.held = character, append(g.held[:0], b)
		if b < 0xc2 || b > 0xf4 {
			return g.spoil(out)
		}
		return out
	case g.paste && (b < 0x20 && b != '\t' && b != '\r' && b != '\n' || b == 0x7f):
		return out
	}
	return g.put(out, b)
}

// put appends bytes, within a paste only up to its limit.
func (g *guard) put(out []byte, more ...byte) []byte {
	if g.paste {
		if g.pasted += len(more); g.pasted > g.most {
			return out
		}
	}
	return append(out, more...)
}

// spoil replaces bytes that are not a character, so that the bytes before and after them do not join.
func (g *guard) spoil(out []byte) []byte {
	g.state, g.held = ground, g.held[:0]
	if g.paste {
		return out
	}
	return append(out, broken)
}

func (g *guard) inCharacter(out []byte, b byte) []byte {
	if b < 0x80 || b > 0xbf {
		return g.onGround(g.spoil(out), b)
	}
	g.held = append(g.held, b)
	if !utf8.FullRune(g.held) {
		return out
	}
	if r, n := utf8.DecodeRune(g.held); n != len(g.held) || r < 0xa0 {
		return g.spoil(out)
	}
	g.state = ground
	return g.put(out, g.held...)
}

func (g *guard) afterEscape(out []byte, b byte) []byte {
	switch b {
	case '[':
		g.state, g.length, g.params = control, 0, g.params[:0]
	case ']':
		g.state, g.length = command, 0
	case 'P', 'X', '^', '_':
		g.state, g.length = text, 0
	default:
		return g.onGround(out, b)
	}
	return append(out, b)
}

func (g *guard) inControl(out []byte, b byte) []byte {
	switch {
	case b < 0x20:
		return g.onGround(out, b)
	case b > 0x7e:
		b = spoiled
	case b < 0x40:
		if g.length++; g.length > longestControl {
			return out
		}
		g.params = append(g.params, b)
		return append(out, b)
	}
	g.state = ground
	return append(out, g.final(b))
}

// final is the last byte of a control sequence: b, or spoiled. ESC [ 200 ~ begins a paste.
func (g *guard) final(b byte) byte {
	switch {
	case g.length > longestControl, b == '_':
		return spoiled
	case b == '~' && string(g.params) == "200":
		g.paste, g.pasted = true, 0
	case b == '~' && string(g.params) != "201" && !g.plainKey():
		return spoiled
	}
	return b
}

// plainKey reports whether the parameters are those of a key as terminals write it: numbers, the first with one to
// three digits and not that of a paste's mark.
func (g *guard) plainKey() bool {
	first := g.params
	if i := bytes.IndexAny(first, ";:"); i >= 0 {
		first = first[:i]
	}
	if len(first) == 0 || len(first) > 3 || first[0] == '0' || string(first) == "200" || string(first) == "201" {
		return false
	}
	return len(bytes.Trim(g.params, "0123456789;:")) == 0
}

func (g *guard) inText(out []byte, b byte) []byte {
	switch {
	case b == 0x1b, b == 0x18, b == 0x1a, b == 0x07 && g.state == command:
		return g.onGround(out, b)
	case b >= 0x80:
		return out
	}
	if g.length++; g.length > longestText {
		return out
	}
	return append(out, b)
}

// inEnding passes on the complete mark that ends a paste, even if text was dropped before; anything else is pasted
// text.
func (g *guard) inEnding(out []byte, b byte) []byte {
	if b != pasteEnds[len(g.held)] {
		rest := bytes.Clone(g.held[1:])
		g.state, g.held = ground, g.held[:0]
		return g.onGround(g.put(out, rest...), b)
	}
	if g.held = append(g.held, b); len(g.held) < len(pasteEnds) {
		return out
	}
	g.paste, g.state, g.held = false, ground, g.held[:0]
	return append(out, pasteEnds...)
}
