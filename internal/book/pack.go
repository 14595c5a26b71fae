package book

import (
	"bytes"
	"compress/flate"
	"encoding/binary"
	"fmt"
	"io"
	"math/bits"
	"sync"
)

// largestBody is the most that a body may unpack to.
const largestBody = 4 << 20

// unpack reads what pack wrote, and every other DEFLATE stream.
func unpack(packed []byte) ([]byte, error) {
	b, err := io.ReadAll(io.LimitReader(flate.NewReader(bytes.NewReader(packed)), largestBody+1))
	if err == nil && len(b) > largestBody {
		err = fmt.Errorf("a body of more than %d bytes", largestBody)
	}
	return b, err
}

// pack makes a body small; what is hashed and exported is the body itself. It writes DEFLATE (RFC 1951) in one block of
// the fixed codes: a body is some ten thousand bytes that repeat themselves, and building codes for it takes longer
// than finding its repeats, for a tenth of its size.
func pack(body []byte) []byte {
	seen := places.Get().(*[1 << placeBits]int32)
	defer places.Put(seen)
	clear(seen[:])
	out := bitWriter{to: make([]byte, 0, len(body)/2+64)}
	out.put(0b011, 3) // last block, fixed codes
	done := 0         // what stands before it is written
	for at := 0; at+8 <= len(body); {
		slot := &seen[binary.LittleEndian.Uint32(body[at:])*0x9e3779b1>>(32-placeBits)]
		before := int(*slot) - 1
		*slot = int32(at + 1)
		n := 0
		if before >= 0 && at-before <= farthest {
			n = alike(body, before, at)
		}
		if n < shortest {
			at += 1 + (at-done)>>5 // what repeats nothing for long is looked at less closely
			continue
		}
		out.literals(body[done:at])
		out.match(n, at-before)
		at += n
		done = at
	}
	out.literals(body[done:])
	out.put(0, 7) // end of block
	return out.end()
}

const (
	placeBits = 12
	shortest  = 4     // repeat that is worth it
	longest   = 258   // that DEFLATE can say
	farthest  = 32768 // that DEFLATE can look back
)

// places are where four bytes stood last, plus one; reused, as they are larger than what is packed.
var places = sync.Pool{New: func() any { return new([1 << placeBits]int32) }}

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
