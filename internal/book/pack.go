package book

import (
	"bytes"
	"compress/flate"
	_ "embed" // usual1.txt
	"encoding/binary"
	"fmt"
	"io"
	"math/bits"
	"sync"
)

// largestBody is the most that a body may unpack to.
const largestBody = 4 << 20

// usual is what cards of this shop's trade say again and again: bodies are packed as what follows it. Like a migration
// it is never changed once it is out; another one gets another number.
//
//go:embed usual1.txt
var usual []byte

// A packed body is a DEFLATE stream, or these two bytes, as which none begins, and a stream that follows usual.
const withUsual = "\x07\x01"

// unpack reads what pack wrote, and every DEFLATE stream without the usual before it, as earlier books have them.
func unpack(packed []byte) ([]byte, error) {
	stream, follows := bytes.CutPrefix(packed, []byte(withUsual))
	from := flate.NewReader(bytes.NewReader(stream))
	if follows {
		from = flate.NewReaderDict(bytes.NewReader(stream), usual)
	}
	b, err := io.ReadAll(io.LimitReader(from, largestBody+1))
	if err == nil && len(b) > largestBody {
		err = fmt.Errorf("a body of more than %d bytes", largestBody)
	}
	return b, err
}

// pack makes a body small; what is hashed and exported is the body itself. It writes DEFLATE (RFC 1951) in one block of
// the fixed codes: a body is some ten thousand bytes that mostly repeat what is usual, and to build codes for the rest
// would take longer than to find the repeats.
func pack(body []byte) []byte {
	p := packers.Get().(*packer)
	defer packers.Put(p)
	p.seen = *usualSeen()
	p.text = append(append(p.text[:0], usual...), body...)
	text, out := p.text, bitWriter{to: append(make([]byte, 0, len(body)/3+64), withUsual...)}
	out.put(0b011, 3)  // last block, fixed codes
	done := len(usual) // what stands before it is written
	for at := done; at+8 <= len(text); {
		slot := p.seen.slot(text[at:])
		before := int(*slot) - 1
		*slot = int32(at + 1)
		n := 0
		if before >= 0 && at-before <= farthest {
			n = alike(text, before, at)
		}
		if n < shortest {
			at += 1 + (at-done)>>5 // what repeats nothing for long is looked at less closely
			continue
		}
		out.literals(text[done:at])
		out.match(n, at-before)
		at += n
		done = at
	}
	out.literals(text[done:])
	out.put(0, 7) // end of block
	return out.end()
}

// packer is what packing needs, reused: it is larger than what is packed.
type packer struct {
	seen places
	text []byte // the usual and a body
}

var packers = sync.Pool{New: func() any { return new(packer) }}

// places are where four bytes stood last, plus one.
type places [1 << placeBits]int32

func (p *places) slot(text []byte) *int32 {
	return &p[binary.LittleEndian.Uint32(text)*0x9e3779b1>>(32-placeBits)]
}

// usualSeen are the places of the usual.
var usualSeen = sync.OnceValue(func() *places {
	var seen places
	for at := 0; at+8 <= len(usual); at++ {
		*seen.slot(usual[at:]) = int32(at + 1)
	}
	return &seen
})

const (
	placeBits = 13
	shortest  = 4     // repeat that is worth it
	longest   = 258   // that DEFLATE can say
	farthest  = 32768 // that DEFLATE can look back
)

// alike is how many bytes at one place repeat those at an earlier one.
func alike(b []byte, before, at int) int {
	most := min(longest, len(b)-at)
	n := 0
	for n+8 <= most {
		if x := binary.LittleEndian.Uint64(b[before+n:]) ^ binary.LittleEndian.Uint64(b[at+n:]); x != 0 {
			return n + bits.TrailingZeros64(x)/8
		}
		n += 8
	}
	for n < most && b[before+n] == b[at+n] {
		n++
	}
	return n
}

// bitWriter fills bytes from their low ends.
type bitWriter struct {
	to    []byte
	held  uint64
	nHeld uint
}

func (w *bitWriter) put(b uint64, n uint) {
	w.held |= b << w.nHeld
	if w.nHeld += n; w.nHeld >= 32 {
		w.to = binary.LittleEndian.AppendUint32(w.to, uint32(w.held))
		w.held >>= 32
		w.nHeld -= 32
	}
}

func (w *bitWriter) end() []byte {
	for ; w.nHeld > 0; w.nHeld -= min(8, w.nHeld) {
		w.to = append(w.to, byte(w.held))
		w.held >>= 8
	}
	return w.to
}

func (w *bitWriter) literals(b []byte) {
	for _, c := range b {
		w.put(uint64(literal[c].bits), uint(literal[c].n))
	}
}

// match says: n bytes as they stood so far back.
func (w *bitWriter) match(n, back int) {
	w.put(uint64(length[n].bits), uint(length[n].n))
	x := uint(back - 1)
	if x < 4 {
		w.put(uint64(bits.Reverse8(uint8(x))>>3), 5)
		return
	}
	extra := uint(bits.Len(x)) - 2
	code := 2*(extra+1) + x>>extra&1
	w.put(uint64(bits.Reverse8(uint8(code))>>3)|uint64(x&(1<<extra-1))<<5, 5+extra)
}

// code is a symbol as it is written, its extra bits behind it.
type code struct {
	bits uint32
	n    uint8
}

// The fixed codes of RFC 1951, 3.2.6, and the lengths of its 3.2.5.
var literal, length = fixedCodes()

func fixedCodes() (literal [256]code, length [longest + 1]code) {
	for c := range literal {
		literal[c] = fixedCode(c)
	}
	symbol, extra := 257, 0
	for n := 3; n < longest; symbol++ {
		if symbol >= 265 {
			extra = (symbol - 261) / 4
		}
		c := fixedCode(symbol)
		for i := range 1 << extra {
			if n+i < longest {
				length[n+i] = code{c.bits | uint32(i)<<c.n, c.n + uint8(extra)}
			}
		}
		n += 1 << extra
	}
	length[longest] = fixedCode(285)
	return literal, length
}

// fixedCode is a symbol's code, its first bit lowest.
func fixedCode(symbol int) code {
	c, n := symbol+0x30, 8
	switch {
	case symbol >= 280:
		c = symbol - 280 + 0xc0
	case symbol >= 256:
		c, n = symbol-256, 7
	case symbol >= 144:
		c, n = symbol-144+0x190, 9
	}
	return code{bits.Reverse32(uint32(c)) >> (32 - n), uint8(n)}
}
