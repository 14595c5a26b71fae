package linear

import (
	"bufio"
	"context"
	"errors"
	"io"
	"strings"

	"brazebooth/internal/plain"
)

// longestLine is more than any answer needs, in bytes as they come.
const longestLine = 400

var errLong = errors.New("a line that is too long")

// ear reads lines one by one, each only when it is asked for. Waiting ends with the context.
type ear struct {
	ask  chan struct{}
	come chan heard
}

type heard struct {
	line string
	err  error
}

func newEar(in io.Reader) *ear {
	e := &ear{make(chan struct{}), make(chan heard, 1)}
	go func() {
		r := bufio.NewReaderSize(in, longestLine)
		for range e.ask {
			line, err := next(r)
			e.come <- heard{line, err}
		}
	}()
	return e
}

// close ends the reading goroutine, at the latest when its input ends.
func (e *ear) close() { close(e.ask) }

// line is the next line, cleaned; io.EOF at the end, errLong for one that was thrown away.
func (e *ear) line(ctx context.Context) (string, error) {
	if err := ctx.Err(); err != nil {
		return "", err
	}
	e.ask <- struct{}{}
	select {
	case h := <-e.come:
		return h.line, h.err
	case <-ctx.Done():
		return "", ctx.Err()
	}
}

// next reads a line; the last one may have no line break.
func next(r *bufio.Reader) (string, error) {
	b, err := r.ReadSlice('\n')
	if errors.Is(err, bufio.ErrBufferFull) {
		for errors.Is(err, bufio.ErrBufferFull) {
			_, err = r.ReadSlice('\n')
		}
		return "", errLong
	}
	if err != nil && len(b) == 0 {
		return "", err
	}
	return strings.TrimSpace(plain.Line(string(b), longestLine)), nil
}
