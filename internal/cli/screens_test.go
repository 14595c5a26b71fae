package cli

import (
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
