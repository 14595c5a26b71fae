package crew

import (
	"bufio"
	"bytes"
	"context"
	"errors"
	"io"
)

// Line is the next line without white space around it, valid until the next call; io.EOF after the last, which may have
// no line break. A line longer than the reader's buffer is skipped, and long is true.
func Line(in *bufio.Reader) (text []byte, long bool, err error) {
	text, err = in.ReadSlice('\n')
	for errors.Is(err, bufio.ErrBufferFull) {
		long = true
		_, err = in.ReadSlice('\n')
	}
	if errors.Is(err, io.EOF) && len(text) > 0 {
		err = nil
	}
	return bytes.TrimSpace(text), long, err
}

// Reader reads from another reader and returns when the context ends, even while the other one waits for input that
// never comes. That read then continues in its goroutine until its source is closed or the program ends, and its result
// is ignored.
func Reader(ctx context.Context, from io.Reader) io.Reader {
	return &reader{ctx: ctx, from: from, room: make([]byte, 64<<10), come: make(chan came, 1)}
}

type reader struct {
	ctx  context.Context
	from io.Reader
	room []byte // buffer of the reading goroutine
	come chan came
	rest []byte // read but not yet returned
	err  error  // returned after rest
}

// came is the result of one read.
type came struct {
	n     int
	err   error
	fault error
}

func (r *reader) Read(p []byte) (int, error) {
	for len(r.rest) == 0 && len(p) > 0 {
		if r.err == nil {
			r.err = r.ctx.Err()
		}
		if r.err != nil { // for good: the other goroutine may still write into room
			return 0, r.err
		}
		go r.fetch()
		select {
		case c := <-r.come:
			if c.fault != nil {
				panic(c.fault)
			}
			r.rest, r.err = r.room[:c.n], c.err
		case <-r.ctx.Done():
			r.err = r.ctx.Err()
		}
	}
	n := copy(p, r.rest)
	r.rest = r.rest[n:]
	return n, nil
}

func (r *reader) fetch() {
	var c came
	defer func() {
		if p := recover(); p != nil {
			c.fault = Fault(p)
		}
		r.come <- c
	}()
	c.n, c.err = r.from.Read(r.room)
}
