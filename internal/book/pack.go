package book

import (
	"bytes"
	"compress/flate"
	_ "embed" // usual1.txt
	"encoding/hex"
	"fmt"
	"io"
	"sync"
)

// largestBody is the most bytes that a body may unpack to: a card is some 10 kB, one with the longest note and the most
// tags that a command line takes 200.
const largestBody = 1 << 20

// largestPacked is the most bytes that such a body may take packed: in version 3 a byte could take up to 15 bits.
const largestPacked = 2 * largestBody

// usual is what cards say again and again, the preset dictionary of every packed body. Like a migration it is never
// changed once it is out; another one gets another number.
//
//go:embed usual1.txt
var usual []byte

// A body is a DEFLATE stream (RFC 1951). No stream begins with the bytes below: they say that it follows usual.
const (
	withUsual      = "\x07\x02"
	withFixedCodes = "\x07\x01" // version 3: the stream is without its beginning, fixedCodes
)

// fixedCodes is the head of the one block that a body of version 3 consists of, in hexadecimal (RFC 1951, 3.2.7): the
// same for all bodies, so it was kept in none.
const fixedCodes = "" +
	"edfd01902449922449feffffffffffffffffffffffffffffff7b6777776577476aaa888888a8647577777676777777777777775777777777" +
	"7776546464565647644447445475557776efeeeeeed6eeeeeeeeeeeeeeeeeeeeeeeeeeeeeeeeeeeeeeeeeeec6eedeeeeeeeed6eeeeeeeeee" +
	"eeeceeeeeeeeeeeeeeeed6eeeeeeeeeeeeeeeeeeeeeeeeeeeed6889a99999987479457556464649547555579867b78b88aaa88b08ab070"

// unpack reads what pack wrote, here and in every earlier version: the first ones knew no usual.
func unpack(packed []byte) ([]byte, error) {
	from := flate.NewReader(bytes.NewReader(packed))
	if stream, ok := bytes.CutPrefix(packed, []byte(withUsual)); ok {
		from = flate.NewReaderDict(bytes.NewReader(stream), usual)
	} else if stream, ok := bytes.CutPrefix(packed, []byte(withFixedCodes)); ok {
		head, _ := hex.DecodeString(fixedCodes) // it is hexadecimal
		from = flate.NewReaderDict(bytes.NewReader(append(head, stream...)), usual)
	}
	b, err := io.ReadAll(io.LimitReader(from, largestBody+1))
	if err == nil && len(b) > largestBody {
		err = fmt.Errorf("a body of more than %d bytes", largestBody)
	}
	return b, err
}

// packers are reused: one takes over a megabyte. Level 3 packs a card to 80 % of what version 3 came to; level 6 saves
// another 6 % for twice the time.
var packers = sync.Pool{New: func() any {
	w, err := flate.NewWriterDict(nil, 3, usual)
	if err != nil {
		panic(err) // 3 is a level
	}
	return w
}}

// pack makes a body small; what is hashed and exported is the body itself.
func pack(body []byte) []byte {
	out := bytes.NewBuffer(append(make([]byte, 0, len(body)/4+64), withUsual...))
	w := packers.Get().(*flate.Writer)
	defer packers.Put(w)
	w.Reset(out)
	_, _ = w.Write(body) // a buffer takes everything
	_ = w.Close()
	return out.Bytes()
}
