package report

import (
	"encoding/json"
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/internal/deep"
)

// Every page names fume, eyes and fire, in text and in JSON; the page of a stopped job has its stops.
func TestEveryPageNamesTheDangers(t *testing.T) {
	deep.Turn(t)
	for joint, metal := range map[string]string{"lap": "galvanized", "tee": "galvanized", "overlay": "mild-steel"} {
		job := calc.Job{Metal: metal, Thickness: calc.Some(1.5), Joint: joint, Feed: calc.Some(5), Travel: calc.Some(8),
			Length: calc.Some(100)}
		warm, zinc := 0, 1
		switch joint {
		case "tee": // preheated, with the zinc still on
			job.Preheat, warm = calc.Some(200), 1
		case "overlay":
			zinc = 0
		}
		card, err := calc.Solve(job)
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range advice.Contents() {
			if p.Of == nil {
				continue
			}
			part, err := p.Answer(t.Context(), &card)
			if err != nil {
				continue // this joint has no such page
			}
			text := strings.Join(strings.Fields(Text(Page(&part, nil), Options{})), " ")
			for _, want := range []string{"head out of the plume", "Eyes: shade", "fire watch 60 min", whoDecides} {
				if !strings.Contains(text, want) {
					t.Errorf("%s, %s: %q is missing", joint, p.Name, want)
				}
			}
			b, err := JSON(Page(&part, nil), "test")
			if err != nil {
				t.Fatal(err)
			}
			var doc struct{ Warnings []calc.Warning }
			if err := json.Unmarshal(b, &doc); err != nil {
				t.Fatal(err)
			}
			codes := map[string]int{}
			for _, w := range doc.Warnings {
				codes[w.Code]++
			}
			if codes["zinc-fume"] != zinc || codes[calc.PreheatNever] != warm || codes["bronze-fume"] != 1 ||
				codes["eyes"] != 1 || codes["fire"] != 1 {
				t.Errorf("%s, %s: %v", joint, p.Name, codes)
			}
		}
	}
	stopped, err := calc.Solve(calc.Job{Metal: "brass", Thickness: calc.Some(1), Feed: calc.Some(4),
		Travel: calc.Some(8), Hazard: "tank"})
	if err != nil {
		t.Fatal(err)
	}
	if list := dangers(&stopped, nil); len(list) > 0 {
		t.Errorf("a stopped job: %v", list)
	}
}
