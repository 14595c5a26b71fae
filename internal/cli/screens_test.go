package cli

import (
	"os"
	"strings"
	"testing"

	"brazebooth/internal/quantity"
)

// A command line with only options of the screens opens them; any other is a command, or wrong.
func TestScreensOf(t *testing.T) {
	for line, want := range map[string]ScreenOptions{
		"":                              {Units: quantity.Metric, Theme: "auto"},
		"--theme light":                 {Units: quantity.Metric, Theme: "light"},
		"--units inch --decimal comma":  {Units: quantity.Inch, Theme: "auto", Comma: true},
		"--theme=contrast --units=both": {Units: quantity.Both, Theme: "contrast"},
	} {
		got, ok := ScreensOf(strings.Fields(line))
		if !ok || got.Units != want.Units || got.Theme != want.Theme || got.Comma != want.Comma {
			t.Errorf("%q: %+v, %v", line, got, ok)
		}
	}
	for _, line := range []string{"card", "card --units inch", "--theme pink", "--plain", "--help", "--theme",
		"nonsense", "help", "version"} {
		if _, ok := ScreensOf(strings.Fields(line)); ok {
			t.Errorf("%q opens the screens", line)
		}
	}
}

// A guest who types no command has no words at all. The arguments of the server's own process are not meant then.
func TestScreensOfNoWords(t *testing.T) {
	was := os.Args
	defer func() { os.Args = was }()
	os.Args = []string{"brazebooth", "serve", "--listen", "127.0.0.1:0"}
	if _, ok := ScreensOf(nil); !ok {
		t.Error("no command does not open the screens")
	}
}
