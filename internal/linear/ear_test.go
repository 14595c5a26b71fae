package linear

import (
	"context"
	"errors"
	"io"
	"strings"
	"testing"
)

func TestEar(t *testing.T) {
	in := "one\r\n" + strings.Repeat("x", 1<<20) + "\ntwo \x1b[31mred\x00\u202e\n\xff\xfe three\nlast"
	e := newEar(strings.NewReader(in))
	defer e.close()
	for _, want := range []string{"one", "!", "two red", "three", "last"} {
		got, err := e.line(context.Background())
		if want == "!" {
			if !errors.Is(err, errLong) {
				t.Fatalf("a line of a megabyte: %.20q, %v", got, err)
			}
			continue
		}
		if err != nil || got != want {
			t.Fatalf("%q, %v; not %q", got, err, want)
		}
	}
	for range 2 {
		if _, err := e.line(context.Background()); !errors.Is(err, io.EOF) {
			t.Fatalf("after the end: %v", err)
		}
	}
}

// A talk ends with its context while it waits for a line that never comes.
func TestTalkEndsWithItsContext(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	in, _ := io.Pipe()
	var out strings.Builder
	done := make(chan error)
	go func() { done <- Run(ctx, Options{}, in, &out) }()
	cancel()
	if err := <-done; err != nil || !strings.HasSuffix(out.String(), "Goodbye.\n") {
		t.Errorf("%v, %q", err, out.String())
	}
	_ = in.Close()
}

type broken struct{}

func (broken) Write([]byte) (int, error) { return 0, io.ErrClosedPipe }

func TestTalkEndsWhereNobodyHears(t *testing.T) {
	if err := Run(context.Background(), Options{}, strings.NewReader(strings.Repeat("help\n", 100)),
		broken{}); !errors.Is(err, io.ErrClosedPipe) {
		t.Errorf("%v", err)
	}
}
