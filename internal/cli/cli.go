package cli

import (
	"context"
	"errors"
	"io"
	"slices"
	"strings"
	"time"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"brazebooth/calc"
	"brazebooth/internal/near"
	"brazebooth/internal/quantity"
)

// Version of the program.
const Version = "0.1.0"

// Date of that version, for its manual.
const Date = "2026-11-26"

// Deps is what main gives the commands: streams, folders, and how to open the screens.
type Deps struct {
	In       io.Reader // standard input
	Out, Err io.Writer
	Remote   bool // the user is at another machine: no files of this one, no book but the given one
	LookOnly bool // the user may read the book but not change it
	// Fault receives the full error where a user at another machine sees other words; nil drops it.
	Fault   func(error)
	Example calc.Job // what a newcomer sees first
	Title   string   // heading of the example
	// RunScreens opens the screens; nil where there is no terminal for them.
	RunScreens func(ctx context.Context, o ScreenOptions) error
	// RunPlain asks and answers line by line, from In to Out; nil where that is not possible.
	RunPlain func(ctx context.Context, o ScreenOptions) error
	// Serve adds the server's flags to a command and returns what runs it; nil where no server can run.
	Serve func(flags *pflag.FlagSet) func(ctx context.Context, book string) error

	Book       string           // the user's own book, "" where there is no folder for one
	Beside     string           // a file that takes the saves while a book's server cannot be reached, "" for none
	Who, Where string           // who saves, on which machine
	Now        func() time.Time // nil for the machine's clock
	Patient    bool             // standard error is a terminal whose reader may wait: show progress there

	Config   string              // the file of settings, "" where there is no folder for one
	Env      func(string) string // the user's environment, for settings; nil for none
	HostKey  string              // the server's own key where none is named, "" for none
	Terminal func() Terminal     // what is known of the terminal; nil for nothing
	Asking   *Asking             // how the terminal is asked; nil: it is not
	comma    bool                // numbers are shown with a decimal comma
	units    quantity.System     // of the figures that a command shows
	hidden   string              // the book's address that completion must not repeat
}

// ScreenOptions are the options of the screens from the command line and the settings.
type ScreenOptions struct {
	Units    quantity.System
	Book     string // where the book is, "" for none
	Theme    string // one of Themes
	Who      string // who saves
	Comma    bool   // numbers are shown with a decimal comma
	Pictures bool   // ask the terminal whether it shows pictures
}

// Themes are the names of the screens' colours.
func Themes() []string { return settingValues("theme") }

// Run carries out the arguments and returns the exit code: 0 for an answer, 1 for a failure, 2 for wrong use. A stop, a
// refusal and a job without a good setting are answers. A command ends when its answer cannot be written.
func Run(ctx context.Context, args []string, d Deps) int {
	within, stop := context.WithCancel(ctx)
	defer stop()
	out := &outlet{w: d.Out, failed: stop}
	d.Out = out
	asked := completing(args) && !d.Remote
	if asked {
		args = d.hide(args)
	}
	root := New(d)
	if asked {
		teach(root, d.wordCompleters(), d.flagCompleters())
	}
	root.SetArgs(append([]string{}, args...)) // never nil: that would mean the arguments of this process
	root.SetOut(d.Out)
	root.SetErr(d.Err)
	cmd, err := root.ExecuteContextC(within)
	if out.err != nil {
		err = unwritten(out.err)
	}
	switch {
	case err == nil:
		return 0
	case errors.Is(err, errUnread):
		return 1
	}
	units, _ := unitsOf(cmd) // if the units are wrong, that is the error
	return d.report(ctx, err, units, wantsJSON(args))
}

