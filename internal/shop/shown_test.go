package shop

import (
	"encoding/json"
	"strings"
	"testing"

	"brazebooth/calc/practice"
	"brazebooth/internal/book"
	"brazebooth/internal/report"
)

// A kept practice job is described in words: how many beads the user laid, and how many the program needed.
func TestPractised(t *testing.T) {
	for reached, want := range map[bool]string{true: "5 beads, the last one good",
		false: "5 beads, none of them good"} {
		body, err := json.Marshal(practice.Outcome{Level: 2, Seed: 7, Work: "planter side", Beads: 1, Verdict: "cold",
			Program: 5, Reached: reached})
		if err != nil {
			t.Fatal(err)
		}
		blocks, err := Held(&book.Revision{Kind: book.PracticeKind, At: "2026-01-02T03:04:05Z", Body: body})
		if err != nil {
			t.Fatal(err)
		}
		text := report.Text(blocks, report.Options{})
		for _, x := range []string{"level 2, number 7", "planter side", "1 bead, the last one cold", want} {
			if !strings.Contains(text, x) {
				t.Errorf("%q is missing in\n%s", x, text)
			}
		}
		if strings.Contains(text, "true") || strings.Contains(text, "false") {
			t.Errorf("no words for a person:\n%s", text)
		}
	}
}
