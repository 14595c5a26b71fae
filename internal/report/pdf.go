package report

import (
	"bytes"
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"codeberg.org/go-pdf/fpdf"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"

	"brazebooth/calc"
	"brazebooth/internal/plain"
	"brazebooth/internal/quantity"
)

// Wall is a page to hang at the booth: what stands on it.
type Wall struct {
	Name     string
	Job      string // metal, joint, wire in a line
	Figures  []calc.Figure
	Notes    []calc.Note
	Warnings []calc.Warning
	Zone     string
	Map      *calc.Window // nil: no picture
	Note     string
	Foot     string // where it comes from: id, date, version
	When     time.Time
	Comma    bool // in numbers, instead of the point
}

// WallOf is a live card as a page for the wall.
func WallOf(card *calc.Card, name string) Wall {
	var job []string
	for _, l := range (Head{Card: card}).words(Options{Units: quantity.Metric}) {
		job = append(job, l.Text)
	}
	return Wall{Name: name, Job: strings.Join(job, " "), Figures: card.Figures, Notes: card.Notes, Warnings: card.Warnings, Zone: card.Verdict()}
}

// Paper is the size of a page.
type Paper string

// The papers.
const (
	A4     Paper = "A4"
	Letter Paper = "Letter"
)

const (
	edgeMM  = 14.0
	ptPerMM = 72 / 25.4
)

// WallPDF prints one page for a black-and-white printer, its settings readable from two metres. It returns the characters
// that its letters do not have and that were replaced by a question mark.
func WallPDF(p *Wall, paper Paper, sys quantity.System) (pdf []byte, replaced []rune, err error) {
	ink, err := newInk(paper)
	if err != nil {
		return nil, nil, err
	}
	ink.comma = p.Comma
	ink.f.SetCreationDate(p.When)
	ink.f.SetModificationDate(p.When)
	if ink.stopped(p) {
		var out bytes.Buffer
		err := ink.f.Output(&out)
		return out.Bytes(), ink.gone, err
	}
	ink.title(p)
	ink.bigFigures(p, sys)
	ink.words(p)
	ink.middle(p, sys)
	rest := ink.cautions(p)
	ink.signature(p)
	ink.more(p, rest)
	var out bytes.Buffer
	if err := ink.f.Output(&out); err != nil {
		return nil, nil, err
	}
	return out.Bytes(), ink.gone, nil
}

// ink is a page being printed.
type ink struct {
	f    *fpdf.Fpdf
	w, h float64 // mm
	y    float64 // next free line
	font *sfnt.Font
	buf  sfnt.Buffer
	gone []rune

	comma bool // in numbers
}

func newInk(paper Paper) (*ink, error) {
	f := fpdf.New("P", "mm", string(paper), "")
	f.AddUTF8FontFromBytes("go", "", goregular.TTF)
	f.AddUTF8FontFromBytes("go", "B", gobold.TTF)
	f.SetCatalogSort(true)
	f.SetAutoPageBreak(false, 0)
	f.SetMargins(edgeMM, edgeMM, edgeMM)
	f.SetProducer("brazebooth", true)
	f.AddPage()
	font, err := sfnt.Parse(goregular.TTF)
	if err != nil {
		return nil, err
	}
	w, h := f.GetPageSize()
	return &ink{f: f, w: w, h: h, y: edgeMM, font: font}, f.Error()
}

// safe keeps a text to what the letters have, and remembers what they do not.
func (k *ink) safe(s string) string {
	if k.comma {
		s = quantity.Comma(s)
	}
	return strings.Map(func(r rune) rune {
		if g, err := k.font.GlyphIndex(&k.buf, r); err == nil && g != 0 {
			return r
		}
		if !slices.Contains(k.gone, r) {
			k.gone = append(k.gone, r)
		}
		return '?'
	}, plain.Line(s, 2000))
}

func (k *ink) face(style string, points float64) { k.f.SetFont("go", style, points) }

// text writes at a place, its baseline at y.
func (k *ink) text(x, y float64, s string) { k.f.Text(x, y, k.safe(s)) }

// para writes wrapped text from x over a width, and moves the page on.
func (k *ink) para(x, width, points float64, style, s string) {
	k.face(style, points)
	line := k.lineHigh(points)
	for _, l := range k.f.SplitText(k.safe(s), width) {
		k.y += line
		k.f.Text(x, k.y, l)
	}
}

// own is a paragraph of somebody's own words, across the page: they stand as they were written.
func (k *ink) own(points float64, style, s string) {
	comma := k.comma
	k.comma = false
	k.para(edgeMM, k.w-2*edgeMM, points, style, s)
	k.comma = comma
}

func (k *ink) rule() {
	k.y += 2
	k.f.SetLineWidth(0.3)
	k.f.Line(edgeMM, k.y, k.w-edgeMM, k.y)
	k.y++
}

