package report

import (
	"fmt"
	"image"
	"image/color"
	"math"
	"strings"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"brazebooth/calc"
	"brazebooth/internal/joint"
	"brazebooth/internal/picture"
	"brazebooth/internal/quantity"
)

// inks draw the parts of a joint in characters. On the surface of a coated member X marks boiled and z melted zinc.
const inks = ` /\o=Xz`

// drawn is a cross-section and the area that a drawing shows.
type drawn struct {
	joint.Section
	bead  *joint.Bead
	frame joint.Frame
}

func newDrawn(s *calc.Section) drawn {
	d := drawn{Section: SectionOf(s)}
	if d.Kind == joint.Lap || d.Kind == joint.Tee {
		d.Gap = 0 // these joints are drawn closed
	}
	d.bead, d.frame = d.Bead(), d.Whole()
	return d
}

// SectionOf is a joint as it is drawn.
func SectionOf(s *calc.Section) joint.Section {
	kind, _ := joint.KindOf(s.Joint)
	return joint.Section{
		Shape:  joint.Shape{Kind: kind, Thick: s.Thick, Gap: s.Gap, Wet: s.Wet, Phi: s.Phi, Backing: s.Backing},
		Melted: s.Melted, Boiled: s.Boiled, MeltedBack: s.MeltedBack, BoiledBack: s.BoiledBack}
}

// Drawing is a joint to scale in at most h lines of at most w columns, each half as wide as a line is high, and how
// many millimetres a column is wide. It returns no lines if the joint is not modelled.
func Drawing(s *calc.Section, w, h int) (lines []string, perColumn float64) {
	if !s.Drawn || w < 20 || h < 4 {
		return nil, 0
	}
	d := newDrawn(s)
	f := d.frame
	perColumn = math.Max((f.Right-f.Left)/float64(w), (f.Top-f.Low)/float64(h)/2)
	rows := int(math.Ceil((f.Top - f.Low) / (2 * perColumn)))
	cols := int(math.Ceil((f.Right - f.Left) / perColumn))
	for r := range min(rows, h) {
		line := make([]byte, min(cols, w))
		for c := range line {
			p := joint.Point{X: f.Left + (float64(c)+0.5)*perColumn, Y: f.Top - (float64(r)+0.5)*2*perColumn}
			line[c] = inks[d.At(d.bead, p, 2*perColumn)]
		}
		lines = append(lines, strings.TrimRight(string(line), " "))
	}
	return lines, perColumn
}

// Joint is a card's cross-section as a picture: the members, the bead and the zinc, to scale.
type Joint struct {
	*calc.Card
	Units quantity.System
	Comma bool // in numbers, instead of the point
}

// SVG and PNG return the picture, which needs a section that is drawn. PNG takes the dots per inch of an A4 sheet.
func (j Joint) SVG() ([]byte, error)        { return j.picture().SVG() }
func (j Joint) PNG(dpi int) ([]byte, error) { return j.picture().PNG(dpi) }

// sectionFills are the fills of the parts. Each has a lightness of its own, so that they can be told apart without
// colour.
var sectionFills = [joint.Parts]picture.Key{
	joint.First:   {Fill: color.Gray{0xa8}, Text: "first member"},
	joint.Second:  {Fill: color.Gray{0xcc}, Text: "second member"},
	joint.Filler:  {Fill: color.RGBA{0xb0, 0x6a, 0x2c, 255}, Text: "bead"},
	joint.Backing: {Fill: color.RGBA{0x6c, 0x78, 0x84, 255}, Text: "backing"},
	joint.Boiled:  {Fill: color.RGBA{0x30, 0x20, 0x00, 255}, Text: "zinc boiled"},
	joint.Melted:  {Fill: color.RGBA{0xe8, 0xc0, 0x20, 255}, Text: "zinc melted"},
}

