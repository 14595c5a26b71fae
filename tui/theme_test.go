package tui

import (
	"image/color"
	"regexp"
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/colorprofile"

	"brazebooth/calc"
	"brazebooth/internal/report"
)

// The backgrounds of terminals: black and white, and what stands near them in common colour schemes (common practice, no
// source).
var (
	darkGrounds  = []string{"#000000", "#121212", "#1e1e1e", "#282828", "#002b36", "#300a24", "#2b303b"}
	lightGrounds = []string{"#ffffff", "#fafafa", "#f5f5f5", "#fdf6e3"}
)

// The first sixteen colours as terminals show them where nobody changed them: VGA text mode and xterm. From memory,
// confidence high.
var (
	vga16   = []string{"#000000", "#aa0000", "#00aa00", "#aa5500", "#0000aa", "#aa00aa", "#00aaaa", "#aaaaaa", "#555555", "#ff5555", "#55ff55", "#ffff55", "#5555ff", "#ff55ff", "#55ffff", "#ffffff"}
	xterm16 = []string{"#000000", "#cd0000", "#00cd00", "#cdcd00", "#0000ee", "#cd00cd", "#00cdcd", "#e5e5e5", "#7f7f7f", "#ff0000", "#00ff00", "#ffff00", "#5c5cff", "#ff00ff", "#00ffff", "#ffffff"}
)

// palettes are all of them with their backgrounds and what each must reach.
var palettes = []struct {
	name    string
	of      *palette
	grounds []string
	ratio   float64 // contrast
	apart   float64 // between any two zones, CIEDE2000: 1 can just be told side by side
}{
	{"dark", &darkPalette, darkGrounds, 4.5, 14},
	{"light", &lightPalette, lightGrounds, 4.5, 14},
	{"contrast on dark", &contrastDarkPalette, darkGrounds, 7, 9},
	{"contrast on light", &contrastLightPalette, lightGrounds, 7, 9},
}

// texts are a palette's colours by name; "" stands for the terminal's own text colour, which is not ours to choose.
func (c *palette) texts() map[string]tone {
	return map[string]tone{"plain": c.plain, "quiet": c.quiet, "accent": c.accent, "good": c.good, "watch": c.watch, "stop": c.stop,
		"zone good": c.zones.good, "zone cold": c.zones.cold, "zone hot": c.zones.hot, "zone burns": c.zones.burns, "zone edge": c.zones.edge}
}

// Every text can be read on every background, in all colours and in 256. A stop in reverse swaps the two and keeps the ratio.
func TestContrast(t *testing.T) {
	for _, p := range palettes {
		for name, c := range p.of.texts() {
			if c.full == "" != (c.indexed == "") {
				t.Errorf("%s, %s: a colour in one spelling only", p.name, name)
			}
			if c.full == "" {
				continue
			}
			for _, ground := range p.grounds {
				back := hexColour(t, ground)
				if got := contrast(hexColour(t, c.full), back); got < p.ratio {
					t.Errorf("%s, %s: %s on %s is %.2f to 1", p.name, name, c.full, ground, got)
				}
				if got := contrast(indexed(t, c.indexed), back); got < p.ratio {
					t.Errorf("%s, %s: %s on %s is %.2f to 1", p.name, name, c.indexed, ground, got)
				}
			}
		}
	}
}

// In sixteen colours the palette is the terminal's: with the two usual ones every text can be read on its black or white.
func TestContrastInSixteen(t *testing.T) {
	for _, p := range palettes {
		ground := hexColour(t, p.grounds[0])
		for name, c := range p.of.texts() {
			if c.ansi == "" {
				continue
			}
			at := slot(t, c.ansi)
			for _, colours := range [][]string{vga16, xterm16} {
				if got := contrast(hexColour(t, colours[at]), ground); got < p.ratio {
					t.Errorf("%s, %s: colour %s as %s is %.2f to 1", p.name, name, c.ansi, colours[at], got)
				}
			}
		}
	}
}

func slot(t *testing.T, s string) int {
	t.Helper()
	for i := range vga16 {
		if s == [...]string{"0", "1", "2", "3", "4", "5", "6", "7", "8", "9", "10", "11", "12", "13", "14", "15"}[i] {
			return i
		}
	}
	t.Fatalf("%q is not one of sixteen", s)
	return 0
}

// No two zones of the map run together for any eye, in all colours and in 256.
func TestZonesStayApart(t *testing.T) {
	for _, p := range palettes {
		z := p.of.zones
		list := []tone{z.good, z.cold, z.hot, z.burns, z.edge}
		for eye, m := range vision {
			for i, a := range list {
				for _, b := range list[:i] {
					if got := deltaE(seen(hexColour(t, a.full), m), seen(hexColour(t, b.full), m)); got < p.apart {
						t.Errorf("%s, %s: %s and %s are %.1f apart", p.name, eye, a.full, b.full, got)
					}
					if got := deltaE(seen(indexed(t, a.indexed), m), seen(indexed(t, b.indexed), m)); got < p.apart {
						t.Errorf("%s, %s: %s and %s are %.1f apart", p.name, eye, a.indexed, b.indexed, got)
					}
				}
			}
		}
	}
}

