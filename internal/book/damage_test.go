package book

import (
	"bytes"
	"context"
	"encoding/csv"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"brazebooth/internal/deep"
)

const pageSize = 4096

// madeBook is the file of a book that shopBook made, and how many revisions it has.
type madeBook struct {
	text      []byte
	revisions int
}

var shopBooks deep.Known[int, madeBook]

// shopBook writes a book of so many cards, with changes and other records among them, into a new folder. It returns the
// number of its revisions and of its pages. The same number of cards gives the same book.
func shopBook(t testing.TB, cards int) (file string, revisions int, pages int64) {
	t.Helper()
	m, err := shopBooks.Of(cards, func() (m madeBook, err error) {
		made, revisions := newShopBook(t, cards)
		m.revisions = revisions
		m.text, err = os.ReadFile(made)
		return m, err
	})
	noErr(t, err)
	file = filepath.Join(t.TempDir(), "book.db")
	noErr(t, os.WriteFile(file, m.text, 0o600))
	return file, m.revisions, int64(len(m.text)) / pageSize
}

func newShopBook(t testing.TB, cards int) (file string, revisions int) {
	t.Helper()
	ctx, now := context.Background(), time.Date(2026, 3, 1, 8, 0, 0, 0, time.UTC)
	file = filepath.Join(t.TempDir(), "book.db")
	b, err := OpenFile(ctx, file)
	noErr(t, err)
	who := by(&now)
	card := someCard(t, "tank", gutter)
	var list []Revision
	for n := range cards {
		now = now.Add(time.Minute)
		card.Name, card.Note = fmt.Sprintf("tank lid %d", n), strings.Repeat(fmt.Sprintf("lid %d cut, ", n*n), 1+n%90)
		r, err := who.New(CardKind, card)
		noErr(t, err)
		list = append(list, r)
		if n%5 == 0 {
			card.Note = "slower"
			c, err := who.Change(&r, card)
			noErr(t, err)
			list = append(list, c)
		}
		if n%7 == 0 {
			p, err := who.New(PersonKind, Person{Name: fmt.Sprintf("p%d", n)})
			noErr(t, err)
			list = append(list, p)
		}
	}
	noErr(t, b.Save(ctx, list...))
	noErr(t, b.Close())
	return file, len(list)
}

// zeroed is a copy of a book with one page, counted from 1, overwritten with zeros. Neither file is open in this
// process.
func zeroed(t testing.TB, file string, page int64) string {
	t.Helper()
	text, err := os.ReadFile(file)
	noErr(t, err)
	clear(text[(page-1)*pageSize : page*pageSize])
	bad := filepath.Join(t.TempDir(), "bad.db")
	noErr(t, os.WriteFile(bad, text, 0o600))
	if is, err := os.Stat(file); err != nil || theShelf.holds(is) {
		t.Fatal("this is a book that is open here")
	}
	return bad
}

// rootOf is the page at which the table of revisions begins.
func rootOf(t testing.TB, file string) (page int64) {
	t.Helper()
	db, err := OpenRaw(file)
	noErr(t, err)
	noErr(t, db.QueryRow("SELECT rootpage FROM sqlite_master WHERE name = 'revisions'").Scan(&page))
	noErr(t, db.Close())
	return page
}

// Whichever page of a book is lost, everything on the others can be read: exported, backed up, and merged into another
// book. The missing revisions are named, and the copies are sound. Only the loss of two pages loses everything: the
// first, which says what the file is, and the root of the table of revisions.
func TestOnePageGone(t *testing.T) {
	deep.Turn(t)
	alone(t)
	cards := 40
	if deep.Times() > 1 {
		cards = 300
	}
	file, all, pages := shopBook(t, cards)
	root := rootOf(t, file)
	step := max(1, pages/int64(deep.Many(3, 10)))
	if deep.Times() > 1 {
		step = 1
	}
	damaged, worst := 0, 0
	for page := int64(2); page <= pages; page += step {
		if page == root {
			continue
		}
		lost := all - survivors(t, zeroed(t, file, page), all)
		if lost > 0 {
			damaged++
		}
		if worst = max(worst, lost); lost > all/5 {
			t.Errorf("page %d of %d: %d revisions of %d are lost", page, pages, lost, all)
		}
	}
	if damaged == 0 {
		t.Error("no page held a revision: nothing was tested")
	}
	t.Logf("%d pages of %d tried: %d of them take revisions, %d of %d at most", (pages-2)/step+1, pages, damaged, worst,
		all)
}

