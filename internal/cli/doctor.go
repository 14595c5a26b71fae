package cli

import (
	"fmt"

	"github.com/spf13/cobra"

	"brazebooth/internal/address"
	"brazebooth/internal/config"
	"brazebooth/internal/plain"
)

// Terminal is what can be known of the terminal without asking it: an answer to a question may never come.
type Terminal struct {
	In, Out       bool // standard input and output are one
	Width, Height int  // 0: not known
	Name          string
	Colours       string // the most that it is believed to show
	NoColour      bool   // NO_COLOR is set
	Locale        string // what the environment says of letters
	UTF8          bool
	Background    string // dark, light or "" where nothing tells
	LeastWidth    int    // of the screens
	LeastHeight   int
}

// state is how a thing stands.
type state string

const (
	fine state = "ok"
	note state = "note" // works; worth knowing
	mend state = "mend" // must be mended
)

// finding is one line of doctor.
type finding struct {
	Area  string `json:"area"`
	Name  string `json:"name"`
	State state  `json:"state"`
	Text  string `json:"text"`
	Do    string `json:"do,omitempty"`
}

// findings collects them.
type findings struct {
	area string
	list []finding
}

func (f *findings) add(name string, s state, text, do string) {
	f.list = append(f.list, finding{f.area, name, s, plain.Line(address.Scrub(text), 300), plain.Line(do, 300)})
}

func (d *Deps) doctorCommand() *cobra.Command {
	var asJSON bool
	cmd := &cobra.Command{
		Use:   "doctor",
		Short: "What works here, what does not, and what to do about it",
		Long: `Looks at the terminal, the book, the settings, the folders and the server's own key, and says of each whether it works and what to do where
it does not. It changes nothing, asks the terminal nothing, and is through in a few seconds also where a server is away.

Exit code 0: usable; 1: something must be mended.`,
		Example: "  brazebooth doctor\n  brazebooth doctor --json",
		Args:    noArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			var f findings
			d.lookProgram(&f)
			d.lookTerminal(&f)
			d.lookSettings(&f)
			d.lookBook(cmd, &f)
			d.lookFolders(&f)
			d.lookKeys(&f)
			return d.showFindings(f.list, asJSON)
		},
	}
	cmd.Flags().BoolVar(&asJSON, "json", false, "JSON")
	return cmd
}

// showFindings prints them, and errs where something must be mended.
func (d *Deps) showFindings(list []finding, asJSON bool) error {
	broken := 0
	for _, x := range list {
		if x.State == mend {
			broken++
		}
	}
	if asJSON {
		if err := d.encode(map[string]any{"schema": 1, "version": Version, "usable": broken == 0, "findings": list}); err != nil {
			return err
		}
	} else if err := d.sayFindings(list); err != nil {
		return err
	}
	if broken > 0 {
		return fmt.Errorf("to be mended: %d", broken)
	}
	return nil
}

func (d *Deps) sayFindings(list []finding) error {
	area := ""
	for _, x := range list {
		if x.Area != area {
			area = x.Area
			if err := d.say("%s\n", area); err != nil {
				return err
			}
		}
		if err := d.say("  %-4s  %-12s %s\n", x.State, x.Name, x.Text); err != nil {
			return err
		}
		if x.Do != "" {
			if err := d.say("        %-12s → %s\n", "", x.Do); err != nil {
				return err
			}
		}
	}
	return nil
}

func (d *Deps) lookProgram(f *findings) {
	f.area = "program"
	b := thisBuild()
	f.add("version", fine, b.line(), "")
}

func (d *Deps) lookSettings(f *findings) {
	f.area = "settings"
	if d.Config == "" {
		f.add("file", note, "no folder for settings was found", "set XDG_CONFIG_HOME, or HOME, to a folder that is there; the environment works: BRAZEBOOTH_UNITS=inch")
		return
	}
	s, err := config.Load(d.Config, d.Env)
	if err != nil {
		what, hint, _ := explain(err)
		f.add("file", mend, what, hint)
		return
	}
	f.add("file", fine, d.Config, "")
	for _, name := range s.Unknown {
		do := "take it out, or see brazebooth config --help"
		if like := config.Nearest(name); like != "" {
			do = "write " + like
		}
		f.add("key", note, "nothing reads "+name, do)
	}
}
