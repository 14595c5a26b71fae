package tui

import (
	"image/color"
	"strings"

	"charm.land/lipgloss/v2"
	"github.com/charmbracelet/colorprofile"
)

// paint is a style boiled down to the bytes before and after a text. Building a frame then only
// joins strings.
type paint struct {
	open, close string
	comma       bool // numbers get a decimal comma
}

// exact is the style for what somebody typed or a document says: it is shown as it stands.
func (p paint) exact() paint {
	p.comma = false
	return p
}

func newPaint(s lipgloss.Style) paint {
	open, end, ok := strings.Cut(s.Render("x"), "x")
	if !ok {
		return paint{}
	}
	return paint{open: open, close: end}
}

// theme holds the styles of one session: one accent, three state colours, quiet text, and the zones of the map. A
// state always shows a sign or a word too; see sign.
type theme struct {
	plain, bold, quiet paint
	accent, strong     paint // strong is bold besides
	good, watch, stop  paint
	zone               zonePaints
	kind               Theme
	dark               bool
	profile            colorprofile.Profile
}

// zonePaints are the styles of the map's points.
type zonePaints struct{ good, cold, hot, burns, edge paint }

// newTheme builds the styles of a theme for a background and a colour profile. Nothing is ever faint: how faint that is,
// is the terminal's to say.
func newTheme(kind Theme, dark bool, profile colorprofile.Profile) theme {
	c := paletteOf(kind, dark)
	with := func(t tone) lipgloss.Style { return colored(t.shade(profile)) }
	accent := with(c.accent)
	if c.accent.shade(profile) == nil {
		accent = accent.Bold(true) // a key stands out by something
	}
	return theme{
		plain: newPaint(with(c.plain)), bold: newPaint(with(c.plain).Bold(true)), quiet: newPaint(with(c.quiet)),
		accent: newPaint(accent), strong: newPaint(accent.Bold(true)),
		good: newPaint(with(c.good)), watch: newPaint(with(c.watch).Bold(true)), stop: newPaint(with(c.stop).Bold(true).Reverse(c.reverse)),
		zone: zonePaints{newPaint(with(c.zones.good)), newPaint(with(c.zones.cold)), newPaint(with(c.zones.hot)),
			newPaint(with(c.zones.burns)), newPaint(with(c.zones.edge))},
		kind: kind, dark: dark, profile: profile,
	}
}

// commas is the theme of a session whose numbers have a decimal comma.
func (th theme) commas(wanted bool) theme {
	for _, p := range [...]*paint{&th.plain, &th.bold, &th.quiet, &th.accent, &th.strong, &th.good, &th.watch, &th.stop} {
		p.comma = wanted
	}
	return th
}

func colored(c color.Color) lipgloss.Style {
	if c == nil {
		return lipgloss.NewStyle()
	}
	return lipgloss.NewStyle().Foreground(c)
}

// shade picks the spelling of a colour for a profile. An empty spelling, or a profile without colour, gives none.
func (t tone) shade(profile colorprofile.Profile) color.Color {
	s := t.full
	switch profile {
	case colorprofile.NoTTY, colorprofile.ASCII:
		return nil
	case colorprofile.ANSI:
		s = t.ansi
	case colorprofile.ANSI256:
		s = t.indexed
	}
	if s == "" {
		return nil
	}
	return lipgloss.Color(s)
}