// Of a file that ends too early the part before its end can be read, or it is refused as damaged.
func TestAFileThatEndsTooEarly(t *testing.T) {
	alone(t)
	file, all, pages := shopBook(t, 40)
	text, err := os.ReadFile(file)
	noErr(t, err)
	had := 0
	for _, share := range []int64{1, 2, 4, 6, 8, 9} {
		for _, more := range []int64{0, 100} {
			bad := filepath.Join(t.TempDir(), "bad.db")
			noErr(t, os.WriteFile(bad, text[:pages*share/10*pageSize+more], 0o600))
			b, err := ReadFile(context.Background(), bad)
			if err != nil {
				if !unreadablePage(err) {
					t.Errorf("%d tenths and %d bytes: %v", share, more, err)
				}
				continue
			}
			var out bytes.Buffer
			n, err := Export(context.Background(), b, &out)
			if lost := missing(t, "export", err); lost == 0 && n < all {
				t.Errorf("%d tenths and %d bytes: %d of %d revisions without an error", share, more, n, all)
			}
			had = max(had, n)
			noErr(t, b.Close())
		}
	}
	if had < all/2 {
		t.Errorf("of nine tenths of a book only %d of %d revisions can be read", had, all)
	}
}

// survivors is how many revisions of a damaged book can be read; every way of reading them must give the same number.
func survivors(t testing.TB, file string, all int) (n int) {
	t.Helper()
	ctx := context.Background()
	b, err := ReadFile(ctx, file)
	noErr(t, err)
	defer b.Close()
	var out bytes.Buffer
	n, err = Export(ctx, b, &out)
	lost := missing(t, "export", err)
	if n+lost != all {
		t.Errorf("%s: %d exported and %d said to be missing of %d", file, n, lost, all)
	}
	faults, _, err := b.Check(ctx)
	if err != nil || lost > 0 && len(faults) == 0 {
		t.Errorf("check: %q, %v", faults, err)
	}
	copy := filepath.Join(t.TempDir(), "copy.db")
	missing(t, "backup", b.Backup(ctx, copy))
	for what, fill := range map[string]func(Book) error{
		"backup": nil,
		"import": func(to Book) error { _, err := Import(ctx, to, &out); return err },
		"merge":  func(to Book) error { _, err := Merge(ctx, to, b); missing(t, "merge", err); return nil },
	} {
		if fill == nil {
			same(t, what, copy, n, lost)
			continue
		}
		to := filepath.Join(t.TempDir(), "to.db")
		c, err := OpenFile(ctx, to)
		noErr(t, err)
		noErr(t, fill(c))
		noErr(t, c.Close())
		same(t, what, to, n, lost)
	}
	return n
}

// missing is how many revisions an error says are missing; any other error fails the test.
func missing(t testing.TB, what string, err error) int {
	t.Helper()
	var lost *Missing
	if err != nil && !errors.As(err, &lost) {
		t.Errorf("%s: %v", what, err)
	}
	if lost == nil {
		return 0
	}
	if lost.N == 0 || len(lost.Lines) == 0 {
		t.Errorf("%s: %v: %q", what, lost, lost.Lines)
	}
	return lost.N
}

// same checks that a book is sound and has n revisions; if some are lost, the parents of others may be missing.
func same(t testing.TB, what, file string, n, lost int) {
	t.Helper()
	ctx := context.Background()
	c, err := ReadFile(ctx, file)
	noErr(t, err)
	defer c.Close()
	faults, have, err := c.Check(ctx)
	for _, f := range faults {
		if lost == 0 || !strings.Contains(f, "which is not here") {
			t.Errorf("%s: %s", what, f)
		}
	}
	if err != nil || have != n {
		t.Errorf("%s holds %d revisions of %d, %v", what, have, n, err)
	}
}

