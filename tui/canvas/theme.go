package canvas

import (
	"strings"
	"sync"

	"charm.land/lipgloss/v2"
	"github.com/charmbracelet/colorprofile"
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
	fg, bg [roles]string // what switches a role on as text, as ground: parameters of SGR
	colour [roles]string // as Lip Gloss reads it
	ground bool          // there are colours for grounds: lands and parts need no textures
	coarse bool          // the terminal has half-blocks, but neither quadrants nor braille
}

type themeKey struct {
	palette, depth int
	coarse         bool
}

// The depths of colour that differ here.
const (
	depthNone = iota
	depth16
	depth256
)

var themes sync.Map // of themeKey to *Theme

// ThemeOf is the theme of a terminal: its ground, dark or light, and what colours it shows. A coarse terminal has no
// quadrants and no braille (the console of Linux, the old one of Windows).
func ThemeOf(kind Kind, dark bool, profile colorprofile.Profile, coarse bool) *Theme {
	k := themeKey{palette: paletteOf(kind, dark), depth: depthOf(kind, profile), coarse: coarse}
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

func depthOf(kind Kind, profile colorprofile.Profile) int {
	switch {
	case kind == ThemeNone || profile < colorprofile.ANSI:
		return depthNone
	case profile == colorprofile.ANSI:
		return depth16
	}
	return depth256
}

func newTheme(k themeKey) *Theme {
	th := &Theme{ground: k.depth != depthNone, coarse: k.coarse}
	for r := range roles {
		spelt := tones[r][k.palette]
		c := [...]string{depthNone: "", depth16: spelt.ansi, depth256: spelt.indexed}[k.depth]
		if th.colour[r] = c; c != "" {
			th.fg[r] = parameter(lipgloss.NewStyle().Foreground(lipgloss.Color(c)))
			th.bg[r] = parameter(lipgloss.NewStyle().Background(lipgloss.Color(c)))
		} else if r.swaps() {
			th.bg[r] = reverse
		}
	}
	return th
}

// reverse is the SGR parameter that lets text and ground change places.
const reverse = "7"

// parameter is what stands in a style's sequence: each style is rendered once, here.
func parameter(s lipgloss.Style) string {
	open, _, _ := strings.Cut(s.Render("x"), "x")
	return strings.TrimSuffix(strings.TrimPrefix(open, "\x1b["), "m")
}

// reset ends every style.
const reset = "\x1b[m"

// open appends what switches an ink on; nothing where it is the terminal's own.
func (th *Theme) open(to []byte, k Ink) []byte {
	bold, fg, bg := k.bold(), th.fg[k.fg()], th.bg[k.bg()]
	if !bold && fg == "" && bg == "" {
		return to
	}
	to = append(to, "\x1b["...)
	if bold {
		to = append(to, "1;"...)
	}
	if fg != "" {
		to = append(append(to, fg...), ';')
	}
	if bg != "" {
		to = append(append(to, bg...), ';')
	}
	to[len(to)-1] = 'm'
	return to
}

// plain reports whether a blank in an ink shows nothing.
func (th *Theme) plain(k Ink) bool { return th.bg[k.bg()] == "" }

// Paint is a text in an ink. The text must have no styles of its own.
func (th *Theme) Paint(k Ink, text string) string {
	open := th.open(nil, k)
	if len(open) == 0 || text == "" {
		return text
	}
	return string(open) + text + reset
}

// Style is an ink as Lip Gloss has it, for the parts of Bubbles.
func (th *Theme) Style(k Ink) lipgloss.Style {
	s := lipgloss.NewStyle().Bold(k.bold())
	if c := th.colour[k.fg()]; c != "" {
		s = s.Foreground(lipgloss.Color(c))
	}
	if c := th.colour[k.bg()]; c != "" {
		s = s.Background(lipgloss.Color(c))
	}
	return s.Reverse(th.bg[k.bg()] == reverse)
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
