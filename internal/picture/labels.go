package picture

import (
	"image/color"
	"math"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Labels writes names where there is room for them, each at the place of its list that lies furthest from everything
// already taken. Labels is added to a plot last.
type Labels struct {
	List  []Label
	Taken []plotter.XY // points that no label may cover, in the plot's units
}

// Label is a name and the places where its middle may lie. A label without room is left out.
type Label struct {
	Text   string
	Size   vg.Length
	Bold   bool
	Bare   bool // without a white box behind it
	Beside bool // next to its place, not on it
	Places []plotter.XY
}

// Plot draws the labels.
func (l *Labels) Plot(c draw.Canvas, p *plot.Plot) {
	toX, toY := p.Transforms(&c)
	var taken []vg.Rectangle
	for _, t := range l.Taken {
		at := vg.Point{X: toX(t.X), Y: toY(t.Y)}
		taken = append(taken, around(at, 2*Small, 2*Small))
	}
	for _, label := range l.List {
		s := Style(label.Size, label.Bold)
		s.XAlign, s.YAlign = draw.XCenter, draw.YCenter
		wide, high := s.Width(label.Text)+8, label.Size
		best, room := vg.Rectangle{}, vg.Length(0)
		for _, at := range label.points(toX, toY, wide, high) {
			box := around(at, wide, high)
			if free := freeAbout(box, c.Rectangle, taken); free > room {
				best, room = box, free
			}
		}
		if room == 0 {
			continue
		}
		if !label.Bare {
			c.SetColor(color.White)
			low := label.Size / 8 // letters reach a little below their middle
			c.Fill(vg.Rectangle{Min: vg.Point{X: best.Min.X, Y: best.Min.Y - low},
				Max: vg.Point{X: best.Max.X, Y: best.Max.Y - low}}.Path())
		}
		c.FillText(s, vg.Point{X: (best.Min.X + best.Max.X) / 2, Y: (best.Min.Y + best.Max.Y) / 2}, label.Text)
		taken = append(taken, best)
	}
}

// points are the places on the paper where the middle of a label of this size may lie.
func (l *Label) points(toX, toY func(float64) vg.Length, wide, high vg.Length) (list []vg.Point) {
	for _, place := range l.Places {
		at := vg.Point{X: toX(place.X), Y: toY(place.Y)}
		if !l.Beside {
			list = append(list, at)
			continue
		}
		x, y := wide/2+mark, high/2+mark
		list = append(list, vg.Point{X: at.X + x, Y: at.Y}, vg.Point{X: at.X - x, Y: at.Y},
			vg.Point{X: at.X, Y: at.Y + y}, vg.Point{X: at.X, Y: at.Y - y})
	}
	return list
}

// mark is half the width of a mark, with some room around it.
const mark = 1.3 * Small

func around(at vg.Point, wide, high vg.Length) vg.Rectangle {
	return vg.Rectangle{Min: vg.Point{X: at.X - wide/2, Y: at.Y - high/2},
		Max: vg.Point{X: at.X + wide/2, Y: at.Y + high/2}}
}

// freeAbout is the distance of a box to the frame around it and to everything taken, at most a few letters. It is 0 or
// less if the box does not fit.
func freeAbout(box, frame vg.Rectangle, taken []vg.Rectangle) vg.Length {
	free := min(box.Min.X-frame.Min.X, frame.Max.X-box.Max.X, box.Min.Y-frame.Min.Y, frame.Max.Y-box.Max.Y, 3*Far)
	for _, t := range taken {
		x := max(box.Min.X-t.Max.X, t.Min.X-box.Max.X)
		y := max(box.Min.Y-t.Max.Y, t.Min.Y-box.Max.Y)
		apart := max(x, y)
		if x > 0 && y > 0 {
			apart = vg.Length(math.Hypot(float64(x), float64(y)))
		}
		free = min(free, apart)
	}
	return free
}

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