// Without any colour each zone has a glyph of its own, no other sign of the map has it, and the legend says which it is.
func TestZonesWithoutColour(t *testing.T) {
	th := newTheme(ThemeNone, true, colorprofile.TrueColor)
	words := map[string]string{"good": "good", "cold": "cold", "hot": "hot", "burn-through": "burns"}
	for _, w := range []int{40, 60, 80, 120} {
		text := stripBlock(legend(&th, w))
		taken := map[byte]string{'S': "the suggestion", '@': "the setting", ' ': "nothing"}
		known := func(mark byte, zone, word string) {
			if other, ok := taken[mark]; ok {
				t.Errorf("%s and %s are both %c", zone, other, mark)
			}
			taken[mark] = zone
			if !regexp.MustCompile(regexp.QuoteMeta(string(mark)) + ` ?(other )?` + word).MatchString(text) {
				t.Errorf("at %d columns the legend does not say that %c is %s:\n%s", w, mark, zone, text)
			}
		}
		for zone, word := range words {
			known(report.ZoneMark(zone), zone, word)
		}
		m := calc.Window{Travels: []float64{1}, Zones: []string{"good"}, Margins: []float64{-1}}
		known(report.PointMark(&m, 0, 0), "another edge", "edge")
		for _, sign := range []string{"S suggested", "yours"} {
			if !strings.Contains(text, sign) {
				t.Errorf("at %d columns the legend lacks %q:\n%s", w, sign, text)
			}
		}
	}
}

// Every zone that the model can find has its mark, and each its own style where there is colour.
func TestZonePaints(t *testing.T) {
	for _, kind := range []Theme{ThemeDark, ThemeLight, ThemeContrast} {
		th := newTheme(kind, true, colorprofile.TrueColor)
		styles := map[paint]byte{}
		for _, mark := range []byte("+.x#,") {
			style := zonePaint(&th, mark)
			if other, ok := styles[style]; ok {
				t.Errorf("%s: %c and %c look the same", kind, mark, other)
			}
			styles[style] = mark
		}
	}
}

// themes are all of them.
var themes = []Theme{ThemeAuto, ThemeDark, ThemeLight, ThemeContrast, ThemeNone}

// colourCode is a colour as a terminal is told it, plainCode the styles that every terminal can show without one.
var (
	colourCode = regexp.MustCompile(`\x1b\[(\d;)*(3[0-8]|4[0-8]|9[0-7]|10[0-7])`)
	plainCode  = regexp.MustCompile(`^(\x1b\[([17])?(;7)?(;?(3[0-7]|9[0-7]|38;5;\d+|38;2;\d+;\d+;\d+))?m)?$`)
)

// What a theme shows of colour is what it promises: none has none at all, no theme makes text faint, and without a colour
// a key still stands out.
func TestThemesOnTheScreen(t *testing.T) {
	for _, kind := range themes {
		for _, profile := range []colorprofile.Profile{colorprofile.TrueColor, colorprofile.ANSI256, colorprofile.ANSI, colorprofile.ASCII} {
			for _, dark := range []bool{true, false} {
				th := newTheme(kind, dark, profile)
				for _, p := range []paint{th.plain, th.bold, th.quiet, th.accent, th.strong, th.good, th.watch, th.stop, th.zone.hot} {
					if (kind == ThemeNone || profile == colorprofile.ASCII) && colourCode.MatchString(p.open) {
						t.Errorf("%s, %v: %q has colour", kind, profile, p.open)
					}
					if !plainCode.MatchString(p.open) {
						t.Errorf("%s, %v: %q is more than bold, reverse and a colour", kind, profile, p.open)
					}
				}
				if th.accent == th.plain || th.stop == th.plain || th.watch == th.plain {
					t.Errorf("%s, %v: what should stand out does not", kind, profile)
				}
			}
		}
	}
}

// The terminal's background picks the palette, unless the theme is fixed.
func TestBackgroundPicks(t *testing.T) {
	for _, x := range []struct {
		kind  Theme
		light *palette
	}{{"", &lightPalette}, {ThemeAuto, &lightPalette}, {ThemeDark, &darkPalette}, {ThemeLight, &lightPalette}, {ThemeContrast, &contrastLightPalette}} {
		s := openAt(t, 80, 24, Options{Theme: x.kind, Profile: colorprofile.TrueColor})
		s.send(tea.BackgroundColorMsg{Color: color.White})
		want := colored(x.light.good.shade(colorprofile.TrueColor))
		if got := s.root().th.good; got != newPaint(want) {
			t.Errorf("%q on white: good is %q", x.kind, got.open)
		}
		s.send(tea.ColorProfileMsg{Profile: colorprofile.ANSI})
		if s.root().th.kind != x.kind || s.root().th.dark {
			t.Errorf("%q: the terminal's other answer changes the theme", x.kind)
		}
	}
}

// Every screen can be read by its signs alone: a frame without colour has the same text as one with it.
func TestThemesShareTheText(t *testing.T) {
	var first string
	for _, kind := range themes {
		s := openAt(t, 80, 24, Options{Theme: kind, Job: calc.Job{Metal: "galvanized", Gauge: 20}})
		s.press("m")
		if first == "" {
			first = s.text()
		}
		if s.text() != first {
			t.Errorf("%s shows another text", kind)
		}
		if kind == ThemeNone && colourCode.MatchString(s.m.View().Content) {
			t.Error("the theme without colour has colour")
		}
	}
}
