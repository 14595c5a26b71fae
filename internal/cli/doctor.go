package cli

import (
	"fmt"

	"github.com/spf13/cobra"

	"brazebooth/internal/address"
	"brazebooth/internal/config"
	"brazebooth/internal/plain"
	"brazebooth/internal/shop"
)

// Terminal is what is known about the terminal without asking it.
type Terminal struct {
	In, Out       bool // standard input and output are a terminal
	Places        bool // it can place text: it can be asked, and the screens can open
	Width, Height int  // 0: not known
	Name          string
	Colours       string // how many colours it probably shows
	NoColour      bool   // NO_COLOR is set
	Locale        string // the locale from the environment
	UTF8          bool
	Background    string // dark, light or "" for unknown
	LeastWidth    int    // of the screens
	LeastHeight   int
}

type state string

const (
	fine state = "ok"
	note state = "note" // works; worth knowing
	mend state = "mend" // does not work; must be mended
)

// finding is one line that doctor prints.
type finding struct {
	Area  string `json:"area"`
	Name  string `json:"name"`
	State state  `json:"state"`
	Text  string `json:"text"`
	Do    string `json:"do,omitempty"`
}

// findings collects the lines; area is that of the next ones.
type findings struct {
	area string
	list []finding
}

func (f *findings) add(name string, s state, text, do string) {
	f.list = append(f.list, finding{f.area, name, s, plain.Line(address.Scrub(text), 300), plain.Line(do, 300)})
}

func (f *findings) ok(name, text string) { f.add(name, fine, text, "") }

func (f *findings) wrong(name string, err error) {
	what, hint, _ := shop.Explain(err)
	f.add(name, mend, what, hint)
}

func (d *Deps) doctorCommand() *cobra.Command {
	return withJSON(&cobra.Command{
		Use:   "doctor",
		Short: "What works here, what does not, and what to do about it",
		Long: `Looks at the terminal, the book, the settings, the folders and the server's own key, and says for each
whether it works and, if not, what to do. It changes nothing, and takes a few seconds even when a server does not
answer.

A terminal is asked how wide it draws the characters of the screens, and which background it has; it has two seconds
for its answers. Then come samples of what the screens draw, with what to look for and what to set if one looks wrong.

Exit code 0: usable; 1: something must be mended.`,
		Example: "  brazebooth doctor\n  brazebooth doctor --json",
		Args:    noArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			b := thisBuild()
			f := findings{area: "program"}
			f.ok("version", b.line())
			asked := d.lookTerminal(cmd.Context(), &f)
			d.lookSettings(&f)
			d.lookBook(cmd, &f)
			d.lookFolders(&f)
			d.lookKeys(&f)
			err := d.showFindings(cmd, f.list)
			if asked != nil && !asJSON(cmd) {
				d.showSamples(asked.Background)
			}
			return err
		},
	})
}

// showFindings prints the findings, and returns an error where something must be mended.
func (d *Deps) showFindings(cmd *cobra.Command, list []finding) error {
	broken, area := 0, ""
	for _, x := range list {
		if x.State == mend {
			broken++
		}
	}
	if asJSON(cmd) {
		if err := d.document(1, map[string]any{"usable": broken == 0, "findings": list}); err != nil {
			return err
		}
		list = nil
	}
	for _, x := range list {
		if x.Area != area {
			area = x.Area
			d.say("%s\n", area)
		}
		d.say("  %-4s  %-12s %s\n", x.State, x.Name, x.Text)
		if x.Do != "" {
			d.say("        %-12s → %s\n", "", x.Do)
		}
	}
	if broken > 0 {
		return fmt.Errorf("problems to mend: %d", broken)
	}
	return nil
}

func (d *Deps) lookSettings(f *findings) {
	f.area = "settings"
	if d.Config == "" {
		f.add("file", note, noFolder, folderHint)
		return
	}
	s, err := config.Load(d.Config, d.Env)
	if err != nil {
		f.wrong("file", err)
		return
	}
	f.ok("file", d.Config)
	for _, name := range s.Unknown {
		do := "take it out, or see brazebooth config --help"
		if like := config.Nearest(name); like != "" {
			do = "write " + like
		}
		f.add("key", note, "nothing reads "+name, do)
	}
}
