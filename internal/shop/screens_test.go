package shop

import (
	"context"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"brazebooth/calc"
	"brazebooth/calc/practice"
	"brazebooth/internal/book"
	"brazebooth/internal/report"
)

// A card that the book cannot save goes into a file that another book can import.
func TestScreensOffersAFile(t *testing.T) {
	ctx, dir := context.Background(), t.TempDir()
	t.Setenv("TMPDIR", dir)
	file := filepath.Join(dir, "a-file")
	if err := os.WriteFile(file, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	card, err := calc.Solve(calc.Job{Metal: "galvanized", Gauge: 20, Feed: calc.Some(4.1), Travel: calc.Some(8)})
	if err != nil {
		t.Fatal(err)
	}
	d := &Shop{Where: filepath.Join(file, "book.db"), Author: book.Author{Program: "test", Now: time.Now}}
	_, err = d.Keep(ctx, "tank lid", &card)
	if err == nil {
		t.Fatal("saved into a folder that is a file")
	}
	found := regexp.MustCompile(`book import (\S+)`).FindStringSubmatch(err.Error())
	if found == nil {
		t.Fatal(err)
	}
	saved, err := os.Open(found[1])
	if err != nil {
		t.Fatal(err)
	}
	defer saved.Close()
	d.Where = filepath.Join(dir, "book.db")
	b, err := book.Open(ctx, d.Where)
	if err != nil {
		t.Fatal(err)
	}
	_, err = book.Import(ctx, b, saved)
	if err := b.Close(); err != nil {
		t.Fatal(err)
	}
	if list, findErr := d.List(ctx, "card", "tank"); err != nil || findErr != nil || len(list) != 1 {
		t.Errorf("%v, %v, %v", list, err, findErr)
	}
}

// A reading and a test bead are saved with their power source, and are read again completely.
func TestScreensKeeps(t *testing.T) {
	ctx := context.Background()
	d := &Shop{Where: filepath.Join(t.TempDir(), "book.db"), Author: book.Author{Program: "test", Now: time.Now}}
	job := calc.Job{Metal: "mild-steel", Gauge: 18, Feed: calc.Some(6.35), Travel: calc.Some(10),
		StickOut: calc.Some(12)}
	taught, _, err := d.Measure(ctx, "booth 1", calc.Reading{Feed: 6.35, StickOut: 12, Amps: 97}, 9, job)
	if err != nil || !taught.Phi.Set {
		t.Fatalf("learned %v, %v", taught.Phi.Set, err)
	}
	if _, err := d.Trial(ctx, job, "rolled-edge", "bad", "booth 1"); err != nil {
		t.Fatal(err)
	}
	list, err := d.List(ctx, "", "")
	if err != nil || len(list) != 3 { // the third is the power source
		t.Fatalf("%v, %v", list, err)
	}
	for _, e := range list {
		blocks, err := d.Record(ctx, e.ID)
		if text := report.Text(blocks, report.Options{}); err != nil || strings.Count(text, "\n") < 4 {
			t.Errorf("%s: %q, %v", e.Kind, text, err)
		}
	}
	before, err := d.Recall(ctx, "booth 1", job)
	if err != nil {
		t.Fatal(err)
	}
	if said, err := d.Practice(ctx, practice.Outcome{Level: 2, Seed: 7, Work: "planter side", Beads: 3,
		Verdict: "good", Program: 2, Reached: true}); err != nil || !strings.Contains(said, "level 2 seed 7") {
		t.Errorf("%q, %v", said, err)
	}
	if again, err := d.Recall(ctx, "booth 1", job); err != nil || again != before {
		t.Errorf("a practice job taught something: %+v, %v", again, err)
	}
	if said, err := d.Enter(ctx, "spool", map[string]string{"lot": "-A17",
		"full": "4540"}); err != nil || !strings.Contains(said, "4540 g left") {
		t.Errorf("%q, %v", said, err)
	}
	if said, err := d.Enter(ctx, "source", map[string]string{"name": "booth 1",
		"rated-amps": "200A"}); err != nil || !strings.Contains(said, "rated 200 A") {
		t.Errorf("%q, %v", said, err)
	}
	if _, err := d.Enter(ctx, "source", map[string]string{"name": "booth 1",
		"rated-amps": "much"}); err == nil || !strings.Contains(err.Error(), "rated-amps") {
		t.Errorf("%v", err)
	}
	if _, err := d.Enter(ctx, "person", map[string]string{"name": "ana"}); err != nil {
		t.Error(err)
	}
	gone := list[0]
	for _, deleted := range []bool{true, false} {
		if err := d.Mark(ctx, gone.Kind, gone.ID, deleted); err != nil {
			t.Fatal(err)
		}
		left, err := d.List(ctx, "", "")
		found := slices.ContainsFunc(left, func(e Entry) bool { return e.ID == gone.ID })
		if found == deleted || err != nil {
			t.Errorf("deleted %v, found %v, %v", deleted, found, err)
		}
	}
	d.LookOnly = true
	if err := d.Mark(ctx, gone.Kind, gone.ID, true); err == nil || !strings.Contains(err.Error(), "look") {
		t.Errorf("a guest who may only look deletes: %v", err)
	}
	d.LookOnly = false
	if list, err := d.List(ctx, "source", ""); err != nil || len(list) != 1 || list[0].Name != "booth 1" {
		t.Errorf("%v, %v", list, err)
	}
}

// Two cards with the same name and day are distinguished, newest first; a name that is exactly the typed text comes
// before longer ones.
func TestScreensTellsCardsApart(t *testing.T) {
	ctx := context.Background()
	now := time.Date(2026, 3, 1, 9, 30, 10, 0, time.UTC)
	d := &Shop{Where: filepath.Join(t.TempDir(), "book.db"), Author: book.Author{Program: "test",
		Now: func() time.Time { return now }}}
	for _, x := range []struct {
		name  string
		feed  float64
		after time.Duration
	}{{"tank lid", 4, 0}, {"tank lid", 4.5, time.Minute}, {"planter", 5, time.Minute}, {"planter", 5,
		10 * time.Second}, {"tank lid, thick", 6, time.Hour}} {
		now = now.Add(x.after)
		card, err := calc.Solve(calc.Job{Metal: "galvanized", Gauge: 20, Feed: calc.Some(x.feed), Travel: calc.Some(8)})
		if err != nil {
			t.Fatal(err)
		}
		if _, err := d.Keep(ctx, x.name, &card); err != nil {
			t.Fatal(err)
		}
	}
	shown := func(text string) []string {
		list, err := d.List(ctx, "card", text)
		if err != nil {
			t.Fatal(err)
		}
		var rows []string
		for _, e := range list {
			rows = append(rows, e.Name+" | "+e.At+" | "+e.Line)
		}
		return rows
	}
	for text, want := range map[string][]string{
		"tank lid": {"tank lid | 2026-03-01 09:31 | 4.50 m/min at 8.0 mm/s",
			"tank lid | 2026-03-01 09:30 | 4.00 m/min at 8.0 mm/s", "tank lid, thick | 2026-03-01 | galvanized"},
		"planter": {"planter | 2026-03-01 09:32:20 | 5.00", "planter | 2026-03-01 09:32:10 | 5.00"},
	} {
		got := shown(text)
		if len(got) != len(want) {
			t.Fatalf("%s: %q", text, got)
		}
		for i := range want {
			if !strings.HasPrefix(got[i], want[i]) {
				t.Errorf("%s: row %d is %q, want %q", text, i+1, got[i], want[i])
			}
		}
	}
}

// A measured bead is saved as a trial with its sizes; one without a verdict or a sight is refused.
func TestScreensKeepsACutBead(t *testing.T) {
	ctx := context.Background()
	d := &Shop{Where: filepath.Join(t.TempDir(), "book.db"), Author: book.Author{Program: "test", Now: time.Now}}
	job := calc.Job{Metal: "mild-steel", Gauge: 18, Feed: calc.Some(6.35), Travel: calc.Some(10)}
	m := struct{ Width, Leg, Throat, Zinc float64 }{6.1, 3, 0.8, 4}
	if _, err := d.Cut(ctx, job, "", "", "booth 1", m); err == nil {
		t.Error("kept without a verdict")
	}
	if _, err := d.Cut(ctx, job, "rolled-edge", "", "booth 1", m); err != nil {
		t.Fatal(err)
	}
	b, err := book.Open(ctx, d.Where)
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	list, err := TrialsOf(ctx, b, "")
	if err != nil || len(list) != 1 || list[0].Body.Measured != book.Measured(m) || list[0].Body.Verdict != "bad" {
		t.Errorf("%+v, %v", list, err)
	}
}
