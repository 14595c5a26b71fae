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

// largestBody is the most bytes of an unpacked body: a card has about 10 kB, one with the longest note and most tags
// 200 kB.
const largestBody = 1 << 20

// largestPacked is the most bytes that such a body may take packed: in version 3 a byte could take up to 15 bits.
const largestPacked = 2 * largestBody

// usual is text that cards often repeat: the preset dictionary of every packed body. Like a migration it is never
// changed once it is released; another dictionary gets another number.
//
//go:embed usual1.txt
var usual []byte

// A body is a DEFLATE stream (RFC 1951). No stream begins with the bytes below: they say that it follows usual.
const (
	withUsual      = "\x07\x02"
	withFixedCodes = "\x07\x01" // version 3: the stream is stored without its beginning, fixedCodes
)

// fixedCodes is the header of the only block of a version 3 body, in hexadecimal (RFC 1951, 3.2.7). It is the same for
// all bodies, so it was not stored.
const fixedCodes = "" +
	"edfd01902449922449feffffffffffffffffffffffffffffff7b6777776577476aaa888888a8647577777676777777777777775777777777" +
	"7776546464565647644447445475557776efeeeeeed6eeeeeeeeeeeeeeeeeeeeeeeeeeeeeeeeeeeeeeeeeeec6eedeeeeeeeed6eeeeeeeeee" +
	"eeeceeeeeeeeeeeeeeeed6eeeeeeeeeeeeeeeeeeeeeeeeeeeed6889a99999987479457556464649547555579867b78b88aaa88b08ab070"

// unpack reads bodies packed by this and every earlier version; the first ones had no preset dictionary.
func unpack(packed []byte) ([]byte, error) {
	from := flate.NewReader(bytes.NewReader(packed))
	if stream, ok := bytes.CutPrefix(packed, []byte(withUsual)); ok {
		from = flate.NewReaderDict(bytes.NewReader(stream), usual)
	} else if stream, ok := bytes.CutPrefix(packed, []byte(withFixedCodes)); ok {
		head, _ := hex.DecodeString(fixedCodes) // a valid constant
		from = flate.NewReaderDict(bytes.NewReader(append(head, stream...)), usual)
	}
	b, err := io.ReadAll(io.LimitReader(from, largestBody+1))
	if err == nil && len(b) > largestBody {
		err = fmt.Errorf("a body of more than %d bytes", largestBody)
	}
	return b, err
}

// packers are reused: one takes over a megabyte. Level 3 packs a card to 80 % of its size in version 3; level 6 saves
// another 6 % in twice the time.
var packers = sync.Pool{New: func() any {
	w, err := flate.NewWriterDict(nil, 3, usual)
	if err != nil {
		panic(err) // 3 is a level
	}
	return w
}}

// pack compresses a body for storage; hashes and exports use the body itself.
func pack(body []byte) []byte {
	out := bytes.NewBuffer(append(make([]byte, 0, len(body)/4+64), withUsual...))
	w := packers.Get().(*flate.Writer)
	defer packers.Put(w)
	w.Reset(out)
	_, _ = w.Write(body) // a buffer takes everything
	_ = w.Close()
	return out.Bytes()
}
