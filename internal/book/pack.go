package book

import (
	"bytes"
	"compress/flate"
	_ "embed" // usual1.txt
	"encoding/binary"
	"fmt"
	"io"
	"math/bits"
	"slices"
	"sync"
)

// largestBody is the most that a body may unpack to: a card is some 10 kB, one with the longest note and the most tags that
// a command line takes 200.
const largestBody = 1 << 20

// largestPacked is the most that such a body may take packed: the longest code of a byte has 15 bits.
const largestPacked = 2 * largestBody

// usual is what cards of this shop's trade say again and again: bodies are packed as what follows it. Like a migration
// it is never changed once it is out; another one gets another number.
//
//go:embed usual1.txt
var usual []byte

// A packed body is a DEFLATE stream, or these two bytes, as which none begins, and a stream that follows usual, its
// beginning, which is always the same, left out.
const withUsual = "\x07\x01"

// unpack reads what pack wrote, and every DEFLATE stream without the usual before it, as earlier books have them.
func unpack(packed []byte) ([]byte, error) {
	stream, follows := bytes.CutPrefix(packed, []byte(withUsual))
	from := flate.NewReader(bytes.NewReader(stream))
	if follows {
		from = flate.NewReaderDict(bytes.NewReader(slices.Concat(codes.head, stream)), usual)
	}
	b, err := io.ReadAll(io.LimitReader(from, largestBody+1))
	if err == nil && len(b) > largestBody {
		err = fmt.Errorf("a body of more than %d bytes", largestBody)
	}
	return b, err
}

// pack makes a body small; what is hashed and exported is the body itself. It writes DEFLATE (RFC 1951) in one block of
// codes that suit cards: to build codes for each body would take longer than to find what it repeats.
func pack(body []byte) []byte {
	p := packers.Get().(*packer)
	defer packers.Put(p)
	p.seen = *usualSeen()
	p.text = append(append(p.text[:0], usual...), body...)
	text, out := p.text, bitWriter{to: append(make([]byte, 0, len(body)/4+64), withUsual...)}
	out.put(codes.rest.bits, codes.rest.n)
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
	out.put(codes.end.bits, codes.end.n)
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
		w.put(codes.literal[c].bits, codes.literal[c].n)
	}
}

// match says: n bytes as they stood so far back.
func (w *bitWriter) match(n, back int) {
	w.put(codes.length[n].bits, codes.length[n].n)
	x := uint(back - 1)
	if x < 4 {
		w.put(codes.distance[x].bits, codes.distance[x].n)
		return
	}
	extra := uint(bits.Len(x)) - 2
	c := codes.distance[2*(extra+1)+x>>extra&1]
	w.put(c.bits|uint64(x&(1<<extra-1))<<c.n, c.n+extra)
}