// New builds the command tree.
func New(deps Deps) *cobra.Command {
	d := &deps
	root := &cobra.Command{
		Use:   "brazebooth",
		Short: "Settings for gas metal arc brazing",
		Long: `brazebooth finds settings for gas metal arc brazing: bronze wire in argon on thin, often zinc-coated
sheet. Without a command it opens the screens; the commands give the same answers.

--plain asks the same questions line by line, for a screen reader or a terminal that cannot place text: no cursor
movement, no colour, no drawing; every figure in words, stops and cautions before the figures. It starts by itself in
a terminal that calls itself dumb. Type help there.

Strike a test bead on scrap of the same sheet first, and peel it. Local codes and licensed practice come before
anything that is printed here.`,
		SilenceErrors: true,
		SilenceUsage:  true,
		Args:          noCommand,
		RunE:          func(cmd *cobra.Command, _ []string) error { return d.screens(cmd) },
	}
	root.Flags().String("units", "", unitsUsage)
	root.Flags().String("theme", "auto", "the screens' colours: "+near.Or(Themes()))
	root.Flags().Bool("plain", false, "questions and answers line by line, for a screen reader")
	root.Flags().Bool("pictures", false, "map, cross-section and heat also as pictures (key v), where the terminal "+
		"says that it has Kitty graphics or Sixel")
	root.PersistentFlags().String("book", "", bookUsage)
	root.PersistentFlags().String("decimal", "point", "decimal mark of what is shown: point or comma")
	root.PersistentPreRunE = func(cmd *cobra.Command, _ []string) error { return d.settle(cmd) }
	root.SetFlagErrorFunc(flagError)
	root.SetHelpCommand(helpCommand())
	root.CompletionOptions.DisableDefaultCmd = true // it has its own
	d.addCommands(root)
	return root
}

func (d *Deps) addCommands(root *cobra.Command) {
	for i := range pageCommands {
		root.AddCommand(d.pageCommand(&pageCommands[i]))
	}
	root.AddCommand(d.cardCommand(), d.windowCommand(), d.gapCommand(), d.batchCommand(), d.bookCommand(),
		d.correctCommand(), d.practiceCommand(), d.wireCommand(), d.gaugeCommand(), d.wordsCommand(), d.tablesCommand(),
		d.versionCommand())
	if d.Remote {
		noCompletion(root)
	} else { // about this machine and its user
		root.AddCommand(d.configCommand(), d.completionCommand(), d.doctorCommand())
	}
	if d.Serve != nil {
		root.AddCommand(d.serveCommand())
	}
}

// screens opens the screens, or asks line by line; where neither is possible it prints an example.
func (d *Deps) screens(cmd *cobra.Command) error {
	theme := flagText(cmd, "theme")
	if !slices.Contains(Themes(), theme) {
		return wrong("--theme: there is no theme "+quote(theme), "type "+near.Or(Themes()))
	}
	where, err := d.placeOrNone(cmd) // without a book the screens say so
	if err != nil {
		return err
	}
	o := ScreenOptions{Units: d.units, Book: where, Theme: theme, Who: d.Who, Comma: d.comma,
		Pictures: flagOn(cmd, "pictures")}
	switch plainly := flagOn(cmd, "plain"); {
	case plainly && d.RunPlain == nil:
		return wrong("--plain: questions line by line are not possible here", "see brazebooth --help for the commands")
	case plainly:
		return d.RunPlain(cmd.Context(), o)
	case d.RunScreens == nil:
		return d.example()
	}
	return d.RunScreens(cmd.Context(), o)
}

// NameOf is the name of the command in the arguments, without its own arguments.
func NameOf(args []string) string {
	root := New(Deps{})
	cmd, _, err := root.Find(args)
	if err != nil {
		return "unknown"
	}
	if cmd == root && slices.Contains(args, "--plain") {
		return "plain"
	}
	if name, ok := strings.CutPrefix(cmd.CommandPath(), root.Name()+" "); ok {
		return name
	}
	return "example"
}

// ScreensOf are the options in a command line that opens a guest's screens; false for any other command line, and for a
// wrong one.
func ScreensOf(args []string) (o ScreenOptions, ok bool) {
	root := New(Deps{Remote: true, RunScreens: func(_ context.Context, given ScreenOptions) error {
		o, ok = given, true
		return nil
	}})
	if cmd, _, err := root.Find(args); err != nil || cmd != root {
		return o, false
	}
	root.SetArgs(append([]string{}, args...)) // never nil, as in Run
	root.SetOut(io.Discard)
	root.SetErr(io.Discard)
	_ = root.Execute() // Run reports what is wrong
	return o, ok
}
