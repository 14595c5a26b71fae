package linear

import (
	"bufio"
	"context"
	"io"
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/crew"
	"brazebooth/internal/plain"
	"brazebooth/internal/quantity"
)

// Keeper is the part of the shop's book that a talk needs. Its texts are safe for a terminal.
type Keeper interface {
	// Keep saves a card under a name and says where.
	Keep(ctx context.Context, name string, card *calc.Card) (said string, err error)
	// Trial saves a test bead: what it shows, the verdict ("" to judge by what it shows), and the power source ("" if
	// none was named).
	Trial(ctx context.Context, job calc.Job, seen, verdict, source string) (said string, err error)
	// Pull saves a test piece that was pulled until it broke: its load, kN, and where it broke (sheet, bronze or bond).
	Pull(ctx context.Context, job calc.Job, force float64, broke, source string) (said string, err error)
	// List lists the saved records of a kind, as card, by the beginnings of words, newest first.
	List(ctx context.Context, kind, text string) ([]Entry, error)
	// Load returns the job of a saved card.
	Load(ctx context.Context, id string) (calc.Job, error)
	// Recall returns the job with what a power source's readings and verdicts taught.
	Recall(ctx context.Context, source string, job calc.Job) (calc.Job, error)
	// Measure saves a reading of a power source, with the travel (mm/s) if it was timed, and returns the job with what
	// its readings taught. After an error nothing was saved.
	Measure(ctx context.Context, source string, r calc.Reading, travel float64, job calc.Job) (
		taught calc.Job, said string, err error)
}

// Entry is one saved card. It is an alias, so that a Keeper need not import this package.
type Entry = struct{ ID, Kind, Name, At, Line string }

// Options are the settings of a talk.
type Options struct {
	Units   quantity.System // "": metric
	Comma   bool            // numbers are read out with a decimal comma
	Book    Keeper          // nil: nothing can be saved
	Example calc.Job        // the job that "example" puts on the card
	Title   string          // the name of the example
}

// answer finds the card of a job. Tests ask for the same few cards in every talk and replace answer to compute each
// once.
var answer = calc.Answer

// longestLine is longer than any answer needs to be, in bytes as read.
const longestLine = 400

// Run asks and answers until the input ends, the user quits, or the context ends. All three end without an error; an
// error means that writing failed.
func Run(ctx context.Context, o Options, in io.Reader, out io.Writer) error {
	t := newTalk(ctx, o, out)
	lines := bufio.NewReaderSize(crew.Reader(ctx, in), longestLine)
	t.greet()
	t.start()
	for !t.over && t.voice.err == nil {
		t.voice.prompt(t.at.name(t))
		line, long, err := crew.Line(lines)
		switch {
		case err != nil, ctx.Err() != nil:
			t.voice.write("\n")
			t.leave()
		case long:
			t.refuse("that line is too long to be an answer", "type a short one, or help")
		default:
			t.hear(strings.TrimSpace(plain.Line(string(line), longestLine)))
		}
	}
	t.voice.flush()
	return t.voice.err
}