// stopped is the whole page of a job that is not to be done: the stop in the largest letters, no setting, no signature.
func (k *ink) stopped(p *Wall) bool {
	stops := calc.Stops(p.Warnings)
	if len(stops) == 0 {
		return false
	}
	k.para(edgeMM, k.w-2*edgeMM, 90, "B", "STOP")
	k.y += 6
	k.own(20, "B", p.Name)
	k.para(edgeMM, k.w-2*edgeMM, 10, "", p.Job)
	k.rule()
	for _, s := range stops {
		k.y += 3
		k.para(edgeMM, k.w-2*edgeMM, 20, "", s.Text)
	}
	k.y = k.h - edgeMM - 8
	k.face("", 8)
	k.text(edgeMM, k.y, p.Foot)
	return true
}

// noteCells is how much of a note stands on the first page; a longer one stands behind, whole.
const noteCells = 280

func (k *ink) title(p *Wall) {
	k.own(22, "B", p.Name)
	k.para(edgeMM, k.w-2*edgeMM, 10, "", p.Job)
	if p.Note != "" {
		k.own(10, "", "Note: "+plain.Line(p.Note, noteCells))
	}
	k.rule()
}

// wallFigures are the settings that a hand reads from two metres away, in their order.
var wallFigures = [...]string{"wire_feed", "volts", "travel", "arc_on", "arc_off", "spot_step", "gas_flow", "stickout"}

// bigFigures are the settings, two in a row, their digits some 12 mm high.
func (k *ink) bigFigures(p *Wall, sys quantity.System) {
	column, n := (k.w-2*edgeMM)/2, 0
	const high = 25.0
	for _, name := range wallFigures {
		f, ok := figureIn(p.Figures, name)
		if !ok {
			continue
		}
		x, y := edgeMM+float64(n%2)*column, k.y+float64(n/2)*high
		value, band := quantity.Band(f.Value, f.Low, f.High, f.Unit, sys.Lead())
		k.face("", 11)
		k.text(x, y+6, calc.FigureLabel(name))
		if f.Low != f.High && band != "" {
			k.face("", 10)
			k.text(x+34, y+6, band)
		}
		k.face("B", 46)
		k.text(x, y+21, value)
		wide := k.f.GetStringWidth(k.safe(value))
		k.face("", 18)
		k.text(x+wide+2, y+21, quantity.Label(f.Unit, sys.Lead()))
		if name == "travel" {
			k.face("", 10)
			counted := fmt.Sprintf("%.1f s for 100 mm", quantity.Seconds100(f.Value))
			if sys.Lead() != quantity.Metric {
				counted = fmt.Sprintf("%.1f s for 4 in", quantity.Seconds4in(f.Value))
			}
			k.text(x+34, y+10.5, counted)
		}
		n++
	}
	k.y += math.Ceil(float64(n)/2) * high
	k.rule()
}

func figureIn(list []calc.Figure, name string) (*calc.Figure, bool) {
	for i := range list {
		if list[i].Name == name {
			return &list[i], true
		}
	}
	return nil, false
}

// words are the settings that are words.
func (k *ink) words(p *Wall) {
	for _, n := range p.Notes {
		k.para(edgeMM, k.w-2*edgeMM, 10.5, "", n.Name+": "+n.Text)
	}
	k.rule()
}

// middle is the map of all settings with what else follows beside it.
func (k *ink) middle(p *Wall, sys quantity.System) {
	top, left := k.y, edgeMM
	if p.Map != nil {
		k.drawMap(p.Map, sys.Lead(), edgeMM, top+3, 84, 48)
		left = edgeMM + 92
	}
	y := top + 5
	for _, name := range [...]string{"current", "net_heat", "bead_width", "wetting_angle", "base_peak_temperature", "throat", "zinc_boiled_halfwidth", "margin"} {
		f, ok := figureIn(p.Figures, name)
		if !ok {
			continue
		}
		value, band := quantity.Band(f.Value, f.Low, f.High, f.Unit, sys.Lead())
		k.face("", 10)
		k.text(left, y, calc.FigureLabel(name))
		k.face("B", 10)
		k.text(left+30, y, value+" "+quantity.Label(f.Unit, sys.Lead()))
		k.face("", 9)
		k.text(left+58, y, band)
		y += 5.2
	}
	if p.Zone != "" {
		k.face("B", 10)
		k.text(left, y, "zone: "+p.Zone)
		y += 5.2
	}
	k.y = y
	if p.Map != nil {
		k.y = max(y, top+60)
		if p.Map.Coarser {
			k.y = max(y, top+63.5)
		}
	}
	k.rule()
}

// greys fill the zones of a map: a printer without colour tells them apart.
var greys = map[byte]int{'+': 255, ',': 235, '.': 205, 'x': 150, '#': 90, '?': 225}

