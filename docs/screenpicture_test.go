package docs

import (
	"fmt"
	"html"
	"image/color"
	"slices"
	"strings"

	uv "github.com/charmbracelet/ultraviolet"
	"github.com/charmbracelet/x/vt"
)

// A cell is drawn with four by eight dots, so that half blocks, quadrants and bars of eighths are rectangles in any
// font of the reader. Sizes in px.
const (
	dotsWide, dotsHigh = 4, 8
	cellWide, cellHigh = 8.4, 18.0
	margin             = 12.0
)

// ground are the default colours of a picture's terminal.
type ground struct{ ink, paper string }

var (
	darkGround  = ground{"#d8d8d8", "#16181a"}
	lightGround = ground{"#202224", "#ffffff"}
)

// svg draws a frame like a terminal of w by h cells: backgrounds and block elements as rectangles, one path for each
// colour, and the rest as pieces of text of one style, each as wide as its cells.
func svg(frame, title string, w, h int, g ground) string {
	emu := vt.NewEmulator(w, h)
	_, _ = emu.WriteString(strings.ReplaceAll(frame, "\n", "\r\n")) // an emulator takes everything
	var b strings.Builder
	wide, high := float64(w)*cellWide+2*margin, float64(h)*cellHigh+2*margin
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %.0f %.0f" width="%.0f" height="%.0f"`+
		` role="img" aria-label="%s"`, wide, high, wide, high, html.EscapeString(title))
	fmt.Fprintf(&b, ` font-family="ui-monospace, Menlo, Consolas, 'DejaVu Sans Mono', monospace" font-size="14"`+
		" fill=\"%s\">\n<title>%s</title><rect width=\"100%%\" height=\"100%%\" rx=\"6\" fill=\"%s\"/>\n", g.ink,
		html.EscapeString(title), g.paper)
	d := dotsOf(emu, w, h, g)
	d.draw(&b)
	for y := range h {
		for x := 0; x < w; {
			x = piece(&b, emu, x, y, w, g)
		}
	}
	b.WriteString("</svg>\n")
	return b.String()
}

// colours are a cell's colours; paper is "" for the default background.
func colours(c *uv.Cell, g ground) (ink, paper string) {
	ink, paper = g.ink, ""
	if c.Style.Fg != nil {
		ink = hex(c.Style.Fg)
	}
	if c.Style.Bg != nil {
		paper = hex(c.Style.Bg)
	}
	if c.Style.Attrs&uv.AttrReverse != 0 {
		if paper == "" {
			paper = g.paper
		}
		return paper, ink
	}
	return ink, paper
}

// dots are the colours of a picture's dots, row by row; "" for the default background.
type dots [][]string

func dotsOf(emu *vt.Emulator, w, h int, g ground) dots {
	d := make(dots, h*dotsHigh)
	for y := range d {
		d[y] = make([]string, w*dotsWide)
		for x := range d[y] {
			c := emu.CellAt(x/dotsWide, y/dotsHigh)
			if c == nil {
				continue
			}
			ink, paper := colours(c, g)
			d[y][x] = paper
			if isBlock(c.Content) && inked([]rune(c.Content)[0], x%dotsWide, y%dotsHigh) {
				d[y][x] = ink
			}
		}
	}
	return d
}

func isBlock(s string) bool {
	r := []rune(s)
	return len(r) == 1 && r[0] >= '▀' && r[0] <= '▟' && !strings.ContainsRune("░▒▓", r[0])
}

// quadrants are the quarters that ▖▗▘▙▚▛▜▝▞▟ fill: 1 upper left, 2 upper right, 4 lower left, 8 lower right.
var quadrants = [...]int{4, 8, 1, 1 + 4 + 8, 1 + 8, 1 + 2 + 4, 1 + 2 + 8, 2, 2 + 4, 2 + 4 + 8}

// inked reports whether a block element (Unicode's Block Elements, U+2580 to U+259F, without the shades) fills a dot.
func inked(r rune, x, y int) bool {
	switch {
	case r == '▀':
		return y < dotsHigh/2
	case r <= '█': // lower eighths
		return y >= dotsHigh-int(r-'▀')
	case r <= '▏': // left eighths, of which four dots can show every second one
		return 2*x < 8-int(r-'█')
	case r == '▐':
		return x >= dotsWide/2
	case r == '▔':
		return y == 0
	case r == '▕':
		return x == dotsWide-1
	}
	return quadrants[r-'▖']>>(x/(dotsWide/2)+2*(y/(dotsHigh/2)))&1 != 0
}

// draw writes a path for each colour, with the largest rectangles that runs of dots in rows can form.
func (d dots) draw(b *strings.Builder) {
	paths := map[string]*strings.Builder{}
	for y := range d {
		for x := 0; x < len(d[y]); {
			colour, w := d[y][x], 1
			for x+w < len(d[y]) && d[y][x+w] == colour {
				w++
			}
			if colour != "" && !d.run(x, y-1, w, colour) {
				h := 1
				for d.run(x, y+h, w, colour) {
					h++
				}
				if paths[colour] == nil {
					paths[colour] = new(strings.Builder)
				}
				fmt.Fprintf(paths[colour], "M%d %dh%dv%dh-%dz", x, y, w, h, w)
			}
			x += w
		}
	}
	if len(paths) == 0 {
		return
	}
	fmt.Fprintf(b, "<g transform=\"translate(%g %g) scale(%g %g)\" shape-rendering=\"crispEdges\">\n", margin, margin,
		cellWide/dotsWide, cellHigh/dotsHigh)
	order := []string{}
	for colour := range paths {
		order = append(order, colour)
	}
	slices.Sort(order)
	for _, colour := range order {
		fmt.Fprintf(b, "<path fill=\"%s\" d=\"%s\"/>\n", colour, paths[colour].String())
	}
	b.WriteString("</g>\n")
}

// run reports whether exactly these dots of a row are one run of a colour.
func (d dots) run(x, y, w int, colour string) bool {
	if y < 0 || y >= len(d) || x > 0 && d[y][x-1] == colour || x+w < len(d[y]) && d[y][x+w] == colour {
		return false
	}
	for _, c := range d[y][x : x+w] {
		if c != colour {
			return false
		}
	}
	return true
}

// piece draws the text of the cells with one style from x on, without blanks around it, and returns where the next
// piece begins.
func piece(b *strings.Builder, emu *vt.Emulator, x, y, w int, g ground) int {
	look := func(x int) (text, style string) {
		c := emu.CellAt(x, y)
		if c == nil || c.Content == "" || isBlock(c.Content) {
			return " ", ""
		}
		if ink, _ := colours(c, g); ink != g.ink {
			style = fmt.Sprintf(` fill="%s"`, ink)
		}
		if c.Style.Attrs&uv.AttrBold != 0 {
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
