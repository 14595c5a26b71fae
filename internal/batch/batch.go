// Package batch answers many jobs from a table: rows in, the same rows with their cards out, in the same order, on all
// cores, with a few rows in memory at a time.
//
// A pool reads, computes on all cores and writes in the rows' order (pool.go). Rows are CSV (grid.go) or JSON lines
// (lines.go). A run that continues after a stop first compares the earlier output with the input (resume.go). Every
// figure of a card has its columns (columns.go); a test reports a missing one.
package batch

import (
	"bufio"
	"context"
	"io"
	"strconv"

	"brazebooth/calc"
	"brazebooth/internal/crew"
	"brazebooth/internal/mistake"
)

// Format is the format of the input and the output.
type Format string

// The formats.
const (
	CSV       Format = "csv"
	JSONLines Format = "jsonl"
)

// Options is how a batch is run.
type Options struct {
	Format    Format
	Carry     []string // columns besides id, name and note that are only copied
	KeepGoing bool     // a bad row gets its reason in the output and does not end the batch
	Workers   int      // rows at a time
	Version   string   // of the program, for JSON
	// Solve computes a row's card; source is the power source that the row names, "" for none.
	Solve   func(ctx context.Context, job calc.Job, source string) (calc.Card, error)
	Explain func(error) (what, hint string) // of an error of Solve
	Bad     func(*mistake.Error)            // called for each bad row in turn; may be nil
	Done    func(rows int)                  // called after each row with the number of rows done; may be nil
}

// Tally counts the rows of a batch.
type Tally struct {
	Kept     int // rows that were in the output already
	Answered int
	Bad      int
}

// row is one job of the input.
type row struct {
	line   int
	echo   []byte // its copied part of the output
	job    calc.Job
	source string
	fault  *mistake.Error
}

// fail records the first mistake of a row; column is "" for the whole row.
func (r *row) fail(column, what, hint string) {
	if r.fault == nil {
		r.fault = at(r.line, column, what, hint)
	}
}

// at is a mistake in a line of the input, counted from 1, and in its column, "" for the whole line.
func at(line int, column, what, hint string) *mistake.Error {
	place := "line " + strconv.Itoa(line)
	if column != "" {
		place += ", " + column
	}
	return &mistake.Error{What: place + ": " + what, Hint: hint}
}

// table reads rows of one format and writes their answers.
type table interface {
	// next is the next row, io.EOF after the last. Any other error ends the batch.
	next() (row, error)
	// head is the line above the answers, with its line break; nil for none.
	head() []byte
	// answer and refusal are the lines of the output, with their line breaks.
	answer(r *row, card *calc.Card) ([]byte, error)
	refusal(r *row) []byte
	// mine reports whether a complete line of an earlier output answers this row.
	mine(r *row, line []byte) bool
	// begins is the text with which every line of this format begins below its head.
	begins() string
}

// open reads the head of the input.
func open(in io.Reader, o *Options) (table, error) {
	if o.Format == JSONLines {
		return &lines{choices: newChoices(o), in: bufio.NewReaderSize(in, 1<<16), version: o.Version}, nil
	}
	return newGrid(in, o)
}

// Run answers every row of in on out. The first bad row ends it with a *mistake.Error unless KeepGoing is set; the rows
// before it are written. When the batch has ended or was cancelled, Run does not wait for its input.
func Run(ctx context.Context, in io.Reader, out io.Writer, o Options) (Tally, error) {
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	t, err := open(crew.Reader(ctx, in), &o)
	if err != nil {
		return Tally{}, err
	}
	if _, err := out.Write(t.head()); err != nil {
		return Tally{}, err
	}
	return answer(ctx, stop, t, out, &o, Tally{})
}

// limit is the most bytes of one row.
const limit = 1 << 20

const tooLong = "row longer than a megabyte: a quote that is not closed?"

// A text that is not UTF-8 is refused, since without its invalid bytes it would be another text.
const (
	foreign     = "letters that are not UTF-8"
	foreignHint = "save it as UTF-8: spreadsheets and editors offer that when they save"
)
