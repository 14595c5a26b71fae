package report

import (
	"bytes"
	"fmt"
	"html"
	"image"
	"image/color"
	"image/draw"
	"image/png"

	"golang.org/x/image/font"
	"golang.org/x/image/font/basicfont"
	"golang.org/x/image/math/fixed"
)

// picture is a drawing in pixels, described once; SVG and PNG are made of it.
type picture struct {
	wide, high int
	shapes     []shape // in the order in which they are painted
}

// shape is one thing on a picture: a filled box, a black frame two pixels wide, a line by w and h, or a word.
type shape struct {
	kind       shapeKind
	x, y, w, h int
	colour     color.RGBA
	every      int    // a line of 1 is solid, one of n has gaps of half of n pixels
	anchor     string // of a word: start, middle, end
	text       string
}

type shapeKind int

const (
	box shapeKind = iota
	frame
	stroke
	word
)

const frameWide = 2

var black = color.RGBA{A: 255}

func (p *picture) write(x, y int, anchor, text string) {
	p.shapes = append(p.shapes, shape{kind: word, x: x, y: y, anchor: anchor, text: text})
}

func (p *picture) fill(x, y, w, h int, c color.RGBA) {
	p.shapes = append(p.shapes, shape{x: x, y: y, w: w, h: h, colour: c})
}

func (p *picture) stroke(x0, y0, x1, y1 int, c color.RGBA, every int) {
	p.shapes = append(p.shapes, shape{kind: stroke, x: x0, y: y0, w: x1 - x0, h: y1 - y0, colour: c, every: every})
}

func (p *picture) svg() []byte {
	var b bytes.Buffer
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" width="%d" height="%d" `+
		`font-family="monospace" font-size="11">`+"\n", p.wide, p.high)
	fmt.Fprintf(&b, `<rect width="%d" height="%d" fill="#ffffff"/>`+"\n", p.wide, p.high)
	for i := range p.shapes {
		s := &p.shapes[i]
		at := fmt.Sprintf(`x="%d" y="%d" width="%d" height="%d"`, s.x, s.y, s.w, s.h)
		switch s.kind {
		case word:
			text := html.EscapeString(s.text)
			fmt.Fprintf(&b, `<text x="%d" y="%d" text-anchor="%s">%s</text>`+"\n", s.x, s.y, s.anchor, text)
		case frame:
			fmt.Fprintf(&b, `<rect %s fill="none" stroke="#000000" stroke-width="%d"/>`+"\n", at, frameWide)
		default:
			fmt.Fprintf(&b, `<rect %s fill="#%02x%02x%02x"/>`, at, s.colour.R, s.colour.G, s.colour.B)
		}
	}
	b.WriteString("</svg>\n")
	return b.Bytes()
}

func (p *picture) png() ([]byte, error) {
	img := image.NewRGBA(image.Rect(0, 0, p.wide, p.high))
	draw.Draw(img, img.Bounds(), image.White, image.Point{}, draw.Src)
	for i := range p.shapes {
		p.shapes[i].paint(img)
	}
	var out bytes.Buffer
	err := png.Encode(&out, img)
	return out.Bytes(), err
}

func (s *shape) paint(img draw.Image) {
	switch s.kind {
	case box:
		area := image.Rect(s.x, s.y, s.x+s.w, s.y+s.h)
		draw.Draw(img, area, image.NewUniform(s.colour), image.Point{}, draw.Src)
	case frame:
		for x := range s.w {
			for y := range s.h {
				if min(x, y, s.w-1-x, s.h-1-y) < frameWide {
					img.Set(s.x+x, s.y+y, black)
				}
			}
		}
	case stroke:
		n := max(s.w, -s.w, s.h, -s.h, 1)
		for i := range n + 1 {
			x, y := s.x+s.w*i/n, s.y+s.h*i/n
			if s.every == 1 || (x+y)%s.every < (s.every+1)/2 {
				img.Set(x, y, s.colour)
			}
		}
	case word: // the font has Latin letters only, as the words do
		d := font.Drawer{Dst: img, Src: image.Black, Face: basicfont.Face7x13}
		before := map[string]int{"middle": 2, "end": 1}[s.anchor]
		x := s.x
		if before > 0 {
			x -= d.MeasureString(s.text).Round() / before
		}
		d.Dot = fixed.P(x, s.y)
		d.DrawString(s.text)
	}
}
