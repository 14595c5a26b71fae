package tui

import (
	"strings"

	"charm.land/bubbles/v2/help"
	"charm.land/lipgloss/v2"
	"github.com/charmbracelet/colorprofile"

	"brazebooth/internal/quantity"
	"brazebooth/tui/canvas"
)

// Theme is a choice of colours for the screens.
type Theme = canvas.Kind

// The themes. Auto takes the dark or the light one by the terminal's background; Contrast has a palette of its own for
// either; None has bold, reverse and plain text only.
const (
	ThemeAuto     = canvas.ThemeAuto
	ThemeDark     = canvas.ThemeDark
	ThemeLight    = canvas.ThemeLight
	ThemeContrast = canvas.ThemeContrast
	ThemeNone     = canvas.ThemeNone
)

// paint is an ink boiled down to the bytes before and after a text. Building a frame then only joins strings.
type paint struct {
	open, close string
	comma       bool // numbers get a decimal comma
	across      bool // it goes on over the blanks between two texts, which saves bytes where both are sent
}

// exact is the style for what somebody typed or a document says: it is shown as it stands.
func (p paint) exact() paint {
	p.comma = false
	return p
}

// theme holds the inks of one session, for text; what canvas draws takes the *canvas.Theme in it. accent is the
// cursor's and nothing else's; a state always shows a sign or a word too (sign).
type theme struct {
	*canvas.Theme
	plain, bold, quiet, accent paint
	cursor                     paint // text on the cursor's ground
	good, watch, stop          paint
	look                       look
	keys                       help.Model // draws keys with what they do
}

// look is what a theme goes by: what was asked for, and what the terminal says of itself.
type look struct {
	kind    Theme
	dark    bool
	profile colorprofile.Profile
	coarse  bool // neither quadrants nor braille
	comma   bool
}

// under is a paint for what may be under the cursor.
func (th *theme) under(cursor bool, p paint) paint {
	if cursor {
		return th.cursor
	}
	return p
}

// number is a text with numbers, as they are written.
func (l look) number(s string) string {
	if l.comma {
		return quantity.Comma(s)
	}
	return s
}

// newTheme takes the inks for a terminal. Nothing is ever faint: how faint that is, is the terminal's to say.
func newTheme(l look) theme {
	t := canvas.ThemeOf(l.kind, l.dark, l.profile, l.coarse)
	ink := func(k canvas.Ink) paint {
		open, end, _ := strings.Cut(t.Paint(k, "x"), "x")
		return paint{open, end, l.comma, k == canvas.Quiet.Ink()}
	}
	keys := help.New()
	keys.ShortSeparator, keys.FullSeparator = keyGap, keyGap
	style := func(k canvas.Ink) lipgloss.Style { return t.Style(k) }
	bold, quiet := style(canvas.Text.Ink()|canvas.Bold), style(canvas.Quiet.Ink())
	keys.Styles = help.Styles{ShortKey: bold, ShortDesc: quiet, FullKey: bold.Width(helpColumn),
		FullDesc: style(canvas.Plain)}
	return theme{
		Theme: t, look: l, keys: keys,
		plain: ink(canvas.Text.Ink()), bold: ink(canvas.Text.Ink() | canvas.Bold), quiet: ink(canvas.Quiet.Ink()),
		accent: ink(canvas.Accent.Ink() | canvas.Bold), cursor: ink(canvas.OnAccent.On(canvas.Accent) | canvas.Bold),
		good: ink(canvas.Good.Ink()), watch: ink(canvas.Hot.Ink() | canvas.Bold),
		stop: ink(canvas.Stop.Ink() | canvas.Bold),
	}
}

// signGroups are the characters outside ASCII that the screens draw, by what they look like. Each takes one column.
var signGroups = [...]string{
	"▀▄█▌▐▖▗▘▝▙▛▜▟▚▞▁▔▏░▒▓", // digits, dials, maps
	"─│└┤┬╌║",             // frames, axes
	"⠁⠂⠄⡀⠈⠐⠠⢀⠿⣀⣤⣶⣿",       // charts
	"▲▼✓✗✕◆◇■▪○•▸◂‹›←↑→↓", // states, the cursor, hints
	"°±−·–…≈≠√²³“”Ωπρφ",   // figures, formulas
}

// Signs are the characters outside ASCII that the screens draw, each of which must take one column. Of the 256 braille
// characters, which a terminal has all or none of, there are some.
func Signs() string { return strings.Join(signGroups[:], "") }

// Sample is something that the screens draw, for somebody to look at.
type Sample struct {
	Name  string
	Lines []string // one to three
	Look  string   // how it looks where all is well
	Else  string   // what to set where it does not
}

// Samples are drawn as a terminal with these options gets it; only Profile, Theme, and the name of the terminal count.
func Samples(o Options, dark, coarse bool) []Sample {
	th := newTheme(look{kind: o.Theme, dark: dark, profile: o.Profile, coarse: coarse})
	const figures = "248"
	big := canvas.BigText(th.Theme, canvas.SizeL, canvas.Text.Ink(), figures)
	return []Sample{
		{"figures", strings.Split(big.String(), "\n"), "a large 2, 4 and 8 of even strokes, without gaps or boxes",
			"a font with block elements; spacing of letters and lines 1"},
		{"blocks", framed(signGroups[0], coarse), "solid and shaded shapes of one width between two bars",
			"a font with block elements, such as DejaVu Sans Mono"},
		{"lines", framed(signGroups[1], coarse), "thin lines and corners between two bars",
			"a font with box drawing, such as DejaVu Sans Mono"},
		{"dots", framed(signGroups[2], coarse), "small dots, two across and four down, between two bars",
			"a font with braille, which charts use: DejaVu Sans Mono"},
		{"marks", framed(signGroups[3], coarse), "triangles, ticks, crosses, arrows; none cut or overlapping",
			"ambiguous characters narrow (one column); no emoji for text"},
		{"letters", framed(signGroups[4], coarse), "degree, plus-minus, dots, quotes and Greek letters",
			"the terminal's character set UTF-8"},
		{"colours", []string{stated(&th)}, "each word easy to read; no colours where NO_COLOR is set",
			"brazebooth config set theme light, dark, contrast or none"},
	}
}

// framed puts characters between two bars. The console of Linux is shown what the screens draw there.
func framed(signs string, coarse bool) []string {
	if coarse {
		signs = strings.Map(func(r rune) rune {
			if r >= '▖' && r <= '▟' || r >= 0x2800 && r < 0x2900 {
				return -1
			}
			return r
		}, signs)
	}
	return []string{"│" + signs + "│"}
}

// stated has the states in their colours, each with its sign.
func stated(th *theme) string {
	var words []string
	for _, s := range [...]struct {
		ink  paint
		text string
	}{{th.good, "✓ good"}, {th.watch, "▲ watch"}, {th.stop, "✗ stop"}, {th.accent, "▸ here"}, {th.cursor, " cursor "},
		{th.quiet, "quiet"}} {
		words = append(words, s.ink.open+s.text+s.ink.close)
	}
	return strings.Join(words, "  ")
}
