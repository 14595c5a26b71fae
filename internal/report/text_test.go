package report

import (
	"regexp"
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/internal/deep"
	"brazebooth/internal/plain"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

func TestTextStaysIn80Columns(t *testing.T) {
	deep.Turn(t)
	for _, m := range deep.Of(t, tables.Metals, 5) { // each card is a search
		for _, joint := range tables.Joints {
			card, err := calc.Solve(calc.Job{Metal: m.ID, Gauge: 18, Joint: joint.ID, Gap: calc.Some(1)})
			if err != nil {
				t.Fatal(err)
			}
			for _, units := range []quantity.System{quantity.Metric, quantity.Inch, quantity.Both} {
				fits(t, m.ID+" "+joint.ID, Text(Card(&card), Options{Units: units, Why: true}))
			}
		}
	}
}

// The figures stand in columns in all units: all bands begin in the same column.
func TestBandsBeginInOneColumn(t *testing.T) {
	card, err := calc.Solve(calc.Job{Metal: "galvanized", Gauge: 16, Length: calc.Some(300), WirePrice: calc.Some(20),
		Count: calc.Some(3)})
	if err != nil {
		t.Fatal(err)
	}
	for _, units := range []quantity.System{quantity.Metric, quantity.Inch, quantity.Both} {
		o := Options{Units: units}
		texts := []string{Text(Card(&card), o)}
		for _, page := range advice.Contents() {
			if page.Of == nil {
				continue
			}
			if p, err := page.Answer(t.Context(), &card); err == nil {
				texts = append(texts, Text(Page(&p, nil), o))
			}
		}
		for _, text := range texts {
			columns := map[int]string{}
			for line := range strings.Lines(text) {
				if at := strings.Index(line, "–"); at > 0 && figureLine.MatchString(line) {
					columns[plain.Width(line[:strings.LastIndex(line[:at], " ")])] = line
				}
			}
			if len(columns) > 1 {
				t.Errorf("%s: bands begin in %d columns: %v", units, len(columns), columns)
			}
		}
	}
}

// figureLine is a name, a number, a unit and a range, with blanks between them.
var figureLine = regexp.MustCompile(`^  [a-z0-9 ]+ +[-0-9.]+ [^ –]*( ft)? +[-0-9.]+–[-0-9.]+`)

// With a decimal comma no figure keeps its point, in any system of units; a wire size as stamped on its spool does.
func TestCommaInEverySystem(t *testing.T) {
	card, err := calc.Solve(calc.Job{Metal: "galvanized", Gauge: 16, Length: calc.Some(300)})
	if err != nil {
		t.Fatal(err)
	}
	point := regexp.MustCompile(`[0-9]*\.[0-9]+`)
	for _, units := range []quantity.System{quantity.Metric, quantity.Inch, quantity.Both} {
		text := Text(Card(&card), Options{Units: units, Comma: true})
		for _, found := range point.FindAllString(text, -1) {
			if found != ".035" {
				t.Errorf("%s: %s keeps its point", units, found)
			}
		}
	}
}

// A wire size stays as it is stamped on its spool.
func TestCommaLeavesStamps(t *testing.T) {
	for _, w := range tables.Wires {
		if w.Inch > 0 && quantity.Comma("wire "+w.ID+" in") != "wire "+w.ID+" in" {
			t.Errorf("%s became %s", w.ID, quantity.Comma("wire "+w.ID+" in"))
		}
	}
}

func fits(t *testing.T, what, text string) {
	t.Helper()
	for line := range strings.Lines(text) {
		line = strings.TrimSuffix(line, "\n")
		if plain.Width(line) > width || strings.HasSuffix(line, " ") {
			t.Errorf("%s: %d columns: %q", what, plain.Width(line), line)
		}
	}
}

func TestTextHasEveryWarningAndFigure(t *testing.T) {
	card, err := calc.Solve(calc.Job{Metal: "stainless-304", Metal2: "galvanized", Mode: "timed", Joint: "butt"})
	if err != nil {
		t.Fatal(err)
	}
	text := strings.Join(strings.Fields(Text(Card(&card), Options{Units: quantity.Metric})), " ")
	for _, w := range card.Warnings {
		if !strings.Contains(text, w.Text) {
			t.Errorf("the text lacks %q", w.Text)
		}
	}
	for _, f := range card.Figures {
		if !strings.Contains(text, calc.FigureLabel(f.Name)) {
			t.Errorf("the text lacks %s", f.Name)
		}
	}
}

func BenchmarkText(b *testing.B) {
	card, err := calc.Solve(calc.Job{})
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		Text(Card(&card), Options{Units: quantity.Metric})
	}
}

func BenchmarkJSON(b *testing.B) {
	card, err := calc.Solve(calc.Job{})
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := JSON(Card(&card), "bench"); err != nil {
			b.Fatal(err)
		}
	}
}

// A welder counts seconds for 100 mm, or for 4 in of 25.4 mm.
func TestPace(t *testing.T) {
	for sys, want := range map[quantity.System]string{quantity.Metric: "12.5 s for 100 mm",
		quantity.Inch: "12.7 s for 4 in", quantity.Both: "12.5 s for 100 mm (4 in)"} {
		if got := Pace(8, sys); got != want {
			t.Errorf("8 mm/s, %s: %q, not %q", sys, got, want)
		}
	}
}
