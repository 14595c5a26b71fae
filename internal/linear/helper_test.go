package linear

import (
	"bytes"
	"cmp"
	"context"
	"fmt"
	"io"
	"strings"
	"testing"
	"unicode"

	"brazebooth/calc"
)

// desk plays the user in a test: typed text is put into the transcript as a terminal would show it.
type desk struct {
	bytes.Buffer
	lines   []string
	typed   int
	prompts int      // lines that were read after a prompt
	before  []string // the last line before each read
}

// Read returns one line at a time, as a terminal does.
func (d *desk) Read(p []byte) (int, error) {
	text := d.String()
	last := text[strings.LastIndexByte(text, '\n')+1:]
	d.before = append(d.before, last)
	if strings.HasSuffix(last, ": ") {
		d.prompts++
	}
	if d.typed >= len(d.lines) {
		return 0, io.EOF
	}
	line := d.lines[d.typed] + "\n"
	d.typed++
	d.WriteString(line)
	return copy(p, line), nil
}

// talkOf runs a talk with these lines and returns its output. Each line must be short enough for one read.
func talkOf(t testing.TB, o Options, lines ...string) (string, *desk) {
	t.Helper()
	d := &desk{lines: lines}
	if o.Example == (calc.Job{}) {
		o.Example, o.Title = calc.Job{Metal: "galvanized", Gauge: 16, Joint: "lap"}, "example: a lid"
	}
	if err := Run(context.Background(), o, d, d); err != nil {
		t.Fatal(err)
	}
	return d.String(), d
}

// odd is the first character that is neither a letter nor printable ASCII nor a line break, -1 if there is none.
func odd(text string) rune {
	for _, r := range text {
		if r != '\n' && (r < ' ' || r > '~') && !unicode.IsLetter(r) && !unicode.IsMark(r) {
			return r
		}
	}
	return -1
}

// shelf is a book for tests.
type shelf struct {
	names []string
	jobs  []calc.Job
	beads []string // what they show, the verdict, the power source
	read  []calc.Reading
	err   error
}

func (s *shelf) Measure(_ context.Context, source string, r calc.Reading, _ float64, job calc.Job) (
	calc.Job, string, error) {
	if s.err != nil {
		return job, "", s.err
	}
	s.read = append(s.read, r)
	return job, "kept: reading of " + source, nil
}

func (s *shelf) Pull(_ context.Context, _ calc.Job, force float64, broke, source string) (string, error) {
	return fmt.Sprintf("kept: pulled piece of %s, %g kN, broke in the %s", source, force, broke), nil
}

func (s *shelf) Trial(_ context.Context, _ calc.Job, seen, verdict, source string) (string, error) {
	if s.err == nil {
		s.beads = append(s.beads, seen+" "+verdict+" "+source)
	}
	return "kept: a test bead, " + cmp.Or(verdict, "bad"), s.err
}

func (s *shelf) Keep(_ context.Context, name string, card *calc.Card) (string, error) {
	if s.err == nil {
		s.names, s.jobs = append(s.names, name), append(s.jobs, card.Job)
	}
	return "kept: " + name, s.err
}

func (s *shelf) List(_ context.Context, _, text string) ([]Entry, error) {
	var list []Entry
	for i, n := range s.names {
		if strings.HasPrefix(n, text) {
			list = append(list, Entry{ID: string(rune('a' + i)), Name: n, At: "2026-01-02",
				Line: "galvanized 20 ga, lap"})
		}
	}
	return list, s.err
}

func (s *shelf) Load(_ context.Context, id string) (calc.Job, error) {
	return s.jobs[id[0]-'a'], s.err
}

func (s *shelf) Recall(_ context.Context, source string, job calc.Job) (calc.Job, error) {
	job.Phi, job.PhiSigma, job.Readings = calc.Some(3.4), calc.Some(0.1), calc.Some(5)
	return job, s.err
}
