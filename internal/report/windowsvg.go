package report

import (
	"fmt"
	"html"
	"strings"

	"brazebooth/calc"
)

// picture is the shared layout of a window's pictures, in pixels.
const (
	cellWide, cellHigh = 12, 16
	leftRoom, topRoom  = 70, 40
	lowRoom, rightRoom = 90, 20
)

// zoneColours are the fills: readable in grey, too, since they differ in lightness.
var zoneColours = map[byte][3]uint8{'+': {0x7f, 0xc9, 0x7f}, ',': {0xd9, 0xea, 0xd3}, '.': {0x9d, 0xb4, 0xd6}, 'x': {0xf0, 0xb0, 0x60}, '#': {0x9a, 0x3b, 0x26}, '?': {0xdd, 0xdd, 0xdd}}

func pictureSize(m *calc.Window) (w, h int) {
	wide, high := cell(m)
	return leftRoom + wide*len(m.Feeds) + rightRoom, topRoom + high*len(m.Travels) + lowRoom
}

// cell is the size of a point's cell: the picture of a map that is drawn coarser is as large as any other.
func cell(m *calc.Window) (wide, high int) {
	if !m.Coarser {
		return cellWide, cellHigh
	}
	return cellWide * max(1, calc.FullWindow.Feeds/len(m.Feeds)), cellHigh * max(1, calc.FullWindow.Travels/len(m.Travels))
}

// corner is the upper left pixel of a point's cell.
func corner(m *calc.Window, i, j int) (x, y int) {
	wide, high := cell(m)
	return leftRoom + wide*i, topRoom + high*(len(m.Travels)-1-j)
}

// WindowSVG draws an operating window as SVG: every cell also carries its mark, so that it reads without colour. given is the
// card of the setting that was asked about, nil for none.
func WindowSVG(m *calc.Window, given *calc.Card) []byte {
	var b strings.Builder
	w, h := pictureSize(m)
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" width="%d" height="%d" font-family="monospace" font-size="11">`+"\n", w, h)
	fmt.Fprintf(&b, `<rect width="%d" height="%d" fill="#ffffff"/>`+"\n", w, h)
	text := func(x, y int, anchor, s string) {
		fmt.Fprintf(&b, `<text x="%d" y="%d" text-anchor="%s">%s</text>`+"\n", x, y, anchor, html.EscapeString(s))
	}
	gi, gj, on := givenPoint(m, given)
	wide, high := cell(m)
	for i := range m.Feeds {
		for j := range m.Travels {
			x, y := corner(m, i, j)
			mark := PointMark(m, i, j)
			c := zoneColours[mark]
			if on && i == gi && j == gj {
				mark = givenMark
			}
			fmt.Fprintf(&b, `<rect x="%d" y="%d" width="%d" height="%d" fill="#%02x%02x%02x"/>`, x, y, wide, high, c[0], c[1], c[2])
			text(x+wide/2, y+high-4, "middle", string(mark))
		}
	}
	for _, l := range pictureLabels(m, given) {
		text(l.x, l.y, l.anchor, l.text)
	}
	i, j := m.At(m.Suggestion.Feed, m.Suggestion.Travel)
	x, y := corner(m, i, j)
	fmt.Fprintf(&b, `<rect x="%d" y="%d" width="%d" height="%d" fill="none" stroke="#000000" stroke-width="2"/>`+"\n</svg>\n", x-1, y-1, wide+2, high+2)
	return []byte(b.String())
}

type label struct {
	x, y         int
	anchor, text string // anchor: start, middle, end
}

// pictureLabels are the words about a window's picture.
func pictureLabels(m *calc.Window, given *calc.Card) []label {
	_, h := pictureSize(m)
	wide, high := cell(m)
	list := []label{
		{leftRoom, 16, "start", "operating window: " + m.Card.Used.Metal + ", " + m.Card.Used.Joint + ", " + m.Card.Setup.Filler.ID + ", " + wireText(m.Card.Used.Wire.V) + ", " + m.Card.Used.Mode},
		{leftRoom, 32, "start", "travel, mm/s, upward; wire feed, m/min, to the right"},
		{leftRoom, h - 40, "start", "+ good   . cold   x hot   # burn-through   , another edge not met   box: suggestion"},
		{leftRoom, h - 22, "start", "strike a test bead on scrap of the same sheet first"},
	}
	if _, _, on := givenPoint(m, given); on {
		list = append(list, label{leftRoom, h - 6, "start", fmt.Sprintf("%c: as given, %.2f m/min at %.2f mm/s: %s", givenMark, given.Used.Feed.V, given.Used.Travel.V, given.Verdict())})
	}
	if words := m.CoarserWords(); words != "" {
		list = append(list, label{leftRoom, h - 57, "start", words})
	}
	for i := 0; i < len(m.Feeds); i += max(1, len(m.Feeds)/8) {
		x, _ := corner(m, i, 0)
		list = append(list, label{x + wide/2, h - lowRoom + 16, "middle", fmt.Sprintf("%.1f", m.Feeds[i])})
	}
	for j := 0; j < len(m.Travels); j += max(1, len(m.Travels)/8) {
		_, y := corner(m, 0, j)
		list = append(list, label{leftRoom - 6, y + high - 4, "end", fmt.Sprintf("%.1f", m.Travels[j])})
	}
	return list
}
