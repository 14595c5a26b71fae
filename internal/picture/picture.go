// Package picture is the common style of this program's pictures. Each is one drawing by gonum's plot, written as PNG
// or SVG. The package sets the sizes of letters, the lines and fills, and where a label finds room; its callers decide
// what is drawn.
//
// The background is white, and no meaning rests on colour alone: fills differ in lightness, lines in their dashes, and
// both have their names beside them.
package picture

import (
	"bytes"
	"fmt"
	"image/color"

	"golang.org/x/image/font"
	"gonum.org/v1/plot"
	vgfont "gonum.org/v1/plot/font"
	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
	"gonum.org/v1/plot/vg/vgimg"
	"gonum.org/v1/plot/vg/vgsvg"
)

// Sizes of letters, in points, on a sheet of Wide by High. A capital is 0.72 of its letter's size: a letter of Far is
// 10 mm high and can be read at two metres, one of Near at one metre, one of Small in the hand.
const (
	Far   vg.Length = 42
	Near  vg.Length = 20
	Small vg.Length = 14
)

// Wide and High are an A4 sheet in landscape.
const (
	Wide = 297 * vg.Millimeter
	High = 210 * vg.Millimeter
)

const (
	edge     vg.Length = 16 // margin around the whole picture, points
	axisName vg.Length = 28
)

// Ink is the colour of letters and lines, Grey the colour of what lies behind them.
var (
	Ink  = color.Gray{0x10}
	Grey = color.Gray{0xd0}
)

// Picture is a plot with words above and below it.
type Picture struct {
	*plot.Plot
	Head, Foot []Line // from top to bottom
	Keys       []Key  // of fills and lines, in one row above the foot

	upward string // name of the vertical axis, written level above it, so that it can be read from afar

	Say func(string) string // changes how words are written, for example with a decimal comma; nil: as they are
}

// Line is a line of text.
type Line struct {
	Text string
	Size vg.Length
	Bold bool
}

// Key explains a fill or a line. Without either it is only words.
type Key struct {
	Text string
	Fill color.Color
	Line draw.LineStyle
}

// New is an empty picture with axes of these names.
func New(x, y string) *Picture {
	p := &Picture{Plot: plot.New(), Say: func(s string) string { return s }}
	p.BackgroundColor = color.White
	for _, a := range []*plot.Axis{&p.X, &p.Y} {
		a.LineStyle = draw.LineStyle{Color: Ink, Width: 1.5}
		a.Padding = 0
		a.Tick.LineStyle, a.Tick.Length = a.LineStyle, 8
		a.Tick.Label.Font, a.Tick.Label.Color = Style(Far, false).Font, Ink
		a.Label.TextStyle.Font, a.Label.TextStyle.Color = Style(axisName, false).Font, Ink
		a.Label.Padding = 4
	}
	p.X.Label.Text, p.upward = x, y
	return p
}

// Style is how text of this size is written.
func Style(size vg.Length, bold bool) text.Style {
	f := plot.DefaultFont
	f.Variant, f.Size = "Sans", size
	if bold {
		f.Weight = font.WeightBold
	}
	return text.Style{Color: Ink, Font: f, Handler: plot.DefaultTextHandler}
}

// PNG is the picture at this resolution, in dots per inch.
func (p *Picture) PNG(dpi int) ([]byte, error) {
	c := vgimg.NewWith(vgimg.UseWH(Wide, High), vgimg.UseDPI(dpi))
	p.draw(draw.New(c))
	var out bytes.Buffer
	_, err := vgimg.PngCanvas{Canvas: c}.WriteTo(&out)
	return out.Bytes(), err
}