// drawMap is the operating window: wire feed to the right, travel upward, the suggestion in a box.
func (k *ink) drawMap(m *calc.Window, sys quantity.System, x, y, w, h float64) {
	nx, ny := len(m.Feeds), len(m.Travels)
	dx, dy := w/float64(nx), h/float64(ny)
	for i := range nx {
		for j := range ny {
			g := greys[PointMark(m, i, j)]
			k.f.SetFillColor(g, g, g)
			k.f.Rect(x+float64(i)*dx, y+h-float64(j+1)*dy, dx+0.05, dy+0.05, "F")
		}
	}
	k.f.SetLineWidth(0.3)
	k.f.Rect(x, y, w, h, "D")
	i, j := m.At(m.Suggestion.Feed, m.Suggestion.Travel)
	k.f.SetLineWidth(0.7)
	k.f.Rect(x+float64(i)*dx-0.8, y+h-float64(j+1)*dy-0.8, dx+1.6, dy+1.6, "D")
	k.face("", 7.5)
	k.text(x, y+h+3.5, "wire feed "+span(m.Feeds[0], m.Feeds[nx-1], "m/min", sys)+"; up: travel "+span(m.Travels[0], m.Travels[ny-1], "mm/s", sys))
	k.text(x, y+h+7, "white good, light cold or another edge, grey hot, dark burns through; box: suggested")
	if words := m.CoarserWords(); words != "" {
		k.text(x, y+h+10.5, words)
	}
}

// span is a range in the units of the page.
func span(low, high float64, unit string, sys quantity.System) string {
	a, _ := quantity.Band(low, low, low, unit, sys)
	b, _ := quantity.Band(high, high, high, unit, sys)
	return a + " to " + b + " " + quantity.Label(unit, sys)
}

// leastPoints are the smallest letters for a caution that hangs on a wall.
const leastPoints = 6.5

// signed is where the line for the signature lies, from the lower edge.
const signed = edgeMM + 18

// cautions are every caution in the largest letters in which all of them fit; what does not fit in the smallest is
// returned, for another page.
func (k *ink) cautions(p *Wall) (rest []calc.Warning) {
	room := k.h - signed - k.y
	points := 9.5
	for ; points > leastPoints && k.high(p.Warnings, points) > room; points -= 0.5 {
	}
	list := p.Warnings
	if k.high(list, points) > room {
		room -= k.lineHigh(points) // says that there is more
	}
	for len(list) > 0 && k.high(list[:1], points) <= room {
		room -= k.high(list[:1], points)
		k.para(edgeMM, k.w-2*edgeMM, points, "", cautionText(&list[0]))
		list = list[1:]
	}
	if len(list) > 0 {
		k.para(edgeMM, k.w-2*edgeMM, points, "B", fmt.Sprintf("The cautions go on behind (%d): hang every page.", len(list)))
	}
	return list
}

// more puts the cautions that the first page has no room for on further ones.
func (k *ink) more(p *Wall, list []calc.Warning) {
	const points = 11
	if plain.Width(p.Note) > noteCells {
		list = append(slices.Clone(list), calc.Warning{Severity: "note", Text: p.Note})
	}
	for i := range list {
		if i == 0 || k.y+k.high(list[i:i+1], points) > k.h-edgeMM-10 {
			k.f.AddPage()
			k.y = edgeMM
			k.para(edgeMM, k.w-2*edgeMM, 18, "B", p.Name+": continued")
			k.rule()
			k.face("", 8)
			k.text(edgeMM, k.h-edgeMM, fmt.Sprintf("%s, page %d", p.Foot, k.f.PageNo()))
		}
		k.para(edgeMM, k.w-2*edgeMM, points, "", cautionText(&list[i]))
		k.y += 2
	}
}

// high is how high a list of cautions stands, mm.
func (k *ink) high(list []calc.Warning, points float64) float64 {
	lines := 0
	k.face("", points)
	for i := range list {
		lines += len(k.f.SplitText(k.safe(cautionText(&list[i])), k.w-2*edgeMM))
	}
	return float64(lines) * k.lineHigh(points)
}

func (k *ink) lineHigh(points float64) float64 { return points / ptPerMM * 1.25 }

func cautionText(w *calc.Warning) string {
	return strings.ToUpper(string(w.Severity)) + "  " + w.Text
}

func (k *ink) signature(p *Wall) {
	k.y = k.h - signed
	k.rule()
	k.face("", 10)
	k.text(edgeMM, k.y+7, "Test bead peeled and found good by ______________________   date ______________   booth __________")
	k.face("", 8)
	k.text(edgeMM, k.y+13, p.Foot)
	k.text(edgeMM, k.y+16.5, "Local codes and licensed practice come before this page. Structural, lifting, pressure and vehicle work: a qualified procedure and person.")
}
