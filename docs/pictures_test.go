package docs

import (
	"fmt"
	"html"
	"image/color"
	"strings"
	"testing"

	"github.com/charmbracelet/x/vt"

	"brazebooth/calc"
	"brazebooth/internal/report"
	"brazebooth/tui"
)

// pictures are the documents': what is drawn, and the keys that lead there from the first screen.
var pictures = []struct {
	file, title, keys string
	walk              bool
}{
	{"walk.svg", "The first walk points at the card's wire feed", "enter enter", true},
	{"map.svg", "The map of every wire feed and travel", "enter 2 0 enter enter enter m right right", false},
	{"practice.svg", "A practice job with a timed arc that came out good",
		"enter enter enter enter p left left left left left 5 + enter right right up enter up enter", false},
}

// A picture that was made by hand shows, after the next change, a program that no longer exists. These are drawn from
// the running screens, and a document has to show each of them. After a change that is meant: go test ./docs -run
// Pictures -update.
func TestPicturesAreTheScreens(t *testing.T) {
	if testing.Short() {
		t.Skip("computes a timed arc's beads")
	}
	shown := ""
	for _, path := range documents(t) {
		shown += read(t, path)
	}
	for _, p := range pictures {
		h := newHand(tui.Options{Walk: p.walk})
		for _, name := range strings.Fields(p.keys) {
			h.press(t, name)
		}
		picture := svg(h.frame(), p.title)
		if n := strings.Count(picture, "<text"); n < 40 {
			t.Errorf("%s has %d pieces of text", p.file, n)
		}
		compare(t, p.file, picture)
		if !strings.Contains(shown, "("+p.file+")") && !strings.Contains(shown, "(docs/"+p.file+")") {
			t.Errorf("no document shows docs/%s", p.file)
		}
	}
}

// docs/window.svg is what `window --svg` draws.
func TestWindowPictureIsTheCommands(t *testing.T) {
	if testing.Short() {
		t.Skip("computes a map")
	}
	ctx := t.Context()
	w, err := calc.WindowOf(ctx, calc.Job{Metal: "galvanized", Gauge: 20}, calc.FullWindow, nil)
	if err != nil {
		t.Fatal(err)
	}
	c, err := calc.ChartOf(ctx, &w)
	if err != nil {
		t.Fatal(err)
	}
	b, err := (&report.Map{Window: &w, Chart: &c}).SVG()
	if err != nil {
		t.Fatal(err)
	}
	compare(t, "window.svg", string(b))
}

// A cell of the picture, in px.
const (
	cellWide = 8.4
	cellHigh = 18.0
	margin   = 12.0
)

// svg draws a frame of 80 by 24 cells as a terminal does: pieces of one style, each as long as its cells.
func svg(frame, title string) string {
	const w, h = 80, 24
	emu := vt.NewEmulator(w, h)
	_, _ = emu.WriteString(strings.ReplaceAll(frame, "\n", "\r\n")) // an emulator takes everything
	var b strings.Builder
	wide, high := w*cellWide+2*margin, h*cellHigh+2*margin
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %.0f %.0f" width="%.0f" height="%.0f"`+
		` role="img" aria-label="%s"`, wide, high, wide, high, html.EscapeString(title))
	b.WriteString(` font-family="ui-monospace, Menlo, Consolas, 'DejaVu Sans Mono', monospace" font-size="14"` +
		` fill="#d8d8d8">` + "\n")
	fmt.Fprintf(&b, `<title>%s</title><rect width="100%%" height="100%%" rx="6" fill="#16181a"/>`+"\n",
		html.EscapeString(title))
	for y := range h {
		for x := 0; x < w; {
			x = piece(&b, emu, x, y, w)
		}
	}
	b.WriteString("</svg>\n")
	return b.String()
}

// piece draws the cells of one style from x on, without blanks around them, and returns where the next begin.
func piece(b *strings.Builder, emu *vt.Emulator, x, y, w int) int {
	look := func(x int) (text, style string) {
		c := emu.CellAt(x, y)
		if c == nil || c.Content == "" {
			return " ", ""
		}
		if c.Style.Fg != nil {
			style = fmt.Sprintf(` fill="%s"`, hex(c.Style.Fg))
		}
		const bold = 1 // the emulator's first attribute
		if c.Style.Attrs&bold != 0 {
			style += ` font-weight="bold"`
		}
		return c.Content, style
	}
	from, text, style := x, "", ""
	for ; x < w; x++ {
		cell, s := look(x)
		if text == "" {
			style = s
		} else if s != style {
			break
		}
		text += cell
	}
	seen := strings.TrimLeft(text, " ")
	from += len(text) - len(seen)
	seen = strings.TrimRight(seen, " ")
	if n := len([]rune(seen)); n > 0 {
		fmt.Fprintf(b, `<text x="%.1f" y="%.1f" textLength="%.1f" lengthAdjust="spacingAndGlyphs"`+
			` xml:space="preserve"%s>%s</text>`+
			"\n", margin+float64(from)*cellWide, margin+float64(y)*cellHigh+13, float64(n)*cellWide, style,
			html.EscapeString(seen))
	}
	return x
}

func hex(c color.Color) string {
	r, g, b, _ := c.RGBA()
	return fmt.Sprintf("#%02x%02x%02x", r>>8, g>>8, b>>8)
}
