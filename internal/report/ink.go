package report

import (
	"slices"
	"strings"
	"time"

	"codeberg.org/go-pdf/fpdf"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"

	"brazebooth/internal/picture"
	"brazebooth/internal/plain"
	"brazebooth/internal/quantity"
)

// Paper is the size of a page.
type Paper string

// The paper sizes.
const (
	A4     Paper = "A4"
	Letter Paper = "Letter"
)

const (
	edgeMM  = 14.0
	ptPerMM = 72 / 25.4
)

// ink is a PDF while it is printed.
type ink struct {
	f       *fpdf.Fpdf
	w, h    float64 // mm: width between the margins, height of the whole page
	y       float64 // where the next line begins
	font    *sfnt.Font
	buf     sfnt.Buffer
	missing []rune // characters that the font does not have

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

// safe replaces the characters that the font does not have, and remembers them.
func (k *ink) safe(s string) string {
	return strings.Map(func(r rune) rune {
		if g, err := k.font.GlyphIndex(&k.buf, r); err == nil && g != 0 {
			return r
		}
		if !slices.Contains(k.missing, r) {
			k.missing = append(k.missing, r)
		}
		return '?'
	}, plain.Line(quantity.Marked(s, k.comma), 2000))
}

// text writes at a place, with its baseline at y, and returns its width, mm.
func (k *ink) text(x, y, points float64, style, s string) float64 {
	if s = k.safe(s); s == "" {
		return 0
	}
	k.f.SetFont("go", style, points)
	k.f.Text(x, y, s)
	return k.f.GetStringWidth(s)
}

// para writes text across the page and moves down.
func (k *ink) para(points float64, style, s string) {
	k.f.SetFont("go", style, points)
	for _, l := range k.f.SplitText(k.safe(s), k.w) {
		k.y += lineHigh(points)
		k.f.Text(edgeMM, k.y, l)
	}
}

// verbatim is a paragraph of a user's own words, which stay as they were written.
func (k *ink) verbatim(points float64, style, s string) {
	comma := k.comma
	k.comma = false
	k.para(points, style, s)
	k.comma = comma
}

// height is the height of paragraphs, mm.
func (k *ink) height(list []string, points float64) float64 {
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

// mapImage is the name of the map's picture in a PDF; both pages show the same picture.
const (
	mapImage = "map"
	mapDPI   = 150
)

// put draws the map's picture on the page, w wide, and returns the height of its lower edge.
func (k *ink) put(x, y, w float64) (low float64) {
	k.f.ImageOptions(mapImage, x, y, w, 0, false, fpdf.ImageOptions{ImageType: "png"}, 0, "")
	return y + w*float64(picture.High/picture.Wide)
}

// smallMap is the map to be read in the hand. It returns the height of its lower edge.
func (k *ink) smallMap(m *Map) (low float64) {
	low = k.put(edgeMM, k.y+1, 88)
	if words := m.CoarserWords(); words != "" {
		k.text(edgeMM, low+3, 7.5, "", words)
		low += 4
	}
	return low + 1
}

// mapSheet is the map on a page in landscape, to be read from two metres.
func (k *ink) mapSheet(p *Wall, paper Paper) {
	const margin, foot = 7, 5
	k.f.AddPageFormat("L", k.f.GetPageSizeStr(string(paper)))
	w, h := k.f.GetPageSize()
	wide := min(w-2*margin, (h-2*margin-foot)*float64(picture.Wide/picture.High))
	k.put((w-wide)/2, margin, wide)
	k.text(margin, h-margin, 8, "", p.Name+". "+p.Foot)
}
