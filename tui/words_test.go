package tui

import (
	"testing"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/internal/deep"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

// labels visits every label on a screen, with its place.
func labels(t *testing.T, visit func(where, label string)) {
	t.Helper()
	for _, q := range pathChoices() {
		visit("path", q.Label())
	}
	for _, q := range otherChoices() {
		visit("choices", q.Label())
	}
	for _, chapter := range pageNames {
		visit("pages", chapter)
		visit("chapters", chapterOf(chapter))
	}
	pages := advice.Contents()
	for i := range pages {
		for _, name := range pages[i].Needs {
			visit("what page "+pages[i].Name+" asks for", name)
		}
	}
	for _, job := range []calc.Job{
		{Metal: "galvanized", Gauge: 20, Joint: "lap"}, {Metal: "mild-steel", Gauge: 16, Joint: "butt",
			Gap: calc.Some(2), Mode: "timed"},
		{Metal: "stainless-304", Gauge: 18, Joint: "tee", Mode: "pulsed", Metal2: "copper", Gauge2: 16},
		{Metal: "mild-steel", Gauge: 10, Joint: "overlay", ShaftDia: calc.Some(40), Layer: calc.Some(2),
			Length: calc.Some(30), Feed: calc.Some(7.6), Travel: calc.Some(6)},
		{Metal: "galvanized", Gauge: 20, Length: calc.Some(1000), Load: calc.Some(500), Safety: calc.Some(4),
			RatedAmps: calc.Some(200), RatedDuty: calc.Some(60), NozzleBore: calc.Some(12),
			WirePrice: calc.Some(25), GasPrice: calc.Some(8), LabourRate: calc.Some(45), SteelPrice: calc.Some(3),
			Grinding: calc.Some(4), ZincRepair: calc.Some(2)},
	} {
		card, err := calc.Solve(job)
		if err != nil {
			t.Fatal(err)
		}
		s := session{card: card, Options: Options{Units: quantity.Metric}}
		for _, r := range buildRows(&s, &card) {
			visit("card of "+card.Used.Metal+" "+card.Used.Joint, r.label)
		}
		for _, e := range card.Edges {
			visit("edges", e.Name)
		}
		for i := range pages {
			if pages[i].Of == nil {
				continue
			}
			part, err := computedOnce.page(t.Context(), &pages[i], &card)
			if err != nil {
				continue // this page has no answer for this job, but for another one
			}
			for _, f := range part.Figures {
				visit("page "+part.Name, calc.FigureLabel(f.Name))
			}
		}
	}
	// the labels in the map's legend
	for _, zone := range []string{"good", "cold", "hot", "burns through", "other edge"} {
		visit("map", zone)
	}
}

// A word of the trade without an entry would leave a trainee alone with it.
func TestEveryLabelHasAnEntry(t *testing.T) {
	deep.Turn(t)
	if testing.Short() {
		t.Skip("every page")
	}
	missing := map[string]string{}
	labels(t, func(where, label string) {
		if _, ok := tables.TermFor(label); !ok {
			missing[label] = where
		}
	})
	for label, where := range missing {
		t.Errorf("%q (%s) has no entry in the glossary", label, where)
	}
}

func TestEntriesAreWhole(t *testing.T) {
	seen := map[string]string{}
	for _, term := range tables.Terms {
		sentences := 0
		for _, r := range term.Says {
			if r == '.' {
				sentences++
			}
		}
		if sentences < 2 || len(term.Says) < 60 || len(term.Says) > 260 || term.Source == "" || term.Known == "" {
			t.Errorf("%s: %q, %q %q", term.Word, term.Says, term.Source, term.Known)
		}
		for _, name := range append([]string{term.Word}, term.Also...) {
			if other, twice := seen[name]; twice {
				t.Errorf("%q stands for %s and for %s", name, other, term.Word)
			}
			seen[name] = term.Word
			if got, ok := tables.TermFor(name); !ok || got.Word != term.Word {
				t.Errorf("%q leads elsewhere than to %s", name, term.Word)
			}
		}
	}
}

// g on the card opens the entry of the word under the cursor, typing finds another, and every way out leads back.
func TestWordsOpenAtTheCursor(t *testing.T) {
	for _, size := range [][2]int{{40, 14}, {60, 20}, {80, 24}, {120, 40}} {
		s := openAt(t, size[0], size[1], Options{Opening: ExampleJob()})
		s.press("right", "right", "g")
		s.fits(size[0], size[1])
		s.has("▸ travel", "along the seam")
		s.typed("indu")
		s.fits(size[0], size[1])
		s.has("▸ inductance", "may rise")
		s.press("esc")
		s.typed("zzz")
		s.has("No such word")
		s.press("esc", "esc")
		s.hasNot("word:")
		s.onCard()
	}
	s := openAt(t, 80, 24, Options{})
	s.press("f3")
	s.has("▸ metal", "What is joined")
	s.press("esc")
	s.has("Which metal?")
	s.press("tab", "tab", "tab", "tab", "m", "g")
	s.has("▸ window")
	s.press("esc", "esc", "p", "g")
	s.has("▸ arc brazing")
}
