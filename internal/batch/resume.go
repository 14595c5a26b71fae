package batch

import (
	"bufio"
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"strings"

	"brazebooth/internal/crew"
)

// File is an output that can be continued, such as an *os.File.
type File interface {
	io.ReadWriteSeeker
	Truncate(size int64) error
}

// ErrOther is the error for an output that does not belong to the input.
var ErrOther = errors.New("this output belongs to another input")

// Resume continues an earlier output after its last complete row, if every row of it answers the same row of the input.
// A partly written row is cut off; an output that does not match is not changed.
func Resume(ctx context.Context, in io.Reader, out File, o Options) (Tally, error) {
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	t, err := open(crew.Reader(ctx, in), &o)
	if err != nil {
		return Tally{}, err
	}
	if _, err := out.Seek(0, io.SeekStart); err != nil {
		return Tally{}, err
	}
	kept, end, err := matched(ctx, t, bufio.NewReaderSize(out, 1<<16))
	if err == nil {
		err = out.Truncate(end)
	}
	if err == nil {
		_, err = out.Seek(end, io.SeekStart)
	}
	if err == nil && end == 0 {
		_, err = out.Write(t.head())
	}
	if err != nil {
		return Tally{}, err
	}
	return answer(ctx, stop, t, out, &o, Tally{Kept: kept})
}

// matched compares the complete lines of an output with the rows of the input. It returns the number of rows and the
// offset after the last complete line.
func matched(ctx context.Context, t table, out *bufio.Reader) (rows int, end int64, err error) {
	head := t.head()
	for at := 1; ; at++ {
		line, whole, long, err := lineOf(out, 16*limit)
		switch {
		case long:
			return 0, 0, fmt.Errorf("%w: it has a line longer than any row", ErrOther)
		case errors.Is(err, io.EOF), err == nil && !whole:
			return rows, end, fragment(t, line, end, head)
		case err != nil:
			return 0, 0, err
		case ctx.Err() != nil:
			return 0, 0, ctx.Err()
		}
		end += int64(len(line))
		if at == 1 && head != nil {
			if !bytes.Equal(line, head) {
				return 0, 0, fmt.Errorf("%w: its columns are not those of the input", ErrOther)
			}
			continue
		}
		r, err := t.next()
		if errors.Is(err, io.EOF) {
			return 0, 0, fmt.Errorf("%w: it has more rows, the first at its line %d", ErrOther, at)
		}
		if err != nil {
			return 0, 0, err
		}
		if !t.mine(&r, line) {
			return 0, 0, fmt.Errorf("%w: its line %d is not line %d of the input", ErrOther, at, r.line)
		}
		rows++
	}
}

// fragment returns an error unless the piece after the last complete line may be cut off, because this program wrote
// it. After a complete line that matched, any piece may be cut off.
func fragment(t table, piece []byte, end int64, head []byte) error {
	first := string(head)
	if head == nil {
		first = t.begins()
	}
	if end > 0 || strings.HasPrefix(first, string(piece)) || head == nil && strings.HasPrefix(string(piece), first) {
		return nil
	}
	return fmt.Errorf("%w: it does not begin like an answer", ErrOther)
}
