package cli

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"brazebooth/calc"
	"brazebooth/internal/book"
	"brazebooth/internal/deep"
)

// damagedBook is a book of so many cards in which one page that holds revisions is overwritten with zeros.
func damagedBook(t *testing.T, cards int) string {
	t.Helper()
	file := filepath.Join(t.TempDir(), "book.db")
	b, err := book.OpenFile(context.Background(), file)
	if err != nil {
		t.Fatal(err)
	}
	card, err := calc.Solve(calc.Job{Metal: "galvanized", Gauge: 20, Feed: calc.Some(4.1), Travel: calc.Some(8)})
	if err != nil {
		t.Fatal(err)
	}
	var list []book.Revision
	for range cards {
		kept := book.Card{Name: "tank lid", Note: strings.Repeat("slower at the seam; ", 40), Job: card.Job,
			Card: book.Keep(&card)}
		r, err := book.Author{Program: "test", Now: time.Now}.New(book.CardKind, kept)
		if err != nil {
			t.Fatal(err)
		}
		list = append(list, r)
	}
	if err := b.Save(context.Background(), list...); err != nil {
		t.Fatal(err)
	}
	if err := b.Close(); err != nil {
		t.Fatal(err)
	}
	const page = 4096
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	// in the middle of the file, in the revisions' own table
	at := bytes.Index(text[len(text)/2:], []byte(list[cards/2].Program))
	if at < 0 {
		t.Fatal("no page holds a revision")
	}
	at += len(text) / 2
	clear(text[at/page*page : at/page*page+page])
	bad := filepath.Join(t.TempDir(), "bad.db") // under a name that this process has never opened
	if err := os.WriteFile(bad, text, 0o600); err != nil {
		t.Fatal(err)
	}
	return bad
}

// From a damaged book, export, backup and merge give what can be read, say which revisions are missing, and exit with
// 1. What check advises works, and gives a sound book.
func TestADamagedBook(t *testing.T) {
	deep.Turn(t)
	bad := damagedBook(t, 60)
	dir := t.TempDir()
	run := func(want int, args ...string) (out, told string) {
		t.Helper()
		var o, e strings.Builder
		if code := Run(t.Context(), args, Deps{In: strings.NewReader(""), Out: &o, Err: &e, Book: bad}); code != want {
			t.Errorf("%q: exit %d\n%s%s", args, code, o.String(), e.String())
		}
		return o.String(), e.String()
	}
	out, told := run(1, "book", "check")
	if !strings.Contains(out, "revision ") || !strings.Contains(told, "brazebooth book backup NEW.db") {
		t.Errorf("check says %s%s", out, told)
	}
	lines := filepath.Join(dir, "book.jsonl")
	_, told = run(1, "book", "export", lines)
	whatIsMissing(t, "export", told)
	if out, told = run(1, "book", "export", "-"); strings.Count(out, "\n") < 50 {
		t.Errorf("%d lines: %s", strings.Count(out, "\n"), told)
	}
	_, told = run(1, "book", "export", "--csv", filepath.Join(dir, "cards.csv"))
	whatIsMissing(t, "cards", told)
	fresh := filepath.Join(dir, "new.db")
	_, told = run(1, "book", "backup", fresh)
	whatIsMissing(t, "backup", told)
	merged := filepath.Join(dir, "merged.db")
	_, told = run(1, "book", "merge", bad, "--book", merged)
	whatIsMissing(t, "merge", told)
	imported := filepath.Join(dir, "imported.db")
	run(0, "book", "import", lines, "--book", imported)
	for _, b := range []string{fresh, merged, imported} {
		if out, _ = run(0, "book", "check", "--book", b); !strings.Contains(out, "nothing wrong") {
			t.Errorf("%s: %s", b, out)
		}
		if out, _ = run(0, "book", "list", "--limit", "100", "--book", b); strings.Count(out, "tank lid") < 50 {
			t.Errorf("%s lists %d cards", b, strings.Count(out, "tank lid"))
		}
	}
}

// whatIsMissing checks that a message names the missing revisions, how many there are, and what to do.
func whatIsMissing(t *testing.T, what, told string) {
	t.Helper()
	for _, want := range []string{"left out", "keep the damaged book", "\nrevision "} {
		if !strings.Contains("\n"+told, want) {
			t.Errorf("%s: %q says nothing of %q", what, told, want)
		}
	}
}

