package book

import (
	"bytes"
	"context"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"brazebooth/calc"
	"brazebooth/internal/plain"
)

// A card is saved, changed and deleted; every state stays, and is read back as it was saved.
func TestNothingIsOverwritten(t *testing.T) {
	onBoth(t, func(t *testing.T, b Book) {
		ctx, now := context.Background(), time.Date(2026, 3, 1, 8, 0, 0, 0, time.UTC)
		who := by(&now)
		first, err := who.New(CardKind, someCard(t, "rainwater tank lid", gutter))
		noErr(t, err)
		noErr(t, b.Save(ctx, first))
		noErr(t, b.Save(ctx, first)) // saving it again adds nothing
		now = now.Add(-time.Hour)    // the clock is set back
		changed := someCard(t, "tank lid, slower", gutter)
		second, err := who.Change(&first, changed)
		noErr(t, err)
		noErr(t, b.Save(ctx, second))
		if second.At <= first.At {
			t.Errorf("a change at %s of what was saved at %s", second.At, first.At)
		}
		got, err := b.Get(ctx, first.ID)
		noErr(t, err)
		if got.Rev != second.Rev || !bytes.Equal(got.Body, second.Body) {
			t.Errorf("%+v came back as %+v", second, got)
		}
		third, err := who.Delete(&got)
		noErr(t, err)
		noErr(t, b.Save(ctx, third))
		if list, err := b.List(ctx, Query{}); err != nil || len(list) != 0 {
			t.Errorf("a deleted card is listed: %v, %v", list, err)
		}
		if list, err := b.List(ctx, Query{Deleted: true, Text: "slower"}); err != nil || len(list) != 1 ||
			!list[0].Deleted {
			t.Errorf("a deleted card is lost: %v, %v", list, err)
		}
		history, err := b.History(ctx, first.ID)
		noErr(t, err)
		if len(history) != 3 || history[0].Rev != first.Rev || history[2].Rev != third.Rev || !history[2].Deleted {
			t.Errorf("history %+v", history)
		}
		if faults, n, err := b.Check(ctx); err != nil || n != 3 || len(faults) != 0 {
			t.Errorf("check: %v, %d, %v", faults, n, err)
		}
		if _, err := b.Get(ctx, "0000000000000000"); !errors.Is(err, ErrNone) {
			t.Errorf("a record that is not there: %v", err)
		}
	})
}

// A search finds records by the beginnings of words, in any order of the words, newest first.
func TestFind(t *testing.T) {
	onBoth(t, func(t *testing.T, b Book) {
		ctx, now := context.Background(), time.Date(2026, 3, 1, 8, 0, 0, 0, time.UTC)
		who := by(&now)
		for i, name := range []string{"tank lid", "Tank bottom", "stove leg", "Gärtnerei trough", "планка"} {
			now = now.Add(time.Minute)
			c := someCard(t, name, gutter)
			c.Note = ""
			if i > 1 {
				c.Tags = nil
			}
			r, err := who.New(CardKind, c)
			noErr(t, err)
			noErr(t, b.Save(ctx, r))
		}
		for text, want := range map[string]string{"": "планка,Gärtnerei trough,stove leg,Tank bottom,tank lid",
			"tank": "Tank bottom,tank lid", "bot tan": "Tank bottom",
			"GÄRT": "Gärtnerei trough", "план": "планка",
			"galv": "планка,Gärtnerei trough,stove leg,Tank bottom,tank lid", "ank": "", "tank zzz": "", "% _": "",
			"🔥": ""} {
			list, err := b.List(ctx, Query{Kind: CardKind, Text: text})
			noErr(t, err)
			var names []string
			for _, h := range list {
				names = append(names, h.Name)
			}
			if got := strings.Join(names, ","); got != want {
				t.Errorf("%q finds %s, want %s", text, got, want)
			}
		}
		if list, err := b.List(ctx, Query{Limit: 2, Offset: 1}); err != nil || len(list) != 2 ||
			list[0].Name != "Gärtnerei trough" {
			t.Errorf("the second page: %v, %v", list, err)
		}
	})
}

