package program

import (
	"cmp"
	"os"
	"runtime"
	"strings"

	"github.com/charmbracelet/colorprofile"
	"github.com/charmbracelet/x/term"

	"brazebooth/internal/cli"
	"brazebooth/tui"
)

// terminalHere is what the system and the environment tell about the terminal, without asking it.
func terminalHere() cli.Terminal {
	t := cli.Terminal{In: term.IsTerminal(os.Stdin.Fd()), Out: term.IsTerminal(os.Stdout.Fd()), Name: os.Getenv("TERM"),
		Places: canShow(), NoColour: os.Getenv("NO_COLOR") != "", Background: background(os.Getenv("COLORFGBG"))}
	t.LeastWidth, t.LeastHeight = tui.Least()
	t.Locale, t.UTF8 = locale(os.Getenv)
	for _, f := range [...]*os.File{os.Stdout, os.Stderr, os.Stdin} {
		if w, h, err := term.GetSize(f.Fd()); err == nil && w > 0 {
			t.Width, t.Height = w, h
			break
		}
	}
	t.Colours = cmp.Or(colours[colorprofile.Env(os.Environ())], "none; every mark also has its sign")
	return t
}

var colours = map[colorprofile.Profile]string{colorprofile.TrueColor: "all", colorprofile.ANSI256: "256",
	colorprofile.ANSI: "16"}

// locale is the locale for characters, and whether it is UTF-8.
func locale(env func(string) string) (name string, utf8 bool) {
	for _, key := range [...]string{"LC_ALL", "LC_CTYPE", "LANG"} {
		if name = env(key); name != "" {
			break
		}
	}
	low := strings.ReplaceAll(strings.ToLower(name), "-", "")
	switch runtime.GOOS {
	case "windows", "darwin": // a terminal there is UTF-8 by default
		return name, true
	}
	return name, strings.Contains(low, "utf8")
}

// background reads COLORFGBG, which some terminals set: "15;0" is white on black.
func background(text string) string {
	parts := strings.Split(text, ";")
	switch parts[len(parts)-1] {
	case "0", "1", "2", "3", "4", "5", "6", "8":
		return "dark"
	case "7", "9", "10", "11", "12", "13", "14", "15":
		return "light"
	}
	return ""
}
