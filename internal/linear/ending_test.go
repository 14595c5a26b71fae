package linear

import (
	"context"
	"errors"
	"io"
	"strings"
	"testing"
)

// A line that is too long is refused, and the talk goes on with the next one.
func TestLongLine(t *testing.T) {
	var out strings.Builder
	in := strings.NewReader(strings.Repeat("x", 1<<20) + "\nunits \x1b[31minch\x00\u202e\nquit")
	err := Run(context.Background(), Options{}, in, &out)
	if err != nil || !strings.Contains(out.String(), "too long") ||
		!strings.HasSuffix(out.String(), "Units: inch.\nmetal: Goodbye.\n") {
		t.Errorf("%v, %q", err, out.String())
	}
}

// A talk that waits for a line ends when its context ends.
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

func TestTalkEndsWhenOutputFails(t *testing.T) {
	if err := Run(context.Background(), Options{}, strings.NewReader(strings.Repeat("help\n", 100)),
		broken{}); !errors.Is(err, io.ErrClosedPipe) {
		t.Errorf("%v", err)
	}
}
