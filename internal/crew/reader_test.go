package crew_test

import (
	"bytes"
	"context"
	"errors"
	"io"
	"strings"
	"testing"
	"testing/iotest"

	"brazebooth/internal/crew"
)

func TestReaderPassesAllOn(t *testing.T) {
	text := strings.Repeat("a bead of bronze\n", 20_000)
	for name, from := range map[string]io.Reader{
		"whole": strings.NewReader(text), "halves": iotest.HalfReader(strings.NewReader(text)),
		"the end with the data": iotest.DataErrReader(strings.NewReader(text)),
		"one byte":              iotest.OneByteReader(strings.NewReader(text)),
	} {
		if got, err := io.ReadAll(crew.Reader(t.Context(), from)); err != nil || string(got) != text {
			t.Errorf("%s: %d bytes of %d, %v", name, len(got), len(text), err)
		}
	}
	broken := errors.New("the disk is gone")
	got, err := io.ReadAll(crew.Reader(t.Context(), io.MultiReader(strings.NewReader("before"),
		iotest.ErrReader(broken))))
	if string(got) != "before" || !errors.Is(err, broken) {
		t.Errorf("%q, %v", got, err)
	}
}

// A read that never returns does not block a caller whose context has ended, and late input is never mixed into earlier
// input.
func TestReaderGivesUp(t *testing.T) {
	ctx, stop := context.WithCancel(t.Context())
	in, late := io.Pipe()
	r := crew.Reader(ctx, in)
	go func() {
		_, _ = late.Write([]byte("first"))
		stop()
	}()
	got, err := io.ReadAll(r)
	if !errors.Is(err, context.Canceled) || !bytes.HasPrefix([]byte("first"), got) {
		t.Errorf("%q, %v", got, err)
	}
	_ = late.Close()
	if n, err := r.Read(make([]byte, 8)); n != 0 || !errors.Is(err, context.Canceled) {
		t.Errorf("afterwards %d bytes, %v", n, err)
	}
}

func TestReaderPanicsInTheCaller(t *testing.T) {
	defer func() {
		if err, ok := recover().(error); !ok || !strings.HasPrefix(err.Error(), "no such wire") {
			t.Errorf("the caller got %v", err)
		}
	}()
	_, _ = crew.Reader(t.Context(), torn{}).Read(make([]byte, 8))
	t.Error("Read came back")
}

type torn struct{}

func (torn) Read([]byte) (int, error) { panic("no such wire") }
