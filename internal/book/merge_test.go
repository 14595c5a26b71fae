package book

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"
)

// An export is the same to the byte after it was imported into another book, also from one engine to the other.
func TestExportRoundTrips(t *testing.T) {
	onBoth(t, func(t *testing.T, b Book) {
		ctx, now := context.Background(), time.Date(2026, 3, 1, 8, 0, 0, 0, time.UTC)
		fill(t, b, by(&now), &now, 30)
		var first, second bytes.Buffer
		n, err := Export(ctx, b, &first)
		noErr(t, err)
		other := newFile(t)
		m, err := Import(ctx, other, bytes.NewReader(first.Bytes()))
		noErr(t, err)
		_, err = Export(ctx, other, &second)
		noErr(t, err)
		if n != m || !bytes.Equal(first.Bytes(), second.Bytes()) {
			t.Errorf("%d revisions of %d bytes came back as %d of %d", n, first.Len(), m, second.Len())
		}
	})
}

// fill saves cards, changes some and deletes some.
func fill(t testing.TB, b Book, who Author, now *time.Time, n int) {
	t.Helper()
	ctx := context.Background()
	card := someCard(t, "x", gutter)
	for i := range n {
		*now = now.Add(time.Second)
		card.Name = fmt.Sprintf("job %d", i)
		r, err := who.New(CardKind, card)
		noErr(t, err)
		noErr(t, b.Save(ctx, r))
		if i%3 == 0 {
			card.Note = "changed"
			r, err = who.Change(&r, card)
			noErr(t, err)
			noErr(t, b.Save(ctx, r))
		}
		if i%5 == 0 {
			r, err = who.Delete(&r)
			noErr(t, err)
			noErr(t, b.Save(ctx, r))
		}
	}
}

// Two books that changed the same card are merged in either order: nothing is doubled or lost, and the head is the
// same.
func TestMerge(t *testing.T) {
	onBoth(t, func(t *testing.T, a Book) {
		ctx, now := context.Background(), time.Date(2026, 3, 1, 8, 0, 0, 0, time.UTC)
		b, c := newFile(t), newFile(t)
		who := by(&now)
		base, err := who.New(CardKind, someCard(t, "shared", gutter))
		noErr(t, err)
		noErr(t, a.Save(ctx, base))
		noErr(t, b.Save(ctx, base))
		left, err := who.Change(&base, someCard(t, "ours", gutter))
		noErr(t, err)
		now = now.Add(time.Hour)
		right, err := who.Change(&base, someCard(t, "theirs", gutter))
		noErr(t, err)
		noErr(t, a.Save(ctx, left))
		noErr(t, b.Save(ctx, right))
		own, err := who.New(PersonKind, Person{Name: "bo"})
		noErr(t, err)
		noErr(t, b.Save(ctx, own))
		_, err = Merge(ctx, c, b)
		noErr(t, err)
		_, err = Merge(ctx, c, a)
		noErr(t, err)
		_, err = Merge(ctx, a, b)
		noErr(t, err)
		for _, m := range []Book{a, c} {
			history, err := m.History(ctx, base.ID)
			noErr(t, err)
			head, err := m.Get(ctx, base.ID)
			noErr(t, err)
			if len(history) != 3 || head.Rev != right.Rev {
				t.Errorf("%d revisions, head %s", len(history), head.Rev)
			}
			if faults, n, err := m.Check(ctx); err != nil || n != 4 || len(faults) != 0 {
				t.Errorf("check: %v, %d, %v", faults, n, err)
			}
		}
	})
}

// A backup is a separate book with the same revisions.
func TestBackup(t *testing.T) {
	onBoth(t, func(t *testing.T, b Book) {
		ctx, now := context.Background(), time.Date(2026, 3, 1, 8, 0, 0, 0, time.UTC)
		fill(t, b, by(&now), &now, 6)
		file := filepath.Join(t.TempDir(), "copy.db")
		noErr(t, b.Backup(ctx, file))
		if err := b.Backup(ctx, file); err == nil {
			t.Error("a backup overwrites another")
		}
		c, err := ReadFile(ctx, file)
		noErr(t, err)
		defer c.Close()
		var one, two bytes.Buffer
		_, err = Export(ctx, b, &one)
		noErr(t, err)
		_, err = Export(ctx, c, &two)
		noErr(t, err)
		if !bytes.Equal(one.Bytes(), two.Bytes()) {
			t.Error("the backup differs")
		}
	})
}

