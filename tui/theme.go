package tui

import (
	"strings"

	"charm.land/bubbles/v2/help"
	"github.com/charmbracelet/colorprofile"

	"brazebooth/internal/quantity"
	"brazebooth/tui/canvas"
)

// Theme is a choice of colours for the screens.
type Theme = canvas.Kind

// paint is an ink as the bytes before and after a text, so that building a frame only joins strings.
type paint struct {
	open, close string
	comma       bool // numbers get a decimal comma
	across      bool // it continues over the blanks between two texts, which saves bytes if both are sent
}

// exact is the style for typed text and for quoted documents, which are shown as they are.
func (p paint) exact() paint {
	p.comma = false
	return p
}

// theme holds the inks of one session, for text. The canvas draws with the *canvas.Theme in it. accent is only for the
// cursor. A state always shows a sign or a word too (sign).
type theme struct {
	*canvas.Theme
	plain, bold, quiet, accent paint
	cursor                     paint // text on the cursor's background
	good, watch, stop          paint
	look                       look
	keys                       help.Model // draws keys with what they do
}

// look is what a theme depends on: the user's choice, and what is known about the terminal.
type look struct {
	kind    Theme
	dark    bool
	profile colorprofile.Profile
	coarse  bool // neither quadrants nor braille
	comma   bool
	units   quantity.System // of sentences
}

// under is the paint for a text that may be under the cursor.
func (th *theme) under(cursor bool, p paint) paint {
	if cursor {
		return th.cursor
	}
	return p
}

// number is a text whose numbers have the user's decimal mark.
func (l look) number(s string) string {
	if l.comma {
		return quantity.Comma(s)
	}
	return s
}

// ProfileOf is how many colours a terminal has according to its environment, of this process or of a client. A NO_COLOR
// that is not empty means none.
func ProfileOf(env []string) colorprofile.Profile {
	for _, e := range env {
		if v, ok := strings.CutPrefix(e, "NO_COLOR="); ok && v != "" {
			return colorprofile.Ascii
		}
	}
	return colorprofile.Env(env)
}

// inUnits is a sentence in the units that are shown.
func (th *theme) inUnits(s string) string { return quantity.Sentence(s, th.look.units) }

// newTheme takes the inks for a terminal. Nothing is ever faint, because terminals differ in how faint that is.
func newTheme(l look) theme {
	t := canvas.ThemeOf(l.kind, l.dark, l.profile, l.coarse)
	ink := func(k canvas.Ink) paint {
		open, end, _ := strings.Cut(t.Paint(k, "x"), "x")
		return paint{open, end, l.comma, k == canvas.Quiet.Ink()}
	}
	keys := help.New()
	keys.ShortSeparator, keys.FullSeparator = keyGap, keyGap
	bold, quiet := t.Style(canvas.Text.Ink()|canvas.Bold), t.Style(canvas.Quiet.Ink())
	keys.Styles = help.Styles{ShortKey: bold, ShortDesc: quiet, FullKey: bold.Width(helpColumn),
		FullDesc: t.Style(canvas.Plain)}
	return theme{
		Theme: t, look: l, keys: keys,
		plain: ink(canvas.Text.Ink()), bold: ink(canvas.Text.Ink() | canvas.Bold), quiet: ink(canvas.Quiet.Ink()),
		accent: ink(canvas.Accent.Ink() | canvas.Bold), cursor: ink(canvas.OnAccent.On(canvas.Accent) | canvas.Bold),
		good: ink(canvas.Good.Ink()), watch: ink(canvas.Hot.Ink() | canvas.Bold),
		stop: ink(canvas.Stop.Ink() | canvas.Bold),
	}
}
