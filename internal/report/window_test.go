package report

import (
	"bytes"
	"context"
	"encoding/json"
	"encoding/xml"
	"errors"
	"image/png"
	"io"
	"math"
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
	"brazebooth/internal/quantity"
)

func coarse(t *testing.T, j calc.Job) calc.Window {
	t.Helper()
	m, err := calc.WindowOf(context.Background(), j, calc.CoarseWindow, nil)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func TestWindowJSONKeepsItsSchema(t *testing.T) {
	schema := loadSchema(t, "window-schema.json")
	for _, j := range []calc.Job{{Metal: "galvanized", Gauge: 20},
		{Metal: "copper", Thickness: calc.Some(3), Joint: "lap"}} {
		m := coarse(t, j)
		b, err := JSON(Window(&m, nil), "test")
		if err != nil {
			t.Fatal(err)
		}
		for _, fault := range faults(t, schema, b) {
			t.Errorf("%s: %s", j.Metal, fault)
		}
	}
}

// The setting that was asked about is marked at its place, with its own zone and margins, in every form of the map.
func TestWindowMarksWhatWasGiven(t *testing.T) {
	deep.Turn(t)
	job := calc.Job{Metal: "galvanized", Gauge: 20}
	m := coarse(t, job)
	p := pictured(t, &m)
	schema := loadSchema(t, "window-schema.json")
	for _, c := range []struct {
		feed, travel calc.Opt
		on           bool
		says         string
	}{
		{calc.Some(m.Feeds[9]), calc.Some(m.Travels[1]), true, "As given: "},
		{calc.Some(m.Suggestion.Feed), calc.Some(m.Suggestion.Travel), true, "As given: "},
		{calc.Some(m.Feeds[2]), calc.Opt{}, true, "Wire feed as given, with the travel"},
		{calc.Opt{}, calc.Some(m.Travels[3]), true, "Travel as given, with the feed"},
		{calc.Some(20), calc.Some(8), false, "As given: 20.0 m/min at 8.0 mm/s (beyond this map): "},
	} {
		job.Feed, job.Travel = c.feed, c.travel
		card, err := calc.Solve(job)
		if err != nil {
			t.Fatal(err)
		}
		text := Text(Window(&m, &card), Options{Units: quantity.Metric})
		fits(t, c.says, text)
		rows, said, _ := strings.Cut(text, "+ good")
		_, rows, _ = strings.Cut(rows, "│")
		if at, _, on := givenPoint(&m, &card); on != c.on || strings.Contains(rows, "G") != c.on || on &&
			math.Abs(math.Log(m.Feeds[at]/card.Used.Feed.V)) > 0.1 {
			t.Errorf("%s on the map: %v, at column %d\n%s", c.says, on, at, text)
		}
		said = strings.Join(strings.Fields(said), " ")
		if !strings.Contains(said, c.says) || !strings.Contains(said, card.Verdict()) ||
			!strings.Contains(said, EdgeRoom(&card.Edges[0], true)) {
			t.Errorf("%s:\n%s", c.says, text)
		}
		b, err := JSON(Window(&m, &card), "test")
		if err != nil {
			t.Fatal(err)
		}
		for _, fault := range faults(t, schema, b) {
			t.Errorf("%s: %s", c.says, fault)
		}
		var doc struct{ Given *givenSetting }
		if err := json.Unmarshal(b, &doc); err != nil || doc.Given == nil || doc.Given.Verdict != card.Verdict() ||
			doc.Given.Feed != card.Used.Feed.V {
			t.Errorf("%s: %+v, %v", c.says, doc.Given, err)
		}
		p.Given = &card
		b, err = p.SVG()
		if svg := string(b); err != nil || strings.Contains(svg, ">as given<") != c.on ||
			!strings.Contains(svg, strings.TrimSuffix(c.says, ": ")) {
			t.Errorf("%s: the picture says it: %v, %v", c.says, strings.Contains(svg, ">as given<"), err)
		}
	}
}

var knownCharts deep.Known[calc.Job, calc.Chart]

// pictured is a window with its chart.
func pictured(t *testing.T, m *calc.Window) *Map {
	t.Helper()
	c, err := knownCharts.Of(m.Job, func() (calc.Chart, error) { return calc.ChartOf(context.Background(), m) })
	if err != nil {
		t.Fatal(err)
	}
	return &Map{Window: m, Chart: &c}
}

func TestWindowTextStaysIn80Columns(t *testing.T) {
	m := coarse(t, calc.Job{Metal: "copper", Thickness: calc.Some(3), Joint: "lap"})
	for _, units := range []quantity.System{quantity.Metric, quantity.Inch, quantity.Both} {
		fits(t, string(units), Text(Window(&m, nil), Options{Units: units}))
	}
}

// The pictures of maps are complete, and name the suggestion, each edge and zone, and their units.
func TestWindowPictures(t *testing.T) {
	for _, c := range []struct {
		job   calc.Job
		units quantity.System
		says  []string
	}{
		{calc.Job{Metal: "galvanized", Gauge: 20}, quantity.Metric, []string{"suggested", "wets", "base stays solid",
			"no burn-through", "hand speed", "COLD", "good with", "wire feed, m/min", "80 % and more"}},
		{calc.Job{Metal: "copper", Thickness: calc.Some(3), Joint: "lap"}, quantity.Inch,
			[]string{"nearest miss", "No setting is good", "travel, in/min"}},
	} {
		m := coarse(t, c.job)
		p := pictured(t, &m)
		p.Units = c.units
		whole(t, c.job.Metal, p.PNG, p.SVG, c.says...)
	}
}

// whole checks that a picture is a complete file of each format, as large as its sheet, and contains some words.
func whole(t *testing.T, name string, asPNG func(int) ([]byte, error), asSVG func() ([]byte, error), says ...string) {
	t.Helper()
	b, err := asPNG(30)
	if err != nil {
		t.Fatal(err)
	}
	img, err := png.Decode(bytes.NewReader(b))
	if err != nil || img.Bounds().Dx() != 351 || img.Bounds().Dy() != 248 {
		t.Errorf("%s: %v, %v: no A4 sheet", name, img.Bounds(), err)
	}
	if b, err = asSVG(); err != nil {
		t.Fatal(err)
	}
	for _, w := range says {
		if !bytes.Contains(b, []byte(w)) {
			t.Errorf("%s: the picture does not say %q", name, w)
		}
	}
	d := xml.NewDecoder(bytes.NewReader(b))
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
	for _, joint := range []string{"lap", "tee", "butt", "corner", "edge", "overlay"} {
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
	for _, backing := range []string{"copper-bar", "steel-strip"} {
		card, err := calc.Solve(calc.Job{Gauge: 16, Joint: "butt", Gap: calc.Some(1), Backing: backing})
		if err != nil {
			t.Fatal(err)
		}
		lines, _ := Drawing(&card.Section, 60, 12)
		if last := lines[len(lines)-1]; strings.Trim(last, "=") != "" || strings.Contains(lines[0], "=") {
			t.Errorf("%s: not drawn behind the joint:\n%s", backing, strings.Join(lines, "\n"))
		}
	}
	if lines, _ := Drawing(&calc.Section{}, 60, 12); lines != nil {
		t.Error("nothing modelled, and yet a drawing")
	}
}
