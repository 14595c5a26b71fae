package canvas

import (
	"image/color"

	"charm.land/lipgloss/v2"
	"github.com/charmbracelet/colorprofile"
	"github.com/charmbracelet/x/ansi"
)

// Kind is the user's choice of colours.
type Kind string

// The kinds. Auto takes the dark or the light palette, to match the terminal's background. Contrast has a palette of
// its own for each. None has only bold and reverse.
const (
	ThemeAuto     Kind = "auto"
	ThemeDark     Kind = "dark"
	ThemeLight    Kind = "light"
	ThemeContrast Kind = "contrast"
	ThemeNone     Kind = "none"
)

// Theme turns inks into bytes for one kind of terminal. It never changes.
type Theme struct {
	colour [roles]color.Color // nil is the terminal's own colour
	ground bool               // there are background colours: lands and parts need no textures
	coarse bool               // the terminal has half-blocks, but neither quadrants nor braille
}

// ThemeOf is the theme of a terminal: by its dark or light background, and the colours that it shows. A coarse terminal
// has no quadrants and no braille (the Linux console, the old Windows console).
func ThemeOf(kind Kind, dark bool, profile colorprofile.Profile, coarse bool) *Theme {
	th := &Theme{ground: kind != ThemeNone && profile > colorprofile.ASCII, coarse: coarse}
	for r := range roles {
		shown := tones[r][paletteOf(kind, dark)]
		c := shown.indexed
		if profile == colorprofile.ANSI {
			c = shown.ansi
		}
		if c != "" && th.ground {
			th.colour[r] = lipgloss.Color(c)
		}
	}
	return th
}

func paletteOf(kind Kind, dark bool) int {
	switch {
	case kind == ThemeContrast && dark:
		return contrastOnDark
	case kind == ThemeContrast:
		return contrastOnLight
	case kind == ThemeDark, kind != ThemeLight && dark:
		return onDark
	}
	return onLight
}

// style switches an ink on. It is empty for the terminal's own ink.
func (th *Theme) style(k Ink) (s ansi.Style) {
	if k.bold() {
		s = s.Bold()
	}
	if c := th.colour[k.fg()]; c != nil {
		s = s.ForegroundColor(c)
	}
	if c := th.colour[k.bg()]; c != nil {
		return s.BackgroundColor(c)
	}
	if k.bg().swaps() {
		s = s.Reverse(true)
	}
	return s
}

// plain reports whether a blank in this ink shows nothing.
func (th *Theme) plain(k Ink) bool { return th.colour[k.bg()] == nil && !k.bg().swaps() }

// Paint is a text in an ink. The text must have no styles of its own.
func (th *Theme) Paint(k Ink, text string) string { return th.style(k).Styled(text) }

// Style is an ink on the terminal's own background as a Lip Gloss style, for the components of Bubbles.
func (th *Theme) Style(k Ink) lipgloss.Style {
	s := lipgloss.NewStyle().Bold(k.bold())
	if c := th.colour[k.fg()]; c != nil {
		s = s.Foreground(c)
	}
	return s
}

// Role is the meaning of a colour. The palettes give each role its colours; a part never names a colour itself.
type Role uint8

// The roles. Own is the terminal's own colour, Swap the terminal's text colour as a background.
const (
	Own         Role                         = iota
	Text                                     // figures, words
	Quiet                                    // explanations of them
	Rule                                     // tracks, axes, borders
	Accent                                   // the cursor, and nothing else
	OnAccent                                 // text on the cursor's background
	ChipGround                               // background of a chip
	Swap                                     // the terminal's text colour as background
	stateInk                                 // of each state: as text,
	stateOn     = stateInk + Role(states)    // as text on the state's background,
	stateGround = stateOn + Role(states)     // and as that background
	landInk     = stateGround + Role(states) // of each land of the map: its background,
	landOn      = landInk + Role(lands)      // and text on it
	partInk     = landOn + Role(lands)       // of each part of a drawing
	roles       = partInk + Role(parts)
)

// Ink is a text colour, a background colour, and whether the text is bold.
type Ink uint32

// Bold is added to an ink with |. Blocks are never bold: that changes nothing and costs bytes.
const Bold Ink = 1 << 16

// Plain is text in the terminal's own colours.
const Plain Ink = 0

// Ink is the role as a text colour on the terminal's own background.
func (r Role) Ink() Ink { return Ink(r) }

// On is the role as a text colour on another background.
func (r Role) On(ground Role) Ink { return Ink(r) | Ink(ground)<<8 }

func (k Ink) fg() Role   { return Role(k & 0xff) }
func (k Ink) bg() Role   { return Role(k >> 8 & 0xff) }
func (k Ink) bold() bool { return k&Bold != 0 }

// swaps reports whether a role is a background that must be visible without colour too: it is then shown as reverse
// video.
func (r Role) swaps() bool {
	return r == Accent || r == Swap || r >= stateGround && r < stateGround+Role(states)
}
