package canvas

import (
	"image/color"
	"sync"

	"charm.land/lipgloss/v2"
	"github.com/charmbracelet/colorprofile"
	"github.com/charmbracelet/x/ansi"
)

// Kind is a choice of colours.
type Kind string

// The kinds. Auto takes the dark or the light palette by the terminal's ground; Contrast has a palette of its own for
// either; None has bold and reverse only.
const (
	ThemeAuto     Kind = "auto"
	ThemeDark     Kind = "dark"
	ThemeLight    Kind = "light"
	ThemeContrast Kind = "contrast"
	ThemeNone     Kind = "none"
)

// Theme turns inks into bytes for one kind of terminal. It never changes, and all sessions of a kind share one.
type Theme struct {
	colour [roles]color.Color // nil is the terminal's own
	ground bool               // there are colours for grounds: lands and parts need no textures
	coarse bool               // the terminal has half-blocks, but neither quadrants nor braille
}

type themeKey struct {
	palette int
	profile colorprofile.Profile
	coarse  bool
}

var themes sync.Map // of themeKey to *Theme

// ThemeOf is the theme of a terminal: its ground, dark or light, and what colours it shows. A coarse terminal has no
// quadrants and no braille (the console of Linux, the old one of Windows).
func ThemeOf(kind Kind, dark bool, profile colorprofile.Profile, coarse bool) *Theme {
	if kind == ThemeNone {
		profile = colorprofile.ASCII
	}
	k := themeKey{paletteOf(kind, dark), max(colorprofile.ASCII, min(profile, colorprofile.ANSI256)), coarse}
	if th, ok := themes.Load(k); ok {
		return th.(*Theme)
	}
	th, _ := themes.LoadOrStore(k, newTheme(k))
	return th.(*Theme)
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

func newTheme(k themeKey) *Theme {
	th := &Theme{ground: k.profile != colorprofile.ASCII, coarse: k.coarse}
	for r := range roles {
		c := tones[r][k.palette].indexed
		if k.profile == colorprofile.ANSI {
			c = tones[r][k.palette].ansi
		}
		if c != "" && th.ground {
			th.colour[r] = lipgloss.Color(c)
		}
	}
	return th
}

// style is what switches an ink on; nothing where it is the terminal's own.
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

// plain reports whether a blank in an ink shows nothing.
func (th *Theme) plain(k Ink) bool { return th.colour[k.bg()] == nil && !k.bg().swaps() }

// Paint is a text in an ink. The text must have no styles of its own.
func (th *Theme) Paint(k Ink, text string) string {
	if text == "" {
		return ""
	}
	return th.style(k).Styled(text)
}

// Style is an ink on the terminal's own ground as Lip Gloss has it, for the parts of Bubbles.
func (th *Theme) Style(k Ink) lipgloss.Style {
	s := lipgloss.NewStyle().Bold(k.bold())
	if c := th.colour[k.fg()]; c != nil {
		s = s.Foreground(c)
	}
	return s
}

// Role is what a colour stands for. The palettes give each role its colours; a part never names a colour itself.
type Role uint8

// The roles. Own is the terminal's own colour, Swap the terminal's text colour as a ground.
const (
	Own         Role                         = iota
	Text                                     // figures, words
	Quiet                                    // what explains them
	Rule                                     // tracks, axes, borders
	Accent                                   // the cursor, and nothing else
	OnAccent                                 // text on the cursor's ground
	ChipGround                               // of a chip
	Swap                                     // own text colour as ground
	stateInk                                 // of each state: as text,
	stateOn     = stateInk + Role(states)    // as text on the state's ground,
	stateGround = stateOn + Role(states)     // and as that ground
	landInk     = stateGround + Role(states) // of each land of the map: its ground,
	landOn      = landInk + Role(lands)      // and text on it
	partInk     = landOn + Role(lands)       // of each part of a drawing
	roles       = partInk + Role(parts)
)

// Ink is a colour of text, a colour of ground, and whether it is bold.
type Ink uint32

// Bold is added to an ink by |. Blocks are never bold: they gain nothing and cost bytes.
const Bold Ink = 1 << 16

// Plain is text as the terminal has it.
const Plain Ink = 0

// Ink is the role as a text's colour on the terminal's own ground.
func (r Role) Ink() Ink { return Ink(r) }

// On is the role as a text's colour on a ground.
func (r Role) On(ground Role) Ink { return Ink(r) | Ink(ground)<<8 }

func (k Ink) fg() Role   { return Role(k & 0xff) }
func (k Ink) bg() Role   { return Role(k >> 8 & 0xff) }
func (k Ink) bold() bool { return k&Bold != 0 }

// swaps reports whether a role is a ground that must be seen without colour too: it then shows as reverse video.
func (r Role) swaps() bool {
	return r == Accent || r == Swap || r >= stateGround && r < stateGround+Role(states)
}
