package book

import (
	"bytes"
	"compress/flate"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"brazebooth/calc"
	"brazebooth/internal/plain"
)

// postgresAddress names the variable with the address of a PostgreSQL server for tests.
const postgresAddress = "BRAZEBOOTH_TEST_POSTGRES"

// onBoth runs a test on each engine, on an empty book.
func onBoth(t *testing.T, test func(t *testing.T, b Book)) {
	t.Run("sqlite", func(t *testing.T) { test(t, newFile(t)) })
	t.Run("postgres", func(t *testing.T) { test(t, newServer(t)) })
}

func newFile(t testing.TB) Book {
	t.Helper()
	b, err := OpenFile(context.Background(), filepath.Join(t.TempDir(), "book.db"))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = b.Close() })
	return b
}

var servers int

// newServer is an empty book on the server, in a schema of its own that is dropped at the end.
func newServer(t testing.TB) Book {
	t.Helper()
	b, err := openServer(context.Background(), serverAddress(t))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = b.Close() })
	return b
}

func serverAddress(t testing.TB) string {
	t.Helper()
	address := os.Getenv(postgresAddress)
	if address == "" {
		t.Skip("no PostgreSQL: start one (docs: DEVELOPERS.md) and set " + postgresAddress +
			"=postgres://user@localhost/database")
	}
	servers++
	schema := fmt.Sprintf("booth_%d_%d", os.Getpid(), servers)
	admin, err := OpenAdmin(address)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := admin.Exec("CREATE SCHEMA " + schema); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		_, _ = admin.Exec("DROP SCHEMA " + schema + " CASCADE")
		_ = admin.Close()
	})
	u, err := url.Parse(address)
	if err != nil {
		t.Fatal(err)
	}
	q := u.Query()
	q.Set("search_path", schema)
	u.RawQuery = q.Encode()
	return u.String()
}

// by makes revisions with a clock that a test sets.
func by(now *time.Time) Author {
	return Author{Who: "ana", Where: "booth 1", Program: "test", Now: func() time.Time { return *now }}
}

func someCard(t testing.TB, name string, j calc.Job) Card {
	t.Helper()
	c, err := calc.Solve(j)
	if err != nil {
		t.Fatal(err)
	}
	k := Card{Name: name, Tags: []string{"tank"}, Note: "first tank of the year", Job: j, Card: Keep(&c)}
	k.Clean()
	return k
}

var gutter = calc.Job{Metal: "galvanized", Gauge: 20, Joint: "lap", Feed: calc.Some(4.1), Travel: calc.Some(8)}

