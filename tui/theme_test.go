package tui

import (
	"image/color"
	"regexp"
	"testing"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/colorprofile"

	"brazebooth/calc"
	"brazebooth/tui/canvas"
)

// Every zone has a background of its own. A good point at which another edge is not met does not count as good.
func TestZonesHaveGrounds(t *testing.T) {
	taken := map[canvas.Land]string{}
	for _, zone := range []string{"cold", "hot", "burn-through", "good", "outside"} {
		l := landOf(zone, 50)
		if other, ok := taken[l]; ok {
			t.Errorf("%s is drawn as %s", zone, other)
		}
		taken[l] = zone
	}
	if landOf("good", -1) != canvas.LandOutside || landOf("good", 0) != canvas.LandGood1 || landOf("good",
		fairMargin) != canvas.LandGood2 {
		t.Error("the margin does not tell")
	}
}

// themes are all themes.
var themes = []Theme{canvas.ThemeAuto, canvas.ThemeDark, canvas.ThemeLight, canvas.ThemeContrast, canvas.ThemeNone}

// colourCode matches a colour as it is sent to a terminal, plainCode the styles that every terminal can show without
// colours.
var (
	colourCode = regexp.MustCompile(`\x1b\[(\d;)*(3[0-8]|4[0-8]|9[0-7]|10[0-7])`)
	plainCode  = regexp.MustCompile(`^(\x1b\[([17])?(;7)?(;?(3[0-7]|9[0-7]|38;5;\d+|38;2;\d+;\d+;\d+))?m)?$`)
)

// Each theme shows the colours that it promises: none shows no colour, no theme makes text faint, and a key stands out
// even without colour.
func TestThemesOnTheScreen(t *testing.T) {
	for _, kind := range themes {
		for _, profile := range []colorprofile.Profile{colorprofile.TrueColor, colorprofile.ANSI256,
			colorprofile.ANSI, colorprofile.ASCII} {
			for _, dark := range []bool{true, false} {
				th := newTheme(look{kind: kind, dark: dark, profile: profile})
				for _, p := range []paint{th.plain, th.bold, th.quiet, th.bold, th.good, th.watch, th.stop} {
					if (kind == canvas.ThemeNone || profile == colorprofile.ASCII) && colourCode.MatchString(p.open) {
						t.Errorf("%s, %v: %q has colour", kind, profile, p.open)
					}
					if !plainCode.MatchString(p.open) {
						t.Errorf("%s, %v: %q is more than bold, reverse and a colour", kind, profile, p.open)
					}
				}
				if th.bold == th.plain || th.stop == th.plain || th.watch == th.plain {
					t.Errorf("%s, %v: what should stand out does not", kind, profile)
				}
			}
		}
	}
}

// The terminal's background decides the palette, unless the theme is fixed.
func TestBackgroundPicks(t *testing.T) {
	for _, x := range []struct {
		kind  Theme
		light Theme
	}{{"", canvas.ThemeLight}, {canvas.ThemeAuto, canvas.ThemeLight}, {canvas.ThemeDark, canvas.ThemeDark},
		{canvas.ThemeLight, canvas.ThemeLight}} {
		s := openAt(t, 80, 24, Options{Theme: x.kind, Profile: colorprofile.TrueColor})
		s.send(tea.BackgroundColorMsg{Color: color.White})
		want := newTheme(look{kind: x.light, profile: colorprofile.TrueColor})
		if got := s.root().th; got.good != want.good || got.accent != want.accent {
			t.Errorf("%q on white: good is %q", x.kind, got.good.open)
		}
		s.send(tea.ColorProfileMsg{Profile: colorprofile.ANSI})
		if l := s.root().th.look; l.kind != x.kind || l.dark {
			t.Errorf("%q: the terminal's other answer changes the theme", x.kind)
		}
	}
}

// Every screen can be read by its signs alone: a frame without colour has the same text as one with colour.
func TestThemesShareTheText(t *testing.T) {
	var first string
	for _, kind := range themes {
		s := openAt(t, 80, 24, Options{Theme: kind, Opening: calc.Job{Metal: "galvanized", Gauge: 20}})
		s.press("m")
		if first == "" {
			first = s.text()
		}
		if s.text() != first {
			t.Errorf("%s shows another text", kind)
		}
		if kind == canvas.ThemeNone && colourCode.MatchString(s.m.View().Content) {
			t.Error("the theme without colour has colour")
		}
	}
}
