package tui

import (
	"image/color"
	"strings"

	"charm.land/lipgloss/v2"
	"github.com/charmbracelet/colorprofile"
)

// paint is a style boiled down to the bytes before and after a text. Building a frame then only
// joins strings.
type paint struct{ open, close string }

func newPaint(s lipgloss.Style) paint {
	open, end, ok := strings.Cut(s.Render("x"), "x")
	if !ok {
		return paint{}
	}
	return paint{open, end}
}

// theme holds the styles of one session: one bronze accent, three state colours and quiet text. A
// state always shows a sign or a word too; see mark.
type theme struct {
	plain, bold, quiet paint
	accent, strong     paint // bronze; strong is bold besides
	good, watch, stop  paint
	dark               bool
	profile            colorprofile.Profile
}

// newTheme builds the styles for a background and a colour profile. In sixteen colours the
// terminal's own palette decides, so only those of its colours are used that are readable on that
// background.
func newTheme(dark bool, profile colorprofile.Profile) theme {
	pick := func(light, night [3]string) color.Color {
		c := light
		if dark {
			c = night
		}
		return shade(profile, c)
	}
	bronze := pick([3]string{"", "94", "#8a5210"}, [3]string{"3", "173", "#d0935a"})
	green := pick([3]string{"2", "22", "#1f6f3a"}, [3]string{"10", "114", "#87c38f"})
	amber := pick([3]string{"", "130", "#9a4d00"}, [3]string{"11", "221", "#f2c14e"})
	red := pick([3]string{"1", "124", "#b3261e"}, [3]string{"9", "203", "#ff6b5e"})
	grey := pick([3]string{"", "241", "#626262"}, [3]string{"", "246", "#949494"})

	base := lipgloss.NewStyle()
	with := func(c color.Color) lipgloss.Style {
		if c == nil {
			return base
		}
		return base.Foreground(c)
	}
	quiet := with(grey)
	if grey == nil {
		quiet = base.Faint(true)
	}
	return theme{
		bold: newPaint(base.Bold(true)), quiet: newPaint(quiet),
		accent: newPaint(with(bronze)), strong: newPaint(with(bronze).Bold(true)),
		good: newPaint(with(green)), watch: newPaint(with(amber).Bold(true)), stop: newPaint(with(red).Bold(true)),
		dark: dark, profile: profile,
	}
}

// shade picks one of three spellings of a colour: of sixteen, of 256, of all. An empty spelling, or a
// profile without colour, gives none.
func shade(profile colorprofile.Profile, c [3]string) color.Color {
	s := c[2]
	switch profile {
	case colorprofile.NoTTY, colorprofile.ASCII:
		return nil
	case colorprofile.ANSI:
		s = c[0]
	case colorprofile.ANSI256:
		s = c[1]
	}
	if s == "" {
		return nil
	}
	return lipgloss.Color(s)
}
