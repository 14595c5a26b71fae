package batch

import (
	"bytes"
	"context"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"brazebooth/internal/deep"
)

// resume continues a file with this content and returns its content afterwards.
func resume(t *testing.T, have, text string, o Options) (string, Tally, error) {
	t.Helper()
	name := filepath.Join(t.TempDir(), "out")
	if err := os.WriteFile(name, []byte(have), 0o600); err != nil {
		t.Fatal(err)
	}
	f, err := os.OpenFile(name, os.O_RDWR, 0)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	tally, err := Resume(context.Background(), strings.NewReader(text), f, o)
	b, failed := os.ReadFile(name)
	if failed != nil {
		t.Fatal(failed)
	}
	return string(b), tally, err
}

// Wherever an output was cut off, resuming gives the same bytes as an undisturbed run.
func TestResumeFromAnyByte(t *testing.T) {
	for _, f := range [...]Format{CSV, JSONLines} {
		text, _ := benchRows(5, f)
		whole, _, err := answers(t, text, testOptions(f))
		if err != nil {
			t.Fatal(err)
		}
		step := max(1, len(whole)/deep.Many(16, 120))
		for at := 0; at <= len(whole); at += step {
			got, tally, err := resume(t, whole[:at], text, testOptions(f))
			if err != nil || got != whole || tally.Kept+tally.Answered != 5 {
				t.Fatalf("%s cut at %d of %d: %+v, %v", f, at, len(whole), tally, err)
			}
		}
	}
}

// Refused rows stay; the batch continues after them.
func TestResumeAfterRefusedRows(t *testing.T) {
	text := "id,metal,gauge,feed,travel\na,hsla,44,5,8\nb,hsla,18ga,5,8\nc,hsla,18ga,5\nd,hsla,18ga,4,8\n"
	o := testOptions(CSV)
	o.KeepGoing = true
	whole, _, err := answers(t, text, o)
	if err != nil {
		t.Fatal(err)
	}
	for _, lines := range []int{2, 3, 4} {
		have := strings.Join(strings.SplitAfter(whole, "\n")[:lines], "")
		if got, tally, err := resume(t, have, text, o); err != nil || got != whole || tally.Kept != lines-1 {
			t.Errorf("%d lines: %+v, %v", lines, tally, err)
		}
	}
}

// An output of another input, or any other file, is refused and not changed.
func TestAnotherOutputIsLeftAlone(t *testing.T) {
	text, _ := benchRows(6, CSV)
	whole, _, err := answers(t, text, testOptions(CSV))
	if err != nil {
		t.Fatal(err)
	}
	asJSON, _ := benchRows(6, JSONLines)
	for _, c := range []struct {
		have, in string
		format   Format
	}{
		{whole, strings.Replace(text, "\n2,", "\n9,", 1), CSV},
		{whole, strings.Replace(text, "id,", "name,", 1), CSV},
		{whole, strings.Join(strings.SplitAfter(text, "\n")[:4], ""), CSV}, // more rows than the input
		{"my notes", text, CSV}, {"my notes\nof the week\n", text, CSV}, {"my notes", asJSON, JSONLines},
		{whole, asJSON, JSONLines},
		{strings.Repeat("x", 17*limit), text, CSV},
	} {
		got, _, err := resume(t, c.have, c.in, testOptions(c.format))
		if !errors.Is(err, ErrOther) || got != c.have {
			t.Errorf("%.40q: %v, changed: %v", c.have, err, got != c.have)
		}
	}
}

func FuzzResume(f *testing.F) {
	text, _ := benchRows(3, CSV)
	f.Add([]byte("id,metal"), 3)
	f.Fuzz(func(t *testing.T, tail []byte, lines int) {
		whole, _, err := answers(t, text, testOptions(CSV))
		if err != nil {
			t.Fatal(err)
		}
		all := strings.SplitAfter(whole, "\n")
		have := strings.Join(all[:max(0, lines)%len(all)], "") + string(tail)
		got, _, err := resume(t, have, text, testOptions(CSV))
		if err == nil && got != whole && !bytes.Contains(tail, []byte("\n")) {
			t.Fatalf("%q became something else", have)
		}
		if err != nil && got != have {
			t.Fatalf("%q was touched: %v", have, err)
		}
	})
}