// Damaged lines are not imported, and check finds damaged rows.
func TestDamageIsFound(t *testing.T) {
	ctx, now := context.Background(), time.Date(2026, 3, 1, 8, 0, 0, 0, time.UTC)
	b := newFile(t)
	fill(t, b, by(&now), &now, 4)
	var out bytes.Buffer
	_, err := Export(ctx, b, &out)
	noErr(t, err)
	for name, alter := range map[string]func(string) string{
		"a changed figure": func(s string) string { return strings.Replace(s, `"value":`, `"value":1`, 1) },
		"no JSON":          func(s string) string { return s[:len(s)/2] },
		"another kind":     func(s string) string { return strings.Replace(s, `"kind":"card"`, `"kind":"crab"`, 1) },
		"a terminal's code": func(s string) string {
			return strings.Replace(s, `"program":"test"`,
				`"program":"\u001b[2J"`, 1)
		},
	} {
		other := newFile(t)
		if _, err := Import(ctx, other, strings.NewReader(alter(out.String()))); err == nil ||
			strings.ContainsAny(err.Error(), "\x1b\x00") {
			t.Errorf("%s is taken in: %v", name, err)
		}
	}
	s := b.(*store)
	if _, err := s.write.Exec("UPDATE revisions SET who = 'somebody else' WHERE rowid = 2"); err != nil {
		t.Fatal(err)
	}
	if faults, _, err := b.Check(ctx); err != nil || len(faults) != 1 || !strings.Contains(faults[0],
		"not what was saved") {
		t.Errorf("check: %v, %v", faults, err)
	}
}

// A look-up makes no file; a file that is not a book is refused and left alone.
func TestReadingMakesNothing(t *testing.T) {
	ctx := context.Background()
	dir := t.TempDir()
	if _, err := ReadFile(ctx, filepath.Join(dir, "none.db")); !errors.Is(err, ErrNone) {
		t.Errorf("%v", err)
	}
	if list, _ := os.ReadDir(dir); len(list) != 0 {
		t.Errorf("a look-up left %v", list)
	}
	letter := filepath.Join(dir, "letter.txt")
	noErr(t, os.WriteFile(letter, []byte("dear shop, this is no book but a letter"), 0o600))
	for _, open := range []func(context.Context, string) (Book, error){ReadFile, OpenFile} {
		if b, err := open(ctx, letter); err == nil {
			t.Errorf("a letter is a book: %v", b.Where())
		}
	}
	if b, _ := os.ReadFile(letter); string(b) != "dear shop, this is no book but a letter" {
		t.Errorf("the letter is now %q", b)
	}
}

// A book that is open only to read refuses a save.
func TestReadOnly(t *testing.T) {
	ctx, now := context.Background(), time.Now()
	file := filepath.Join(t.TempDir(), "book.db")
	b, err := OpenFile(ctx, file)
	noErr(t, err)
	fill(t, b, by(&now), &now, 3)
	noErr(t, b.Close())
	r, err := ReadFile(ctx, file)
	noErr(t, err)
	defer r.Close()
	if list, err := r.List(ctx, Query{}); err != nil || len(list) != 2 {
		t.Errorf("%v, %v", list, err)
	}
	rev, err := by(&now).New(PersonKind, Person{Name: "cy"})
	noErr(t, err)
	if err := r.Save(ctx, rev); !errors.Is(err, ErrReadOnly) {
		t.Errorf("%v", err)
	}
}

// Control characters for a terminal are removed, even from another program's book.
func TestHostileText(t *testing.T) {
	ctx, now := context.Background(), time.Now()
	b := newFile(t)
	card := Card{Name: "a\x1b[31mb c", Note: "=cmd()", Tags: []string{"\x1b]0;x\a"}, Job: gutter,
		Card: Kept{Figures: []Figure{{Name: "wire_feed", Value: 4}}}}
	r, err := by(&now).New(CardKind, card) // not cleaned, as a hostile program would do it
	noErr(t, err)
	noErr(t, b.Save(ctx, r))
	list, err := b.List(ctx, Query{})
	noErr(t, err)
	var out bytes.Buffer
	_, err = ExportCards(ctx, b, &out)
	noErr(t, err)
	for _, text := range []string{list[0].Name, list[0].Line, out.String()} {
		if strings.ContainsAny(text, "\x1b\a\u202e") {
			t.Errorf("%q", text)
		}
	}
	if strings.Contains(out.String(), ",=cmd()") {
		t.Errorf("a formula reaches the spreadsheet: %s", out.String())
	}
}

