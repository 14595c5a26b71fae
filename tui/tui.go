package tui

import (
	"cmp"
	"context"
	"io"
	"sync"
	"time"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/colorprofile"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
)

// Options configure the screens.
type Options struct {
	Solve    func(calc.Job) (calc.Card, error) // nil: calc.Solve
	Window   windowFunc                        // nil: calc.WindowOf
	Gap      gapFunc                           // nil: calc.SolveTimed
	Opening  calc.Job                          // the job to open with; zero: ExampleJob
	Units    quantity.System                   // "": metric
	Comma    bool                              // a decimal comma in numbers
	Profile  colorprofile.Profile              // Unknown: found from Env and the terminal
	Theme    Theme                             // "": ThemeAuto, dark until the terminal answers which background it has
	Env      []string                          // the terminal's environment, KEY=value; nil: the program's own
	Book     Keeper                            // nil: nothing can be saved
	Now      func() time.Time                  // nil: the machine's clock; for the stopwatch only
	FPS      int                               // most frames per second; 0: 120, right for a local terminal
	Walk     bool                              // begin with the walk for newcomers
	Pictures bool                              // ask the terminal whether it shows pictures
	Context  context.Context                   // ends the computations in the background; nil: nothing ends them
	Width    int                               // of a terminal that cannot be asked, in cells; 0: it can be asked
	Height   int
	Leaving  func() // called when the screens are left, which then end when their input does; nil: they end at once

	*computing // nil: whenAsked
}

// New returns the model of the screens.
func New(o Options) tea.Model {
	if o.Solve == nil {
		o.Solve = calc.Solve
	}
	if o.Window == nil {
		o.Window = func(ctx context.Context, job calc.Job, progress func(float64)) (calc.Window, error) {
			return calc.WindowOf(ctx, job, calc.FullWindow, progress)
		}
	}
	if o.Gap == nil {
		o.Gap = calc.SolveTimed
	}
	o.Context = cmp.Or(o.Context, context.Background())
	if o.Now == nil {
		o.Now = time.Now
	}
	o.Units = cmp.Or(o.Units, quantity.Metric)
	o.computing = cmp.Or(o.computing, &whenAsked)
	return newRoot(o)
}

// Run shows the screens until they are left. in and out are the terminal. The error is nil if they were left by a key,
// and tea.ErrInterrupted after ctrl+c from outside.
func Run(ctx context.Context, o Options, in io.Reader, out io.Writer) error {
	_, err := NewProgram(ctx, o, in, out).Run()
	return err
}

// NewProgram is the screens, ready to run. A caller that shows them on another machine sends the tea.WindowSizeMsg of
// that terminal and ends them; signals to this process are then left to the caller.
func NewProgram(ctx context.Context, o Options, in io.Reader, out io.Writer) *tea.Program {
	if o.Context == nil {
		o.Context = ctx
	}
	return tea.NewProgram(New(o), programOptions(ctx, o, in, out)...)
}

func programOptions(ctx context.Context, o Options, in io.Reader, out io.Writer) []tea.ProgramOption {
	fps := o.FPS
	if fps == 0 {
		fps = 120
	}
	list := []tea.ProgramOption{tea.WithContext(ctx), tea.WithInput(in), tea.WithOutput(out), tea.WithFPS(fps)}
	if o.Leaving != nil {
		list = append(list, tea.WithFilter(leaving(o.Leaving)))
	}
	if o.Profile != colorprofile.Unknown {
		list = append(list, tea.WithColorProfile(o.Profile))
	}
	if o.Env != nil {
		list = append(list, tea.WithEnvironment(o.Env))
	}
	if o.Width > 0 && o.Height > 0 {
		list = append(list, tea.WithWindowSize(o.Width, o.Height), tea.WithoutSignalHandler())
	}
	return list
}

// leaving calls tell once when the screens are left, and drops all later messages.
func leaving(tell func()) func(tea.Model, tea.Msg) tea.Msg {
	left, tell := false, sync.OnceFunc(tell)
	return func(_ tea.Model, msg tea.Msg) tea.Msg {
		switch msg.(type) {
		case tea.QuitMsg, tea.InterruptMsg:
			left = true
			tell()
		}
		if left {
			return nil
		}
		return msg
	}
}

// ExampleJob is the job that the screens open with: the lid seam of a new, unused, open rainwater tank in galvanized
// sheet.
func ExampleJob() calc.Job {
	return calc.Job{
		Metal: "galvanized", Gauge: 16, Coating: "G60", Joint: "lap",
		Filler: "cusi3", Wire: calc.Some(0.889), Mode: "dip", Position: "flat",
	}
}

const (
	ExampleTitle = "example: lid seam of a new, unused, open rainwater tank"
	ownTitle     = "your job"
)
