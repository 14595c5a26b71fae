package tui

import (
	"strings"

	"brazebooth/tui/canvas"
)

// signGroups are the characters outside ASCII that the screens draw, grouped by use. Each takes one column.
var signGroups = [...]string{
	"▀▄█▌▐▖▗▘▝▙▛▜▟▚▞▁▔▏░▒▓", // digits, dials, maps
	"─│└┤┬╌║",             // frames, axes
	"⠁⠂⠄⡀⠈⠐⠠⢀⠿⣀⣤⣶⣿",       // charts
	"▲▼✓✗✕◆◇■▪○•▸◂‹›←↑→↓", // states, the cursor, hints
	"°±−·–…≈≠√²³“”Ωπρφ",   // figures, formulas
}

// Signs are the characters outside ASCII that the screens draw, each of which must take one column. Only some of the
// 256 braille characters are included, because a terminal has either all or none of them.
func Signs() string { return strings.Join(signGroups[:], "") }

// Sample is something that the screens draw, for a user to check.
type Sample struct {
	Name  string
	Lines []string // one to three
	Look  string   // how it looks if all is well
	Else  string   // what to set if it does not
}

// Samples are drawn as a terminal with these options gets them. Only Profile, Theme and the terminal's name matter.
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

// framed puts characters between two bars. On the Linux console it uses the replacements that the screens draw there.
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

// stated is the states in their colours, each with its sign.
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
