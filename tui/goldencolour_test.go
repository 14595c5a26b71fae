package tui

import (
	"strings"
	"testing"

	"github.com/charmbracelet/colorprofile"
	"github.com/charmbracelet/x/exp/golden"

	"brazebooth/tui/canvas"
)

// The bytes sent for a card and for a map in every number of colours, on dark and on light; \e is the escape character.
func TestGoldenColours(t *testing.T) {
	for _, profile := range []colorprofile.Profile{colorprofile.TrueColor, colorprofile.ANSI256, colorprofile.ANSI,
		colorprofile.ASCII} {
		for _, theme := range []Theme{canvas.ThemeDark, canvas.ThemeLight} {
			t.Run(strings.ToLower(profile.String())+"-"+string(theme), func(t *testing.T) {
				s := openAt(t, 80, 24, Options{Profile: profile, Theme: theme})
				s.press("enter", "enter", "enter", "enter")
				card := s.m.View().Content
				s.press("m")
				golden.RequireEqual(t, strings.ReplaceAll(card+"\n"+s.m.View().Content+"\n", "\x1b", `\e`))
			})
		}
	}
}
