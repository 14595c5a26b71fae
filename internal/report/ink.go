package report

import (
	"bytes"
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

// ink is a page being printed.
type ink struct {
	f    *fpdf.Fpdf
	w, h float64 // mm, between the side edges and of the whole page
	y    float64 // next free line
	font *sfnt.Font
	buf  sfnt.Buffer
	gone []rune // characters that the font does not have

	comma bool // in numbers
}

func newInk(paper Paper, when time.Time) (*ink, error) {
	f := fpdf.New("P", "mm", string(paper), "")
	f.AddUTF8FontFromBytes("go", "", goregular.TTF)
	f.AddUTF8FontFromBytes("go", "B", gobold.TTF)
	f.SetCatalogSort(true)
	f.SetAutoPageBreak(false, 0)
	f.SetMargins(edgeMM, edgeMM, edgeMM)
	f.SetProducer("brazebooth", true)
	f.SetCreationDate(when)
	f.SetModificationDate(when)
	f.AddPage()
	font, err := sfnt.Parse(goregular.TTF)
	if err != nil {
		return nil, err
	}
	w, h := f.GetPageSize()
	return &ink{f: f, w: w - 2*edgeMM, h: h, y: edgeMM, font: font}, f.Error()
}

func (k *ink) bytes() ([]byte, error) {
	var out bytes.Buffer
	err := k.f.Output(&out)
	return out.Bytes(), err
}

// safe replaces and remembers the characters that the font does not have.
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

// text writes at a place, its baseline at y, and returns how wide it is, mm.
func (k *ink) text(x, y, points float64, style, s string) float64 {
	if s = k.safe(s); s == "" {
		return 0
	}
	k.f.SetFont("go", style, points)
	k.f.Text(x, y, s)
	return k.f.GetStringWidth(s)
}

// para writes a text across the page, and moves on.
func (k *ink) para(points float64, style, s string) {
	k.f.SetFont("go", style, points)
	for _, l := range k.f.SplitText(k.safe(s), k.w) {
		k.y += lineHigh(points)
		k.f.Text(edgeMM, k.y, l)
	}
}

// own is a paragraph of somebody's own words: they stand as they were written.
func (k *ink) own(points float64, style, s string) {
	comma := k.comma
	k.comma = false
	k.para(points, style, s)
	k.comma = comma
}

// high is how high paragraphs stand, mm.
func (k *ink) high(list []string, points float64) float64 {
	lines := 0
	k.f.SetFont("go", "", points)
	for _, s := range list {
		lines += len(k.f.SplitText(k.safe(s), k.w))
	}
	return float64(lines) * lineHigh(points)
}

func lineHigh(points float64) float64 { return points / ptPerMM * 1.25 }

func (k *ink) rule() {
	k.y += 2
	k.f.SetLineWidth(0.3)
	k.f.Line(edgeMM, k.y, edgeMM+k.w, k.y)
	k.y++
}

// greys fill the zones of a window: a printer without colour tells them apart.
var greys = map[byte]int{'+': 255, ',': 235, '.': 205, 'x': 150, '#': 90, '?': 225}

// window is wire feed to the right and travel upward, the suggestion in a box; it returns where its lower edge lies.
func (k *ink) window(m *calc.Window, sys quantity.System) (low float64) {
	const w, h, x = 84.0, 48.0, edgeMM
	nx, ny, y := len(m.Feeds), len(m.Travels), k.y+3
	dx, dy := w/float64(nx), h/float64(ny)
	corner := func(i, j int) (float64, float64) { return x + float64(i)*dx, y + h - float64(j+1)*dy }
	for i := range nx {
		for j := range ny {
			g := greys[PointMark(m, i, j)]
			k.f.SetFillColor(g, g, g)
			px, py := corner(i, j)
			k.f.Rect(px, py, dx+0.05, dy+0.05, "F")
		}
	}
	k.f.SetLineWidth(0.3)
	k.f.Rect(x, y, w, h, "D")
	px, py := corner(m.At(m.Suggestion.Feed, m.Suggestion.Travel))
	k.f.SetLineWidth(0.7)
	k.f.Rect(px-0.8, py-0.8, dx+1.6, dy+1.6, "D")
	span := func(axis []float64, unit string) string {
		from, _, _ := quantity.Ends(axis[0], axis[0], axis[0], unit, sys)
		return from + " to " + quantity.Show(axis[len(axis)-1], unit, sys)
	}
	k.text(x, y+h+3.5, 7.5, "", "wire feed "+span(m.Feeds, "m/min")+"; up: travel "+span(m.Travels, "mm/s"))
	k.text(x, y+h+7, 7.5, "", "white good, light cold or another edge, grey hot, dark burns through; box: suggested")
	if words := m.CoarserWords(); words != "" {
		k.text(x, y+h+10.5, 7.5, "", words)
		return y + h + 12.5
	}
	return y + h + 9
}
