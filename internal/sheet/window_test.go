package sheet

import (
	"bytes"
	"context"
	"encoding/xml"
	"errors"
	"image/png"
	"io"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
)

func coarse(t *testing.T, j calc.Job) calc.Map {
	t.Helper()
	m, err := calc.WindowOf(context.Background(), j, calc.CoarseMap, nil)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func TestWindowJSONKeepsItsSchema(t *testing.T) {
	schema := loadSchema(t, "window-schema.json")
	for _, j := range []calc.Job{{Metal: "galvanized", Gauge: 20}, {Metal: "copper", Thickness: calc.Some(1), Joint: "butt"}} {
		m := coarse(t, j)
		b, err := WindowJSON(&m, "test")
		if err != nil {
			t.Fatal(err)
		}
		for _, fault := range held(t, schema, b) {
			t.Errorf("%s: %s", j.Metal, fault)
		}
	}
}

func TestWindowTextStaysIn80Columns(t *testing.T) {
	for _, units := range []quantity.System{quantity.Metric, quantity.Inch, quantity.Both} {
		m := coarse(t, calc.Job{Metal: "copper", Thickness: calc.Some(1), Joint: "butt"})
		fits(t, string(units), WindowText(&m, Options{Units: units}))
	}
}

// The pictures are whole files of their kind, as large as their layout says.
func TestWindowPictures(t *testing.T) {
	m := coarse(t, calc.Job{Metal: "galvanized", Gauge: 20})
	b, err := WindowPNG(&m)
	if err != nil {
		t.Fatal(err)
	}
	img, err := png.Decode(bytes.NewReader(b))
	if err != nil {
		t.Fatal(err)
	}
	if w, h := pictureSize(&m); img.Bounds().Dx() != w || img.Bounds().Dy() != h {
		t.Errorf("%v, want %d x %d", img.Bounds(), w, h)
	}
	d := xml.NewDecoder(bytes.NewReader(WindowSVG(&m)))
	for {
		if _, err := d.Token(); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			t.Fatal(err)
		}
	}
}

// A drawing of every joint stays in its room and shows its bead and both members.
func TestDrawing(t *testing.T) {
	for _, joint := range []string{"lap", "tee", "butt", "corner", "overlay"} {
		card, err := calc.Solve(calc.Job{Gauge: 18, Joint: joint})
		if err != nil {
			t.Fatal(err)
		}
		lines, scale := Drawing(&card.Section, 60, 12)
		if len(lines) == 0 || len(lines) > 12 || scale <= 0 {
			t.Fatalf("%s: %d lines, %g mm a column", joint, len(lines), scale)
		}
		all := ""
		for _, l := range lines {
			if len(l) > 60 {
				t.Errorf("%s: %d columns", joint, len(l))
			}
			all += l
		}
		wanted := "/o"
		if joint != "overlay" {
			wanted += "\\"
		}
		for _, ink := range wanted {
			if !bytes.ContainsRune([]byte(all), ink) {
				t.Errorf("%s: the drawing has no %c", joint, ink)
			}
		}
	}
	if lines, _ := Drawing(&calc.Section{}, 60, 12); lines != nil {
		t.Error("nothing modelled, and yet a drawing")
	}
}
