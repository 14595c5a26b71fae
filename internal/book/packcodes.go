package book

import "math/bits"

// How many bits each symbol takes, in hexadecimal: the 256 bytes, the end and the 29 lengths, then the 30 distances. They
// are Huffman's for 288 cards of all metals, joints and modes, with something left for every symbol that these lack. Like
// the usual text they are never changed once they are out.
const (
	literalBits = "ffffffffffffffffffffffffffffffff7b9bbbba9bbb895954444444549abbbbb9b9bbbbbbbbbbbbbbbbabbbbbbbbbb9" +
		"b8a89899a9ab88988b8888aabaabb9bbddddddddaddddddddddddddddddddddddddddddddddddddddddcdddadddddddd" +
		"ddaddddddddddddcddddddddddddddddddadddddddddddddddddddddddddddddac45666666678788a7aaa898989aa7"
	distanceBits = "8aaaaa79877878754554443544343a"
)

// code is a symbol as it is written, its first bit lowest, its extra bits behind it.
type code struct {
	bits uint64
	n    uint
}

// codes are pack's, and what a block of them begins with: its whole bytes, and the bits that are left.
var codes = newCodes()

type codeTable struct {
	literal  [256]code
	end      code
	length   [longest + 1]code
	distance []code
	head     []byte
	rest     code
}

func newCodes() *codeTable {
	t := &codeTable{distance: canonical(distanceBits)}
	symbols := canonical(literalBits)
	copy(t.literal[:], symbols)
	t.end = symbols[256]
	symbol, extra := 257, 0
	for n := 3; n < longest; symbol++ { // RFC 1951, 3.2.5
		if symbol >= 265 {
			extra = (symbol - 261) / 4
		}
		for i := range 1 << extra {
			if n+i < longest {
				t.length[n+i] = code{symbols[symbol].bits | uint64(i)<<symbols[symbol].n, symbols[symbol].n + uint(extra)}
			}
		}
		n += 1 << extra
	}
	t.length[longest] = symbols[285]
	t.begin()
	return t
}

// begin writes the head of a block: RFC 1951, 3.2.7, each length as four bits.
func (t *codeTable) begin() {
	var w bitWriter
	w.put(0b101, 3) // last block, codes of its own
	w.put(uint64(len(literalBits)-257), 5)
	w.put(uint64(len(distanceBits)-1), 5)
	w.put(19-4, 4)
	for i := range 19 {
		if i < 3 { // the signs for repeated lengths, which are not used
			w.put(0, 3)
			continue
		}
		w.put(4, 3)
	}
	for _, c := range literalBits + distanceBits {
		w.put(uint64(bits.Reverse8(digit(c))>>4), 4)
	}
	for ; w.nHeld >= 8; w.nHeld -= 8 {
		w.to = append(w.to, byte(w.held))
		w.held >>= 8
	}
	t.head, t.rest = w.to, code{w.held, w.nHeld}
}

// canonical are the codes of symbols of so many bits each: RFC 1951, 3.2.2.
func canonical(sizes string) []code {
	list := make([]code, len(sizes))
	next := uint16(0)
	for size := uint8(1); size < 16; size++ {
		for i, c := range sizes {
			if digit(c) == size {
				list[i] = code{uint64(bits.Reverse16(next) >> (16 - size)), uint(size)}
				next++
			}
		}
		next <<= 1
	}
	return list
}

func digit(c rune) uint8 {
	if c >= 'a' {
		return uint8(c-'a') + 10
	}
	return uint8(c - '0')
}