// The present cards can be written as CSV while their list cannot be read.
func TestCardsWithoutTheirList(t *testing.T) {
	deep.Turn(t)
	alone(t)
	ctx := context.Background()
	file, _, _ := shopBook(t, 100)
	whole := cardsOf(t, file)
	db, err := OpenRaw(file)
	noErr(t, err)
	var page int64
	noErr(t, db.QueryRow("SELECT rootpage FROM sqlite_master WHERE name = 'heads'").Scan(&page))
	noErr(t, db.Close())
	bad := zeroed(t, file, page)
	b, err := ReadFile(ctx, bad)
	noErr(t, err)
	if _, err := b.List(ctx, Query{Kind: CardKind}); err == nil {
		t.Error("the list can be read: nothing is tested")
	}
	noErr(t, b.Close())
	some := cardsOf(t, bad)
	if len(some) != len(whole) || len(whole) != 100 {
		t.Errorf("%d cards of %d", len(some), len(whole))
	}
	for id, row := range whole {
		if some[id] != row {
			t.Errorf("%s was %q and is %q", id, row, some[id])
		}
	}
}

func cardsOf(t testing.TB, file string) map[string]string {
	t.Helper()
	b, err := ReadFile(context.Background(), file)
	noErr(t, err)
	defer b.Close()
	var out bytes.Buffer
	_, err = ExportCards(context.Background(), b, &out)
	noErr(t, err)
	rows, err := csv.NewReader(&out).ReadAll()
	noErr(t, err)
	list := map[string]string{}
	for _, row := range rows[1:] {
		list[row[0]] = strings.Join(row, "|")
	}
	return list
}

// An id shows its own record or gives an error: never another record, and never something that was not saved. Check
// finds each case.
func TestAnIDShowsItsOwnRecord(t *testing.T) {
	ctx, now := context.Background(), time.Date(2026, 3, 1, 8, 0, 0, 0, time.UTC)
	for what, harm := range map[string]string{
		"another's revision at its head": "UPDATE heads SET rev = (SELECT rev FROM revisions WHERE id <> heads.id " +
			"LIMIT 1) WHERE id = ?",
		"no such revision at its head": "UPDATE heads SET rev = 'ffffffffffffffffffffffffffffffff' WHERE id = ?",
		"its revision is gone":         "DELETE FROM revisions WHERE id = ?",
		"its body is another's": "UPDATE revisions SET body = (SELECT body FROM revisions r WHERE r.id <> " +
			"revisions.id LIMIT 1) WHERE id = ?",
		"its body is none":     "UPDATE revisions SET body = x'00' WHERE id = ?",
		"its body is empty":    "UPDATE revisions SET body = x'' WHERE id = ?",
		"its body is endless":  "UPDATE revisions SET body = zeroblob(9000000) WHERE id = ?",
		"somebody else's name": "UPDATE revisions SET who = 'eve' WHERE id = ?",
	} {
		file := filepath.Join(t.TempDir(), "book.db")
		b, err := OpenFile(ctx, file)
		noErr(t, err)
		who := by(&now)
		mine, err := who.New(CardKind, someCard(t, "mine", gutter))
		noErr(t, err)
		other, err := who.New(CardKind, someCard(t, "other", gutter))
		noErr(t, err)
		noErr(t, b.Save(ctx, mine, other))
		db, err := OpenRaw(file)
		noErr(t, err)
		_, err = db.Exec("PRAGMA foreign_keys = 0")
		noErr(t, err)
		_, err = db.Exec(harm, mine.ID)
		noErr(t, err)
		if r, err := b.Get(ctx, mine.ID); !unreadablePage(err) {
			t.Errorf("%s: shows %s of %s, %v", what, r.Rev, r.ID, err)
		}
		if r, err := b.Get(ctx, other.ID); err != nil || r.Rev != other.Rev {
			t.Errorf("%s: the other shows %v, %v", what, r, err)
		}
		if faults, _, err := b.Check(ctx); err != nil || len(faults) == 0 ||
			!strings.Contains(strings.Join(faults, "\n"), mine.ID) {
			t.Errorf("%s: check says %q, %v", what, faults, err)
		}
		noErr(t, errors.Join(db.Close(), b.Close()))
	}
}