func FuzzImport(f *testing.F) {
	now := time.Date(2026, 3, 1, 8, 0, 0, 0, time.UTC)
	r, err := by(&now).New(PersonKind, Person{Name: "dee"})
	if err != nil {
		f.Fatal(err)
	}
	line, _ := json.Marshal(r)
	for _, s := range []string{string(line), "{}", "", "[1]", "null\n{}", string(line) + "\n" + string(line),
		strings.Repeat("{", 2000)} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		b := newFile(t)
		n, err := Import(context.Background(), b, strings.NewReader(text))
		faults, have, checkErr := b.Check(context.Background())
		if checkErr != nil || len(faults) != 0 || have > n {
			t.Errorf("%d imported (%v), %d there, %v, %v", n, err, have, faults, checkErr)
		}
		_, _ = Export(context.Background(), b, io.Discard)
	})
}

// A save that no book takes goes into a file, from which a book can import it later.
func TestRescue(t *testing.T) {
	t.Setenv("TMPDIR", t.TempDir())
	ctx, now := context.Background(), time.Now()
	r, err := by(&now).New(CardKind, someCard(t, "tank lid", gutter))
	noErr(t, err)
	name, err := Rescue(r)
	noErr(t, err)
	f, err := os.Open(name)
	noErr(t, err)
	defer f.Close()
	b := newFile(t)
	if n, err := Import(ctx, b, f); err != nil || n != 1 {
		t.Fatalf("%d imported, %v", n, err)
	}
	got, err := b.Get(ctx, r.ID)
	noErr(t, err)
	if got.Rev != r.Rev {
		t.Errorf("%s became %s", r.Rev, got.Rev)
	}
	t.Setenv("TMPDIR", filepath.Join(t.TempDir(), "none"))
	if _, err := Rescue(r); err == nil {
		t.Error("a rescue that went nowhere is no error")
	}
}

// Of two changes of the same revision the second is refused, even if it is identical. So many users can take wire from
// one spool at once and no change is lost.
func TestChangesMeet(t *testing.T) {
	onBoth(t, func(t *testing.T, b Book) {
		ctx, now := context.Background(), time.Now()
		r, err := by(&now).New(SpoolKind, Spool{Lot: "A17", Full: 5000, Left: 5000})
		noErr(t, err)
		noErr(t, b.Save(ctx, r))
		one, err := by(&now).Change(&r, Spool{Lot: "A17", Full: 5000, Left: 4900})
		noErr(t, err)
		two, err := by(&now).Change(&r, Spool{Lot: "A17", Full: 5000, Left: 4800})
		noErr(t, err)
		noErr(t, b.SaveOn(ctx, one))
		for _, late := range []Revision{one, two} {
			if err := b.SaveOn(ctx, late); !errors.Is(err, ErrStale) {
				t.Fatalf("%v", err)
			}
		}
		var all sync.WaitGroup
		for range 20 {
			all.Go(func() {
				for {
					r, err := b.Get(ctx, r.ID)
					if err != nil {
						t.Error(err)
						return
					}
					s, _ := Body[Spool](&r)
					s.Left -= 100
					when := time.Now()
					next, err := by(&when).Change(&r, s)
					if err != nil {
						t.Error(err)
						return
					}
					if err := b.SaveOn(ctx, next); errors.Is(err, ErrStale) {
						continue
					} else if err != nil {
						t.Error(err)
					}
					return
				}
			})
		}
		all.Wait()
		got, err := b.Get(ctx, r.ID)
		noErr(t, err)
		if s, _ := Body[Spool](&got); s.Left != 2900 {
			t.Errorf("%.0f g are left of 4900 after 20 times 100", s.Left)
		}
	})
}
