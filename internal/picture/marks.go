package picture

import (
	"image/color"
	"math"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Ring and Diamond are marks of settings: a ring around a place, and a filled diamond. Both have a white rim, so that
// they can be seen on lines and fills.
type (
	Ring    struct{}
	Diamond struct{}
)

// DrawGlyph draws the mark.
func (Ring) DrawGlyph(c *draw.Canvas, s draw.GlyphStyle, at vg.Point) {
	rim := s
	rim.Color = color.White
	for _, r := range [...]struct {
		style draw.GlyphStyle
		width vg.Length
	}{{rim, 9}, {s, 5}} {
		c.SetLineStyle(draw.LineStyle{Color: r.style.Color, Width: r.width})
		var p vg.Path
		p.Move(vg.Point{X: at.X + s.Radius, Y: at.Y})
		p.Arc(at, s.Radius, 0, 2*math.Pi)
		p.Close()
		c.Stroke(p)
	}
}

// DrawGlyph draws the mark.
func (Diamond) DrawGlyph(c *draw.Canvas, s draw.GlyphStyle, at vg.Point) {
	for _, size := range [...]struct {
		colour color.Color
		r      vg.Length
	}{{color.White, s.Radius * 1.4}, {s.Color, s.Radius}} {
		var p vg.Path
		p.Move(vg.Point{X: at.X + size.r, Y: at.Y})
		p.Line(vg.Point{X: at.X, Y: at.Y + size.r})
		p.Line(vg.Point{X: at.X - size.r, Y: at.Y})
		p.Line(vg.Point{X: at.X, Y: at.Y - size.r})
		p.Close()
		c.SetColor(size.colour)
		c.Fill(p)
	}
}
