package report

import (
	"fmt"
	"image/color"

	"brazebooth/calc"
)

// The layout of a window's picture, pixels.
const (
	cellWide, cellHigh = 12, 16
	leftRoom, topRoom  = 70, 40
	lowRoom, rightRoom = 90, 20
)

// zoneColours are the fills: readable in grey, too, since they differ in lightness.
var zoneColours = map[byte]color.RGBA{
	'+': {0x7f, 0xc9, 0x7f, 255}, ',': {0xd9, 0xea, 0xd3, 255}, '.': {0x9d, 0xb4, 0xd6, 255},
	'x': {0xf0, 0xb0, 0x60, 255}, '#': {0x9a, 0x3b, 0x26, 255}, '?': {0xdd, 0xdd, 0xdd, 255},
}

// WindowSVG draws an operating window as SVG: every cell also carries its mark, so that it reads without colour. given
// is the card of the setting that was asked about, nil for none.
func WindowSVG(m *calc.Window, given *calc.Card) []byte { return windowPicture(m, given).svg() }

// WindowPNG draws the same picture as PNG.
func WindowPNG(m *calc.Window, given *calc.Card) ([]byte, error) {
	return windowPicture(m, given).png()
}

func windowPicture(m *calc.Window, given *calc.Card) *picture {
	wide, high := cell(m)
	p := &picture{wide: leftRoom + wide*len(m.Feeds) + rightRoom, high: topRoom + high*len(m.Travels) + lowRoom}
	corner := func(i, j int) (x, y int) { return leftRoom + wide*i, topRoom + high*(len(m.Travels)-1-j) }
	gi, gj, on := givenPoint(m, given)
	for i := range m.Feeds {
		for j := range m.Travels {
			x, y := corner(i, j)
			mark := PointMark(m, i, j)
			p.fill(x, y, wide, high, zoneColours[mark])
			if on && i == gi && j == gj {
				mark = givenMark
			}
			p.write(x+wide/2, y+high-4, "middle", string(mark))
		}
	}
	p.windowTitles(m, given, on)
	for i := 0; i < len(m.Feeds); i += max(1, len(m.Feeds)/8) {
		x, _ := corner(i, 0)
		p.write(x+wide/2, p.high-lowRoom+16, "middle", fmt.Sprintf("%.1f", m.Feeds[i]))
	}
	for j := 0; j < len(m.Travels); j += max(1, len(m.Travels)/8) {
		_, y := corner(0, j)
		p.write(leftRoom-6, y+high-4, "end", fmt.Sprintf("%.1f", m.Travels[j]))
	}
	x, y := corner(m.At(m.Suggestion.Feed, m.Suggestion.Travel))
	p.shapes = append(p.shapes, shape{kind: frame, x: x - 1, y: y - 1, w: wide + 2, h: high + 2})
	return p
}

// cell is the size of a point's cell: the picture of a window with fewer points is as large as any other.
func cell(m *calc.Window) (wide, high int) {
	if !m.Coarser {
		return cellWide, cellHigh
	}
	full := calc.FullWindow
	return cellWide * max(1, full.Feeds/len(m.Feeds)), cellHigh * max(1, full.Travels/len(m.Travels))
}

// windowTitles are the words above and below the points.
func (p *picture) windowTitles(m *calc.Window, given *calc.Card, on bool) {
	u := &m.Card.Used
	p.write(leftRoom, 16, "start", "operating window: "+u.Metal+", "+u.Joint+", "+m.Card.Setup.Filler.ID+", "+
		WireText(u.Wire.V)+", "+u.Mode)
	p.write(leftRoom, 32, "start", "travel, mm/s, upward; wire feed, m/min, to the right")
	p.write(leftRoom, p.high-40, "start",
		"+ good   . cold   x hot   # burn-through   , another edge not met   box: suggestion")
	p.write(leftRoom, p.high-22, "start", "strike a test bead on scrap of the same sheet first")
	if on {
		p.write(leftRoom, p.high-6, "start", fmt.Sprintf("%c: as given, %.2f m/min at %.2f mm/s: %s",
			givenMark, given.Used.Feed.V, given.Used.Travel.V, given.Verdict()))
	}
	if words := m.CoarserWords(); words != "" {
		p.write(leftRoom, p.high-57, "start", words)
	}
}
