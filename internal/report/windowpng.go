package report

import (
	"bytes"
	"image"
	"image/color"
	"image/draw"
	"image/png"

	"golang.org/x/image/font"
	"golang.org/x/image/font/basicfont"
	"golang.org/x/image/math/fixed"

	"brazebooth/calc"
)

// WindowPNG draws an operating window as PNG, as WindowSVG does.
func WindowPNG(m *calc.Window, given *calc.Card) ([]byte, error) {
	w, h := pictureSize(m)
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	draw.Draw(img, img.Bounds(), image.White, image.Point{}, draw.Src)
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
			draw.Draw(img, image.Rect(x, y, x+wide, y+high), image.NewUniform(color.RGBA{c[0], c[1], c[2], 255}), image.Point{}, draw.Src)
			write(img, label{x + wide/2, y + high - 4, "middle", string(mark)})
		}
	}
	for _, l := range pictureLabels(m, given) {
		write(img, l)
	}
	i, j := m.At(m.Suggestion.Feed, m.Suggestion.Travel)
	x, y := corner(m, i, j)
	frame(img, image.Rect(x-1, y-1, x+wide+1, y+high+1))
	var out bytes.Buffer
	err := png.Encode(&out, img)
	return out.Bytes(), err
}

// write puts a label; the font has Latin letters only, as the labels do.
func write(img draw.Image, l label) {
	d := font.Drawer{Dst: img, Src: image.Black, Face: basicfont.Face7x13}
	x := l.x
	switch n := d.MeasureString(l.text).Round(); l.anchor {
	case "middle":
		x -= n / 2
	case "end":
		x -= n
	}
	d.Dot = fixed.P(x, l.y)
	d.DrawString(l.text)
}

// frame draws a border two pixels wide around r.
func frame(img draw.Image, r image.Rectangle) {
	const wide = 2
	for _, side := range [...]image.Rectangle{
		image.Rect(r.Min.X, r.Min.Y, r.Max.X, r.Min.Y+wide), image.Rect(r.Min.X, r.Max.Y-wide, r.Max.X, r.Max.Y),
		image.Rect(r.Min.X, r.Min.Y, r.Min.X+wide, r.Max.Y), image.Rect(r.Max.X-wide, r.Min.Y, r.Max.X, r.Max.Y),
	} {
		draw.Draw(img, side, image.Black, image.Point{}, draw.Src)
	}
}
