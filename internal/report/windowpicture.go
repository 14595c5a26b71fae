package report

import (
	"fmt"
	"image/color"
	"slices"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"brazebooth/calc"
	"brazebooth/internal/picture"
	"brazebooth/internal/quantity"
)

// Map is an operating window with its chart, as a picture. Given is the card of the setting that was asked about.
type Map struct {
	*calc.Window
	Chart *calc.Chart
	Given *calc.Card // nil for none
	Units quantity.System
	Comma bool // in numbers, instead of the point
}

// SVG and PNG return the picture. PNG takes the dots per inch of an A4 sheet.
func (m *Map) SVG() ([]byte, error)        { return m.picture().SVG() }
func (m *Map) PNG(dpi int) ([]byte, error) { return m.picture().PNG(dpi) }

// PictureDPI is enough for a screen, and for a sheet that is read from afar.
const PictureDPI = 150

// chanceLevels are steps of the chance, %, and chanceFills their fills. The lightness falls with the chance, and dark
// letters can be read on every fill.
var (
	chanceLevels = []float64{10, 50, 80}
	chanceFills  = []color.Color{color.Gray{0xff}, color.RGBA{0xdd, 0xee, 0xec, 255}, color.RGBA{0xa6, 0xd5, 0xd0, 255},
		color.RGBA{0x62, 0xb4, 0xab, 255}}
	chanceKeys = []string{"under 10 %", "10–50 %", "50–80 %", "80 % and more"}
)

func (m *Map) picture() *picture.Picture {
	sys := m.Units.Lead()
	at := setting(m.Suggestion.Feed, m.Suggestion.Travel, Options{Units: m.Units})
	best := fmt.Sprintf("%s: good with %.0f %%", at, m.Chance.Good)
	if !m.Good {
		best = "No setting is good. Nearest miss: " + at
	}
	p := newPicture("wire feed, "+quantity.Label("m/min", sys), "travel, "+quantity.Label("mm/s", sys), &m.Card, best,
		m.Units, m.Comma)
	chance := m.field(m.Chart.Chance)
	p.Add(picture.Fill(chance, chanceLevels, chanceFills))
	var labels picture.Labels
	var edges []picture.Label
	for n, e := range m.Chart.Edges {
		line, places := picture.Edge(m.field(e.Inside), picture.Stroke(n, 2.2))
		p.Add(line)
		edges = append(edges, picture.Label{Text: e.Name, Size: picture.Near, Places: places})
	}
	p.Add(m.marks(&labels)...)
	labels.List = slices.Concat(labels.List, m.zones(), edges)
	p.Add(&labels)
	picture.Ratios(&p.X, chance.Xs[0], chance.Xs[len(chance.Xs)-1])
	picture.Ratios(&p.Y, chance.Ys[0], chance.Ys[len(chance.Ys)-1])
	m.words(p)
	return p
}

// field is values over the map's axes, in the map's units.
func (m *Map) field(values []float64) *picture.Field {
	return &picture.Field{Zs: values,
		Xs: each(m.Chart.Feeds, func(v *float64) float64 { return In(*v, "m/min", m.Units) }),
		Ys: each(m.Chart.Travels, func(v *float64) float64 { return In(*v, "mm/s", m.Units) })}
}

// marks are a ring for the suggestion and a diamond for the setting that was asked about.
func (m *Map) marks(labels *picture.Labels) (list []plot.Plotter) {
	mark := func(feed, travel float64, name string, shape draw.GlyphDrawer, size vg.Length) {
		at := plotter.XY{X: In(feed, "m/min", m.Units), Y: In(travel, "mm/s", m.Units)}
		s, err := plotter.NewScatter(plotter.XYs{at})
		if err != nil {
			return // a setting outside the picture
		}
		s.Shape, s.Radius, s.Color = shape, size, picture.Ink
		list = append(list, s)
		labels.Taken = append(labels.Taken, at)
		labels.List = append(labels.List, picture.Label{Text: name, Size: picture.Near, Bold: true,
			Beside: true, Places: []plotter.XY{at}})
	}
	name := "suggested"
	if !m.Card.Met() {
		name = "nearest miss"
	}
	mark(m.Suggestion.Feed, m.Suggestion.Travel, name, picture.Ring{}, 13)
	if _, _, on := givenPoint(m.Window, m.Given); on {
		mark(m.Given.Used.Feed.V, m.Given.Used.Travel.V, "as given", picture.Diamond{}, 11)
	}
	return list
}

// zoneNames are the words that are written into the zones.
var zoneNames = [...]struct{ zone, name string }{{"good", "GOOD"}, {"cold", "COLD"}, {"hot", "TOO HOT"},
	{"burn-through", "BURNS THROUGH"}}

// zones are these words, each as large as its zone allows.
func (m *Map) zones() (list []picture.Label) {
	for _, z := range zoneNames {
		in := func(i, j int) bool {
			return PointMark(m.Window, i, j) == ZoneMark(z.zone)
		}
		for _, size := range [...]vg.Length{picture.Far, 28, picture.Near} {
			if places := m.roomFor(z.name, size, in); len(places) > 0 {
				list = append(list, picture.Label{Text: z.name, Size: size, Bold: true, Bare: z.zone == "good",
					Places: places})
				break
			}
		}
	}
	return list
}

// roomFor are the places deepest inside a zone at which a word of this size lies wholly in the zone.
func (m *Map) roomFor(word string, size vg.Length, in func(i, j int) bool) (places []plotter.XY) {
	const wide, high = 730, 320 // about the area that the axes leave on the sheet, points
	nx, ny := len(m.Feeds), len(m.Travels)
	w := int(float64(picture.Style(size, true).Width(word))/wide*float64(nx)/2) + 1
	h := int(float64(size)/high*float64(ny)/2) + 1
	holds := func(i, j, more int) bool {
		for x := i - w - more; x <= i+w+more; x++ {
			for y := j - h - more; y <= j+h+more; y++ {
				if x < 0 || y < 0 || x >= nx || y >= ny || !in(x, y) {
					return false
				}
			}
		}
		return true
	}
	for deepest := 0; ; deepest++ {
		var deeper []plotter.XY
		for i := range nx {
			for j := range ny {
				if holds(i, j, deepest) {
					deeper = append(deeper, plotter.XY{X: In(m.Feeds[i], "m/min", m.Units),
						Y: In(m.Travels[j], "mm/s", m.Units)})
				}
			}
		}
		if deeper == nil {
			return places
		}
		places = deeper
	}
}

// words writes above the map what it is about and what it suggests, and below it the meaning of the fills.
func (m *Map) words(p *picture.Picture) {
	if m.Given != nil {
		p.Head = append(p.Head, picture.Line{Size: picture.Near, Bold: true,
			Text: Grid{m.Window, m.Given}.asked("", Options{Units: m.Units})})
	}
	p.Keys = []picture.Key{{Text: "chance"}}
	for n, fill := range chanceFills {
		p.Keys = append(p.Keys, picture.Key{Fill: fill, Text: chanceKeys[n]})
	}
	foot := "Lines: where an edge is just met. Chance: that every edge is met, over everything uncertain. " +
		"Own computation: strike a test bead on scrap of the same sheet first."
	p.Foot = []picture.Line{{Text: foot, Size: picture.Small}}
	if words := m.CoarserWords(); words != "" {
		p.Foot = append(p.Foot, picture.Line{Text: words, Size: picture.Small})
	}
}