func (j Joint) picture() *picture.Picture {
	p := newPicture("", "", j.Card, VerdictText(j.Card), j.Units, j.Comma)
	p.HideAxes()
	d := newDrawn(&j.Section)
	parts := d.parts()
	for part := joint.First; part < joint.Parts; part++ {
		if parts[part] {
			p.Keys = append(p.Keys, sectionFills[part])
		}
	}
	foot := "To scale, by the middle values."
	if f, ok := j.Figure("bead_width"); ok {
		v := ValueOf(&f, j.Units)
		foot += fmt.Sprintf(" Bead width %s (%s).", v, v.Band())
	}
	p.Foot = []picture.Line{{Text: foot, Size: picture.Small}, {Size: picture.Small,
		Text: "Own computation: strike a test bead on scrap of the same sheet first, and cut it."}}
	p.Add(&toScale{d, j.Units})
	return p
}

// newPicture is a picture with the names of its axes and, above it, what it is about and what it says.
func newPicture(x, y string, card *calc.Card, said string, sys quantity.System, comma bool) *picture.Picture {
	p := picture.New(x, y)
	if comma {
		p.Say = quantity.Comma
	}
	p.Head = []picture.Line{{Text: PracticeWork(card, sys), Size: picture.Near},
		{Text: said, Size: picture.Far, Bold: true}}
	return p
}

// parts are the parts that a drawing contains.
func (d *drawn) parts() (parts [joint.Parts]bool) {
	const dots = 200
	f := d.frame
	cell := max(f.Right-f.Left, f.Top-f.Low) / dots
	for x := f.Left + cell/2; x < f.Right; x += cell {
		for y := f.Low + cell/2; y < f.Top; y += cell {
			parts[d.At(d.bead, joint.Point{X: x, Y: y}, 2*cell)] = true
		}
	}
	return parts
}

// toScale draws a cross-section as large as its sheet allows, with the same scale both ways, and a bar that shows a
// length.
type toScale struct {
	drawn
	units quantity.System
}

// dotsPerPoint is fine enough for a sheet in the hand.
const dotsPerPoint = 2

// Plot draws the cross-section. The plot's own axes are not used.
func (s *toScale) Plot(c draw.Canvas, _ *plot.Plot) {
	const bar = 1.6 * picture.Near // below the joint
	f, room := s.frame, vg.Point{X: c.Max.X - c.Min.X, Y: c.Max.Y - c.Min.Y - bar}
	perMM := min(room.X/vg.Length(f.Right-f.Left), room.Y/vg.Length(f.Top-f.Low))
	w, h := perMM*vg.Length(f.Right-f.Left), perMM*vg.Length(f.Top-f.Low)
	at := vg.Point{X: c.Min.X + (room.X-w)/2, Y: c.Min.Y + bar + (room.Y-h)/2}
	img := image.NewRGBA(image.Rect(0, 0, int(math.Ceil(float64(w)*dotsPerPoint)),
		int(math.Ceil(float64(h)*dotsPerPoint))))
	cell := 1 / (float64(perMM) * dotsPerPoint)
	// The state of the zinc is drawn as thick as a line, however thin the coating is.
	coat := 2.5 / float64(perMM)
	for y := range img.Rect.Dy() {
		for x := range img.Rect.Dx() {
			p := joint.Point{X: f.Left + (float64(x)+0.5)*cell, Y: f.Top - (float64(y)+0.5)*cell}
			if part := s.At(s.bead, p, coat); part != joint.Air {
				img.Set(x, y, sectionFills[part].Fill)
			}
		}
	}
	c.DrawImage(vg.Rectangle{Min: at, Max: vg.Point{X: at.X + w, Y: at.Y + h}}, img)
	s.bar(&c, perMM)
}

// bar draws a length in the leading units, about a fifth of the joint.
func (s *toScale) bar(c *draw.Canvas, perMM vg.Length) {
	long, unit := picture.Round((s.frame.Right-s.frame.Left)/5), "mm"
	text := quantity.Show(long, unit, s.units.Lead())
	length := perMM * vg.Length(long)
	y := c.Min.Y + picture.Near/2
	style := draw.LineStyle{Color: picture.Ink, Width: 3}
	c.StrokeLine2(style, c.Min.X, y, c.Min.X+length, y)
	for _, x := range [...]vg.Length{c.Min.X, c.Min.X + length} {
		c.StrokeLine2(style, x, y-4, x, y+4)
	}
	c.FillText(picture.Style(picture.Near, false), vg.Point{X: c.Min.X + length + 8, Y: y - picture.Near/3}, text)
}
