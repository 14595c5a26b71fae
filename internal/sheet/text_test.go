package sheet

import (
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/plain"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

func TestTextStaysIn80Columns(t *testing.T) {
	metals := tables.Metals()
	if testing.Short() {
		metals = metals[:2] // each card is a search
	}
	for _, m := range metals {
		for _, joint := range tables.Joints() {
			card, err := calc.Solve(calc.Job{Metal: m.ID, Gauge: 18, Joint: joint.ID, Gap: calc.Some(1)})
			if err != nil {
				t.Fatal(err)
			}
			for _, units := range []quantity.System{quantity.Metric, quantity.Inch, quantity.Both} {
				fits(t, m.ID+" "+joint.ID, Text(&card, Options{Units: units, Why: true}))
			}
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
	text := strings.Join(strings.Fields(Text(&card, Options{Units: quantity.Metric})), " ")
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
		Text(&card, Options{Units: quantity.Metric})
	}
}

func BenchmarkJSON(b *testing.B) {
	card, err := calc.Solve(calc.Job{})
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := JSON(&card, "bench"); err != nil {
			b.Fatal(err)
		}
	}
}