// No typed text puts a control character into a record.
func FuzzClean(f *testing.F) {
	for _, s := range []string{"tank", "\x1b[31m", "\u202eabc", "=1+1", strings.Repeat("a", 5000),
		"e\u0301\u0301\u0301\u0301\u0301\u0301", "\xff\xfe", "a\nb\tc", "💥"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		c := Card{Name: text, Note: text, Tags: []string{text},
			Card: Kept{Zone: text, Warns: []calc.Warning{{Text: text}}, Figures: []Figure{{Name: text, Unit: text}}}}
		c.Clean()
		tr := Trial{Peel: text, Note: text, Photo: text, Source: text, Lot: text, Verdict: text, Seen: text}
		Clean(&tr)
		for _, s := range append([]string{c.Name, c.Note, c.Card.Zone, c.Card.Warns[0].Text, c.Card.Figures[0].Name,
			c.Card.Figures[0].Unit, tr.Peel, tr.Note, tr.Photo, tr.Source, tr.Lot, tr.Verdict, tr.Seen}, c.Tags...) {
			if strings.ContainsFunc(s, func(r rune) bool {
				return r < ' ' || r == 0x7f || r >= 0x80 && r < 0xa0 || r >= 0x202a && r <= 0x202e || r == 0x2066
			}) {
				t.Errorf("%q became %q", text, s)
			}
		}
		if w := plain.Width(c.Name); w > nameWidth {
			t.Errorf("a name of %d columns", w)
		}
	})
}

// A name finds its record; an id does not count as a name.
func TestNamedIsNoPrefix(t *testing.T) {
	onBoth(t, func(t *testing.T, b Book) {
		ctx, now := context.Background(), time.Now()
		r, err := by(&now).New(SourceKind, Source{Name: "booth 1"})
		noErr(t, err)
		noErr(t, b.Save(ctx, r))
		if _, err := Named(ctx, b, SourceKind, r.ID[:4]); !errors.Is(err, ErrNone) {
			t.Errorf("%v", err)
		}
		if got, err := Named(ctx, b, SourceKind, "BOOTH 1"); err != nil || got.ID != r.ID {
			t.Errorf("%v, %v", got.ID, err)
		}
		if got, err := Resolve(ctx, b, SourceKind, r.ID[:4]); err != nil || got.ID != r.ID {
			t.Errorf("%v, %v", got.ID, err)
		}
	})
}

// Control characters in a revision's head are removed, and its time has its usual length even if it was damaged.
func TestHeadsAreTamed(t *testing.T) {
	ctx, now := context.Background(), time.Now()
	b := newFile(t)
	r, err := by(&now).New(PersonKind, Person{Name: "fay"})
	noErr(t, err)
	noErr(t, b.Save(ctx, r))
	_, err = b.(*store).write.Exec("UPDATE revisions SET at = ?, who = ?, program = ?", "x\x1b[31m", "a\x1b]0;b\x07",
		"\u202e1")
	noErr(t, err)
	got, err := b.Get(ctx, r.ID)
	damaged(t, err)
	list, err := b.History(ctx, r.ID)
	damaged(t, err)
	for _, r := range append(list, got) {
		if len(r.At) != 24 || unsafe(r.At+r.Who+r.Program) {
			t.Errorf("%q %q %q", r.At, r.Who, r.Program)
		}
	}
}

// damaged checks that an error is an *Unreadable and safe for a terminal.
func damaged(t testing.TB, err error) {
	t.Helper()
	var bad *Unreadable
	if !errors.As(err, &bad) || unsafe(err.Error()) {
		t.Errorf("the error of a damaged record: %v", err)
	}
}