func noErr(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

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

// Fifty writers at once: every acknowledged card is there.
func TestManyWriters(t *testing.T) {
	onBoth(t, func(t *testing.T, b Book) {
		ctx, now := context.Background(), time.Date(2026, 3, 1, 8, 0, 0, 0, time.UTC)
		who := by(&now)
		card := someCard(t, "x", gutter)
		var wg sync.WaitGroup
		for range 50 {
			wg.Go(func() {
				for range 4 {
					r, err := who.New(CardKind, card)
					if err == nil {
						err = b.Save(ctx, r)
					}
					if err == nil {
						_, err = b.Get(ctx, r.ID)
					}
					if err != nil {
						t.Error(err)
					}
				}
			})
		}
		wg.Wait()
		if _, n, err := b.Check(ctx); err != nil || n != 200 {
			t.Errorf("%d revisions, %v", n, err)
		}
	})
}

// A save that fails does not make the others in its group fail.
func TestOneBadSaveFailsAlone(t *testing.T) {
	b := newFile(t).(*store)
	ctx, now := context.Background(), time.Now()
	who := by(&now)
	if _, err := b.write.Exec("CREATE TRIGGER no_pears BEFORE INSERT ON heads WHEN new.name = 'pear' BEGIN SELECT " +
		"RAISE(ABORT, 'no pears'); END"); err != nil {
		t.Fatal(err)
	}
	w := &writer{e: &b.engine, db: b.write, in: make(chan saving, 3), most: 3}
	var group []saving
	for _, name := range []string{"apple", "pear", "plum"} {
		r, err := who.New(PersonKind, Person{Name: name})
		noErr(t, err)
		group = append(group, saving{ctx: ctx, list: []prepared{prepare(&r)}, answer: make(chan error, 1)})
	}
	w.in <- group[1]
	w.in <- group[2]
	w.commit(group[0])
	for i, want := range []bool{true, false, true} {
		if err := <-group[i].answer; (err == nil) != want {
			t.Errorf("%d: %v", i, err)
		}
	}
	if list, err := b.List(ctx, Query{}); err != nil || len(list) != 2 {
		t.Errorf("%v, %v", list, err)
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

// A book of every earlier version is updated, with a copy beside it; a newer one is only read.
func TestMigrations(t *testing.T) {
	ctx, now := context.Background(), time.Date(2026, 3, 1, 8, 0, 0, 0, time.UTC)
	for from := 1; !readable(from); from++ {
		dir := t.TempDir()
		file := filepath.Join(dir, "book.db")
		old := oldBook(t, file, from)
		r, err := by(&now).New(CardKind, someCard(t, "from long ago", gutter))
		noErr(t, err)
		plant(t, old, &r, from)
		noErr(t, old.Close())
		b, err := ReadFile(ctx, file) // reading updates it too
		noErr(t, err)
		if list, err := b.List(ctx, Query{Text: "long"}); err != nil || len(list) != 1 {
			t.Errorf("from version %d: %v, %v", from, list, err)
		}
		noErr(t, b.Close())
		copies, _ := filepath.Glob(filepath.Join(dir, "book.db.before-version-*"))
		if len(copies) != 1 {
			t.Errorf("from version %d: copies %v", from, copies)
		}
	}
	file := filepath.Join(t.TempDir(), "book.db")
	b, err := OpenFile(ctx, file)
	noErr(t, err)
	_, err = b.(*store).write.Exec("UPDATE meta SET value = '99' WHERE name = 'version'")
	noErr(t, err)
	noErr(t, b.Close())
	b, err = OpenFile(ctx, file)
	noErr(t, err)
	defer b.Close()
	if !strings.Contains(b.ReadOnly(), "newer program") {
		t.Errorf("read only: %q", b.ReadOnly())
	}
}

// oldBook is a book's file as an earlier program wrote it.
func oldBook(t *testing.T, file string, version int) *store {
	t.Helper()
	s := &store{engine: sqlite, place: file}
	var err error
	s.write, err = OpenRaw(file)
	noErr(t, err)
	_, err = s.migrate(context.Background(), version)
	noErr(t, err)
	return s
}

// plant saves a revision as an earlier program did.
func plant(t *testing.T, s *store, r *Revision, version int) {
	t.Helper()
	if version > 2 {
		t.Fatalf("add how version %d saved a revision", version)
	}
	_, err := s.write.Exec("INSERT INTO revisions ("+revisionColumns+") VALUES ($1, $2, $3, $4, $5, $6, $7, $8, "+
		"$9, $10, $11)",
		r.Rev, r.ID, r.Parent, string(r.Kind), r.At, r.Who, r.Where, r.Program, r.Schema, 0, flated(t, r.Body))
	noErr(t, err)
	_, err = s.write.Exec("INSERT INTO heads (id, rev, kind, at, deleted, name, line) VALUES ($1, $2, $3, $4, 0, "+
		"$5, $6)",
		r.ID, r.Rev, string(r.Kind), r.At, "from long ago", "")
	noErr(t, err)
	if version < 2 {
		return
	}
	for _, w := range words("from long ago") {
		_, err = s.write.Exec("INSERT INTO words (word, id) VALUES ($1, $2)", w, r.ID)
		noErr(t, err)
	}
}

// flated compresses a body with DEFLATE, as earlier programs did.
func flated(t *testing.T, body []byte) []byte {
	t.Helper()
	var out bytes.Buffer
	w, err := flate.NewWriter(&out, flate.BestSpeed)
	noErr(t, err)
	_, err = w.Write(body)
	noErr(t, err)
	noErr(t, w.Close())
	return out.Bytes()
}

// A server's book of every earlier version is updated too.
func TestServerMigrations(t *testing.T) {
	ctx, now := context.Background(), time.Date(2026, 3, 1, 8, 0, 0, 0, time.UTC)
	for from := 1; !readable(from); from++ {
		address := serverAddress(t)
		old, _, err := dial(ctx, address, false)
		noErr(t, err)
		_, err = old.migrate(ctx, from)
		noErr(t, err)
		r, err := by(&now).New(CardKind, someCard(t, "from long ago", gutter))
		noErr(t, err)
		plant(t, old, &r, from)
		noErr(t, old.Close())
		b, err := openServer(ctx, address)
		noErr(t, err)
		if list, err := b.List(ctx, Query{Text: "long ago"}); err != nil || len(list) != 1 {
			t.Errorf("from version %d: %v, %v", from, list, err)
		}
		if faults, n, err := b.Check(ctx); err != nil || n != 1 || len(faults) > 1 { // the planted head has no line
			t.Errorf("from version %d: %v, %d, %v", from, faults, n, err)
		}
		next, err := by(&now).Change(&r, someCard(t, "of today", gutter))
		noErr(t, err)
		noErr(t, b.SaveOn(ctx, next))
		if list, err := b.List(ctx, Query{Text: "long"}); err != nil || len(list) != 0 {
			t.Errorf("from version %d: %v, %v", from, list, err)
		}
		noErr(t, b.Close())
	}
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

func TestNetworkShareIsRefused(t *testing.T) {
	defer fakeNetwork(t)()
	_, err := OpenFile(context.Background(), filepath.Join(t.TempDir(), "book.db"))
	if err == nil || !strings.Contains(err.Error(), "NFS") || !strings.Contains(err.Error(), "postgres://") {
		t.Errorf("%v", err)
	}
}

// Without its server, a save goes into a local file, which can be merged later; a revision that did reach the server is
// not doubled.
func TestServerAway(t *testing.T) {
	ctx, now := context.Background(), time.Now()
	beside := filepath.Join(t.TempDir(), "offline.db")
	r, err := by(&now).New(PersonKind, Person{Name: "fay"})
	noErr(t, err)
	const nobody = "postgres://booth@localhost:1/none?connect_timeout=1"
	kept, err := SaveOr(ctx, nobody, beside, r)
	if err != nil || kept != beside {
		t.Fatalf("%q, %v", kept, err)
	}
	if _, err := SaveOr(ctx, nobody, "", r); err == nil {
		t.Error("a save that went nowhere is no error")
	}
	address := serverAddress(t)
	server, err := openServer(ctx, address)
	noErr(t, err)
	defer server.Close()
	noErr(t, server.Save(ctx, r)) // the server did save it, but its answer was lost
	local, err := ReadFile(ctx, beside)
	noErr(t, err)
	defer local.Close()
	_, err = Merge(ctx, server, local)
	noErr(t, err)
	if _, n, err := server.Check(ctx); err != nil || n != 1 {
		t.Errorf("%d revisions, %v", n, err)
	}
}

// A save during which the server drops the connection is an error, never acknowledged.
func TestServerDropsTheConnection(t *testing.T) {
	address := serverAddress(t)
	ctx, now := context.Background(), time.Now()
	b, err := openServer(ctx, address)
	noErr(t, err)
	defer b.Close()
	admin, err := OpenAdmin(os.Getenv(postgresAddress))
	noErr(t, err)
	defer admin.Close()
	stop := make(chan struct{})
	var killer sync.WaitGroup
	killer.Go(func() { // ends the other sessions over and over
		for {
			select {
			case <-stop:
				return
			case <-time.After(15 * time.Millisecond):
				_, _ = admin.Exec("SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE pid <> " +
					"pg_backend_pid() AND query LIKE '%revisions%'")
			}
		}
	})
	var acknowledged []string
	failed := 0
	card := someCard(t, "x", gutter)
	for range 150 {
		r, err := by(&now).New(CardKind, card)
		noErr(t, err)
		if err := b.Save(ctx, r); err != nil {
			failed++
			continue
		}
		acknowledged = append(acknowledged, r.ID)
	}
	close(stop)
	killer.Wait()
	fresh, err := openServer(ctx, address)
	noErr(t, err)
	defer fresh.Close()
	for _, id := range acknowledged {
		if _, err := fresh.Get(ctx, id); err != nil {
			t.Errorf("%s was acknowledged and is lost: %v", id, err)
		}
	}
	if faults, _, err := fresh.Check(ctx); err != nil || len(faults) != 0 {
		t.Errorf("%v, %v", faults, err)
	}
	t.Logf("%d acknowledged, %d refused while the server dropped its sessions", len(acknowledged), failed)
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

// A server that refuses and a bad address do not count as a server that cannot be reached.
func TestNotAway(t *testing.T) {
	ctx, now := context.Background(), time.Now()
	beside := filepath.Join(t.TempDir(), "offline.db")
	r, err := by(&now).New(PersonKind, Person{Name: "fay"})
	noErr(t, err)
	for _, where := range []string{"postgres://u:p%zz@h/db", "postgres://u@127.0.0.1:notaport/db"} {
		if _, err := SaveOr(ctx, where, beside, r); !errors.Is(err, ErrAddress) {
			t.Errorf("%s: %v", where, err)
		}
	}
	u, err := url.Parse(serverAddress(t))
	noErr(t, err)
	u.Path = "/no_such_database"
	if kept, err := SaveOr(ctx, u.String(), beside, r); err == nil || kept != "" {
		t.Errorf("kept %q, %v", kept, err)
	}
	if _, err := os.Stat(beside); err == nil {
		t.Error("a local file was made")
	}
}
