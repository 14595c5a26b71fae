package report

import (
	"bytes"
	"image/png"
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
)

// A map that is drawn coarser says so in every form, in the same words; any other map says nothing of it.
func TestCoarserMapsSaySo(t *testing.T) {
	schema := loadSchema(t, "window-schema.json")
	m := coarse(t, calc.Job{Metal: "mild-steel", Thickness: calc.Some(0.6), Joint: "butt", Gap: calc.Some(0.5)})
	for _, coarser := range []bool{false, true} {
		m.Coarser = coarser
		words := "drawn coarser: 12 by 8 points, since this job takes long to compute"
		for _, units := range []quantity.System{quantity.Metric, quantity.Inch, quantity.Both} {
			text := Text(Window(&m, nil), Options{Units: units})
			fits(t, "coarser", text)
			if strings.Contains(strings.Join(strings.Fields(text), " "), "The map is "+words+".") != coarser {
				t.Errorf("coarser %v:\n%s", coarser, text)
			}
		}
		if svg := string(WindowSVG(&m, nil)); strings.Contains(svg, ">"+words+"<") != coarser {
			t.Errorf("coarser %v: the picture says it: %v", coarser, !coarser)
		}
		b, err := JSON(Window(&m, nil), "test")
		if err != nil || bytes.Contains(b, []byte(`"coarser": true`)) != coarser {
			t.Errorf("coarser %v, %v: %.400s", coarser, err, b)
		}
		for _, fault := range held(t, schema, b) {
			t.Error(fault)
		}
		pdf, _, err := WallPDF(&Wall{Name: "seam", Card: &m.Card, Window: &m}, Letter, quantity.Metric)
		if err != nil {
			t.Fatal(err)
		}
		if coarser {
			readBack(t, pdf, &Wall{Name: "seam", Card: &m.Card}, words)
		}
	}
}

// The picture of a window with fewer points is as large as a full one's, and its words lie inside it.
func TestCoarserPicturesAreAsLarge(t *testing.T) {
	full := windowPicture(blankWindow(1), nil)
	for _, share := range []int{2, 4} {
		m := blankWindow(share)
		m.Coarser = true
		b, err := WindowPNG(m, nil)
		if err != nil {
			t.Fatal(err)
		}
		img, err := png.Decode(bytes.NewReader(b))
		if err != nil || img.Bounds().Dx() != full.wide || img.Bounds().Dy() != full.high {
			t.Errorf("a %d. of the points: %v, %v, want %d by %d", share, img.Bounds(), err, full.wide, full.high)
		}
		for _, l := range windowPicture(m, nil).shapes {
			if l.text == m.CoarserWords() && (l.x+7*len(l.text) > full.wide || l.y > full.high ||
				l.y < full.high-lowRoom) {
				t.Errorf("%q at %d, %d of %d by %d", l.text, l.x, l.y, full.wide, full.high)
			}
		}
	}
}

// blankWindow has a share of the full window's feeds and travels.
func blankWindow(share int) *calc.Window {
	nx, ny := calc.FullWindow.Feeds/share, calc.FullWindow.Travels/share
	m := calc.Window{Feeds: make([]float64, nx), Travels: make([]float64, ny), Zones: make([]string, nx*ny),
		Margins: make([]float64, nx*ny), Suggestion: calc.Suggestion{Feed: 3, Travel: 3}}
	for i := range m.Feeds {
		m.Feeds[i] = 1 + float64(i)
	}
	for j := range m.Travels {
		m.Travels[j] = 1 + float64(j)
	}
	return &m
}

// What was not tried, since it would take long, is not called a thing that the model cannot do.
func TestLateRemediesSaySo(t *testing.T) {
	r := calc.Remedy{Change: "pulsed", Late: true}
	for _, text := range []string{(&Remedies{}).text(&r), (&Remedies{Rhythm: true}).text(&r)} {
		if !strings.Contains(text, "takes long") || strings.Contains(text, "equations") {
			t.Error(text)
		}
	}
}