// SVG is the picture as lines and text. Its font is not in the file, so each text carries its length and fits in any
// other plain font too.
func (p *Picture) SVG() ([]byte, error) {
	c := &measured{Canvas: vgsvg.New(Wide, High)}
	p.draw(draw.New(c))
	var out bytes.Buffer
	if _, err := c.WriteTo(&out); err != nil {
		return nil, err
	}
	// The library labels its PNG images "jpg", which not every reader accepts.
	b := bytes.ReplaceAll(out.Bytes(), []byte("data:image/jpg;"), []byte("data:image/png;"))
	parts := bytes.Split(b, []byte("<text "))
	if len(parts) != len(c.lengths)+1 {
		return b, nil
	}
	whole := bytes.NewBuffer(parts[0])
	for i, part := range parts[1:] {
		fmt.Fprintf(whole, `<text textLength="%.1f" lengthAdjust="spacingAndGlyphs" %s`, c.lengths[i].Points(), part)
	}
	return bytes.ReplaceAll(whole.Bytes(), []byte("font-family:Liberation Sans;"),
		[]byte("font-family:Liberation Sans,Arial,Helvetica,sans-serif;")), nil
}

// measured remembers the length of each text on a canvas.
type measured struct {
	*vgsvg.Canvas
	lengths []vg.Length
}

// FillString writes a text.
func (c *measured) FillString(f vgfont.Face, at vg.Point, text string) {
	if f.Font.Size > 0 {
		c.lengths = append(c.lengths, f.Width(text))
	}
	c.Canvas.FillString(f, at, text)
}

func (p *Picture) draw(c draw.Canvas) {
	c.SetColor(color.White)
	c.Fill(c.Rectangle.Path())
	p.X.Tick.Marker, p.Y.Tick.Marker = said{p.X.Tick.Marker, p.Say}, said{p.Y.Tick.Marker, p.Say}
	c = draw.Crop(c, edge, -edge, edge, -edge)
	top := c.Max.Y
	for _, l := range p.Head {
		top = p.write(&c, l, top)
	}
	top = p.write(&c, Line{Text: p.upward, Size: axisName}, top)
	low := c.Min.Y
	for i := len(p.Foot) - 1; i >= 0; i-- {
		low += lineHigh(p.Foot[i].Size)
	}
	at := low
	for _, l := range p.Foot {
		at = p.write(&c, l, at)
	}
	if len(p.Keys) > 0 {
		low += lineHigh(Near)
		p.keys(&c, low)
	}
	p.Draw(draw.Crop(c, 0, -Near, low+Small-c.Min.Y, top-Small/2-c.Max.Y))
}

func lineHigh(size vg.Length) vg.Length { return 1.25 * size }

// write writes a line below a height and returns where the next line begins. A line that is too long is written
// smaller.
func (p *Picture) write(c *draw.Canvas, l Line, top vg.Length) vg.Length {
	s := Style(l.Size, l.Bold)
	l.Text = p.Say(l.Text)
	if wide := s.Width(l.Text); wide > c.Max.X-c.Min.X {
		s.Font.Size *= (c.Max.X - c.Min.X) / wide
	}
	c.FillText(s, vg.Point{X: c.Min.X, Y: top - l.Size}, l.Text)
	return top - lineHigh(l.Size)
}

// keys draws a row of samples of fills and lines with their words.
func (p *Picture) keys(c *draw.Canvas, top vg.Length) {
	const wide, space = 40, 5
	s := Style(Near*0.9, false)
	words, length := vg.Length(0), vg.Length(0)
	for _, k := range p.Keys {
		words += s.Width(k.Text)
		length += wide + 4*space
	}
	if room := c.Max.X - c.Min.X - length; words > room { // smaller, so that the last one is not cut
		s.Font.Size *= room / words
	}
	x := c.Min.X
	for _, k := range p.Keys {
		box := vg.Rectangle{Min: vg.Point{X: x, Y: top - Near}, Max: vg.Point{X: x + wide, Y: top}}
		switch {
		case k.Fill != nil:
			c.SetColor(k.Fill)
			c.Fill(box.Path())
			c.SetLineStyle(draw.LineStyle{Color: Ink, Width: 0.7})
			c.Stroke(box.Path())
			x += wide + space
		case k.Line.Width > 0:
			c.StrokeLine2(k.Line, box.Min.X, top-Near/2, box.Max.X, top-Near/2)
			x += wide + space
		}
		c.FillText(s, vg.Point{X: x, Y: top - Near*0.85}, k.Text)
		x += s.Width(k.Text) + 3*space
	}
}
