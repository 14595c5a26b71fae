package crew

import (
	"bufio"
	"errors"
	"io"
	"strings"
	"testing"
)

func TestLine(t *testing.T) {
	in := bufio.NewReaderSize(strings.NewReader("one\r\n"+strings.Repeat("x", 1<<20)+"\n\n two \nlast"), 400)
	for _, want := range []string{"one", "!", "", "two", "last"} {
		got, long, err := Line(in)
		if err != nil || long != (want == "!") || !long && string(got) != want {
			t.Fatalf("%.20q, %v, %v; not %q", got, long, err, want)
		}
	}
	for range 2 {
		if _, _, err := Line(in); !errors.Is(err, io.EOF) {
			t.Fatalf("after the end: %v", err)
		}
	}
}
