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
	m := coarse(t, calc.Job{Metal: "mild-steel", Thickness: calc.Some(0.4), Joint: "butt", Gap: calc.Some(0.5)})
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
		b, err := WindowJSON(&m, nil, "test")
		if err != nil || bytes.Contains(b, []byte(`"coarser": true`)) != coarser {
			t.Errorf("coarser %v, %v: %.400s", coarser, err, b)
		}
		for _, fault := range held(t, schema, b) {
			t.Error(fault)
		}
		pdf, _, err := WallPDF(&Wall{Name: "seam", Map: &m}, Letter, quantity.Metric)
		if err != nil {
			t.Fatal(err)
		}
		if coarser {
			readBack(t, pdf, &Wall{Name: "seam"}, words)
		}
	}
}

// The picture of a coarser map is as large as the full one's, and its words lie inside it.
func TestCoarserPicturesAreAsLarge(t *testing.T) {
	for _, half := range []int{2, 4} {
		m := calc.Window{Coarser: true, Feeds: make([]float64, calc.FullWindow.Feeds/half), Travels: make([]float64, calc.FullWindow.Travels/half)}
		for i := range m.Feeds {
			m.Feeds[i] = 1 + float64(i)
		}
		for j := range m.Travels {
			m.Travels[j] = 1 + float64(j)
		}
		n := len(m.Feeds) * len(m.Travels)
		m.Zones, m.Margins = make([]string, n), make([]float64, n)
		m.Suggestion = calc.Suggestion{Feed: 3, Travel: 3}
		full := calc.Window{Feeds: make([]float64, calc.FullWindow.Feeds), Travels: make([]float64, calc.FullWindow.Travels)}
		w, h := pictureSize(&full)
		b, err := WindowPNG(&m, nil)
		if err != nil {
			t.Fatal(err)
		}
		img, err := png.Decode(bytes.NewReader(b))
		if err != nil || img.Bounds().Dx() != w || img.Bounds().Dy() != h {
			t.Errorf("a %d. of the points: %v, %v, want %d by %d", half, img.Bounds(), err, w, h)
		}
		for _, l := range pictureLabels(&m, nil) {
			if l.text == m.CoarserWords() && (l.x+7*len(l.text) > w || l.y > h || l.y < h-lowRoom) {
				t.Errorf("%q at %d, %d of %d by %d", l.text, l.x, l.y, w, h)
			}
		}
	}
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