// A bad line of an import is reported once, with its number, and the other lines are in the book.
func TestAnImportNamesItsBadLines(t *testing.T) {
	dir := t.TempDir()
	file := filepath.Join(dir, "book.db")
	var o, e strings.Builder
	deps := func(in string) Deps {
		o.Reset()
		e.Reset()
		return Deps{In: strings.NewReader(in), Out: &o, Err: &e, Book: file, Now: time.Now}
	}
	for _, name := range []string{"ana", "ben", "cleo"} {
		if code := Run(t.Context(), []string{"book", "person", name}, deps("")); code != 0 {
			t.Fatal(e.String())
		}
	}
	if code := Run(t.Context(), []string{"book", "export", "-"}, deps("")); code != 0 {
		t.Fatal(e.String())
	}
	good := strings.SplitAfter(strings.TrimSpace(o.String()), "\n")
	for in, want := range map[string]struct {
		read string
		bad  []string
	}{
		good[0] + "nonsense\n" + good[1] + "\x1b[2J\n" + good[2]: {"3 revisions read",
			[]string{"line 2: ", "line 4: "}},
		good[0] + strings.Replace(good[1], "ben", "eve", 1) + good[2]: {"2 revisions read", []string{"line 2: "}},
		strings.Repeat("nonsense\n", 19) + good[0]: {"1 revision read",
			[]string{"line 19: "}},
		strings.Repeat("nonsense\n", 20) + good[0]: {"0 revisions read; the rest was not looked at",
			[]string{"line 20: "}},
		good[0] + strings.Replace(strings.TrimSpace(good[1]), "2026", "9989", 1) + "\n" +
			good[2]: {"2 revisions read", []string{"line 2: "}},
	} {
		code := Run(t.Context(), []string{"book", "import", "-", "--book", filepath.Join(t.TempDir(), "to.db")},
			deps(in))
		if code != 1 || !strings.Contains(e.String(), want.read) || strings.ContainsRune(e.String(), '\x1b') {
			t.Errorf("exit %d, want %q: %s", code, want.read, e.String())
		}
		for _, line := range want.bad {
			if strings.Count(e.String(), line) != 1 {
				t.Errorf("%q is not exactly once in %s", line, e.String())
			}
		}
	}
}

// No command reads from or appends to the book's own file or the files beside it.
func TestTheBooksFilesAreRefused(t *testing.T) {
	dir := t.TempDir()
	file := filepath.Join(dir, "book.db")
	b, err := book.OpenFile(t.Context(), file)
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	for _, part := range []string{file, file + "-wal", file + "-shm"} {
		for _, args := range [][]string{{"book", "import", part}, {"batch", part, "--format", "csv"}, {"batch", "-",
			"--format", "csv", "--out", part, "--resume"}, {"book", "import", part, "--book", file}} {
			var o, e strings.Builder
			d := Deps{In: strings.NewReader("metal,gauge\n"), Out: &o, Err: &e, Book: file}
			if args[len(args)-1] == file {
				d.Book = ""
			}
			if code := Run(t.Context(), args, d); code != 2 || !strings.Contains(e.String(), "the book itself") {
				t.Errorf("%q: exit %d: %s", args, code, e.String())
			}
		}
	}
}

// doctor warns of a book whose file has a second name (a hard link).
func TestDoctorTellsOfASecondName(t *testing.T) {
	dir := t.TempDir()
	file := filepath.Join(dir, "book.db")
	b, err := book.OpenFile(t.Context(), file)
	if err != nil {
		t.Fatal(err)
	}
	if err := b.Close(); err != nil {
		t.Fatal(err)
	}
	for _, second := range []bool{false, true} {
		if second {
			if err := os.Link(file, filepath.Join(dir, "copy.db")); err != nil {
				t.Skip(err)
			}
		}
		var o, e strings.Builder
		Run(t.Context(), []string{"doctor"}, Deps{Out: &o, Err: &e, Book: file})
		if strings.Contains(o.String(), "hard links") != second {
			t.Errorf("second name %v: %s%s", second, o.String(), e.String())
		}
	}
}
