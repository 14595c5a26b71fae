package program

import (
	"database/sql"
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"brazebooth/internal/book"
	"brazebooth/internal/deep"
)

// smallBook is a book of a few records, made and changed as in the soak, with its ledger.
func smallBook(t *testing.T, file string) *ledger {
	t.Helper()
	b, err := book.OpenFile(t.Context(), file)
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	l := newLedger()
	now := time.Date(2026, 1, 2, 3, 4, 5, 0, time.UTC)
	who := book.Author{Who: "ana", Program: "test", Now: func() time.Time { now = now.Add(time.Second); return now }}
	keep := func(rec *soakRecord, r book.Revision, err error) book.Revision {
		t.Helper()
		if err == nil {
			err = b.Save(t.Context(), r)
		}
		if err != nil {
			t.Fatal(err)
		}
		l.came(rec, r.ID)
		return r
	}
	for n := range 9 {
		mark := fmt.Sprintf("m%dx%06dx", n%3, n)
		note := mark + " first"
		switch n % 3 {
		case 1:
			r, err := who.New(book.ReadingKind, book.Reading{Source: "booth 1", Filler: "cusi3", Wire: 0.9,
				Mode: "dip", Feed: 6, StickOut: 12, Amps: ampsOf(mark), Note: note})
			keep(l.tried(book.ReadingKind, mark, note), r, err)
		default:
			rec := l.tried(book.CardKind, mark, note)
			card := smallCard(mark, note)
			r, err := who.New(book.CardKind, card)
			r = keep(rec, r, err)
			card.Note = mark + " second"
			l.then(rec, soakState{note: card.Note})
			next, err := who.Change(&r, card)
			r = keep(rec, next, err)
			if n%3 == 2 {
				l.then(rec, soakState{note: card.Note, deleted: true})
				gone, err := who.Delete(&r)
				keep(rec, gone, err)
			}
		}
	}
	return l
}

// doctorings are kinds of damage to a record, as SQL with the ids of the record and of the next one of its kind.
var doctorings = []struct {
	name, do string
	lost     bool // an acknowledged state is lost; else it is there but something is wrong with it
}{
	{"removed", `DELETE FROM words WHERE n = (SELECT n FROM heads WHERE id = :a);
		DELETE FROM heads WHERE id = :a; DELETE FROM revisions WHERE id = :a`, true},
	{"its last state is gone", `PRAGMA foreign_keys = off;
		CREATE TEMP TABLE last AS SELECT r.* FROM revisions r JOIN heads h ON h.rev = r.rev WHERE h.id = :a;
		UPDATE heads SET rev = (SELECT parent FROM temp.last), deleted = 0 WHERE id = :a;
		DELETE FROM revisions WHERE rev IN (SELECT rev FROM temp.last)`, true},
	{"its first state is gone", `PRAGMA foreign_keys = off; DELETE FROM revisions WHERE id = :a AND parent = ''`, true},
	{"shows another one", `CREATE TEMP TABLE two AS SELECT id, rev FROM heads WHERE id IN (:a, :b);
		UPDATE heads SET rev = (SELECT rev FROM temp.two WHERE temp.two.id <> heads.id) WHERE id IN (:a, :b)`, false},
	{"shows another one's text", `UPDATE heads SET name = (SELECT name FROM heads WHERE id = :b), line = 'x'
		WHERE id = :a`, false},
	{"shows no state", `PRAGMA foreign_keys = off; UPDATE heads SET rev = 'x' WHERE id = :a`, false},
	{"has another one's body", `UPDATE revisions SET body = (SELECT body FROM revisions WHERE id = :b AND parent = '')
		WHERE id = :a AND parent = ''`, true},
	{"has no head", `PRAGMA foreign_keys = off; DELETE FROM heads WHERE id = :a`, false},
	{"is not found", `DELETE FROM words WHERE n = (SELECT n FROM heads WHERE id = :a)`, false},
	{"is found by another one's words", `UPDATE OR IGNORE words SET n = (SELECT n FROM heads WHERE id = :b)
		WHERE n = (SELECT n FROM heads WHERE id = :a) AND word LIKE 'm%x'`, false},
	{"is there as another one's", `PRAGMA foreign_keys = off; UPDATE revisions SET id = :b WHERE id = :a`, true},
}

// The soak's check notices every kind of damage to any record, and finds nothing wrong before.
func TestSoakNoticesADoctoredBook(t *testing.T) {
	deep.Turn(t)
	t.Parallel()
	dir := t.TempDir()
	whole := filepath.Join(dir, "whole.db")
	l := smallBook(t, whole)
	if lost, wrong := look(t, l, whole); len(lost) > 0 || len(wrong) > 0 {
		t.Fatalf("before anything was done to it: lost %q, wrong %q", lost, wrong)
	}
	for i, d := range doctorings {
		records := l.records
		if !deep.Run() { // with random records
			at := (2*i + int(deep.Seed())) % (len(records) - 1)
			records = records[at : at+2]
		}
		for _, r := range records {
			at := slices.Index(l.records, r)
			// it has only one state: this would remove it
			if r.kind == book.ReadingKind && strings.Contains(d.name, "state is gone") {
				continue
			}
			next := l.records[(at+3)%len(l.records)]
			file := copyOf(t, whole, filepath.Join(dir, fmt.Sprintf("%d-%d.db", i, at)))
			doctored(t, file, strings.NewReplacer(":a", "'"+r.id+"'", ":b", "'"+next.id+"'").Replace(d.do))
			lost, wrong := look(t, l, file)
			if d.lost != slices.ContainsFunc(lost, func(s string) bool { return strings.Contains(s, r.id) }) {
				t.Errorf("record %d %s: lost %q", at, d.name, lost)
			}
			if !d.lost && !slices.ContainsFunc(wrong, func(s string) bool { return strings.Contains(s, r.id) }) {
				t.Errorf("record %d %s: wrong %q", at, d.name, wrong)
			}
		}
	}
}

// The soak's check also notices a record that was never saved, an answer with another record's id, and a damaged file.
func TestSoakNoticesForeignData(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	whole := filepath.Join(dir, "whole.db")
	l := smallBook(t, whole)
	for at := range l.records {
		if !deep.Run() && (at+int(deep.Seed()))%4 != 0 {
			continue // other records with another seed
		}
		r := l.records[at]
		l.records = slices.Delete(slices.Clone(l.records), at, at+1)
		if lost, wrong := look(t, l, whole); len(lost) > 0 || len(wrong) != 1 || !strings.Contains(wrong[0],
			"nobody saved") {
			t.Errorf("record %d was saved by nobody: lost %q, wrong %q", at, lost, wrong)
		}
		l.records = slices.Insert(l.records, at, r)
		other := l.records[(at+1)%len(l.records)]
		r.id, other.id = other.id, r.id
		if lost, wrong := look(t, l, whole); len(lost) < 2 || len(wrong) < 2 {
			t.Errorf("record %d was answered with another's id: lost %q, wrong %q", at, lost, wrong)
		}
		r.id, other.id = other.id, r.id
		last := &r.states[len(r.states)-1]
		was, id := *last, r.id
		if last.said = false; len(r.states) == 1 {
			r.id = ""
		}
		if lost, wrong := look(t, l, whole); len(lost) > 0 || len(wrong) > 0 {
			t.Errorf("record %d was saved but not acknowledged, which is allowed: lost %q, wrong %q", at, lost, wrong)
		}
		last.note += " x"
		if lost, wrong := look(t, l, whole); len(lost) > 0 || len(wrong) != 1 || !strings.Contains(wrong[0],
			"not one that was made") {
			t.Errorf("record %d has content that no writer gave it: lost %q, wrong %q", at, lost, wrong)
		}
		*last, r.id = was, id
	}
	for i, do := range []string{"DELETE FROM sqlite_schema WHERE name = 'heads_at'",
		"UPDATE sqlite_schema SET rootpage = (SELECT rootpage FROM sqlite_schema WHERE name = 'heads_kind') WHERE " +
			"name = 'heads_at'"} {
		file := copyOf(t, whole, filepath.Join(dir, fmt.Sprintf("schema-%d.db", i)))
		doctored(t, file, "PRAGMA writable_schema = on; "+do)
		if faults := soundFile(t, file); len(faults) == 0 {
			t.Errorf("%s: nothing is found", do)
		}
	}
}

// look is the result of the soak's check of a file.
func look(t *testing.T, l *ledger, file string) (lost, wrong []string) {
	t.Helper()
	b, err := book.Read(t.Context(), file)
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	return l.faults(t.Context(), b)
}

// copyOf is a copy of a book.
func copyOf(t *testing.T, file, to string) string {
	t.Helper()
	b, err := book.Read(t.Context(), file)
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	if err := b.Backup(t.Context(), to); err != nil {
		t.Fatal(err)
	}
	return to
}

// doctored runs SQL on a book's file.
func doctored(t *testing.T, file, do string) {
	t.Helper()
	db, err := sql.Open("sqlite", file)
	if err != nil {
		t.Fatal(err)
	}
	db.SetMaxOpenConns(1)
	if _, err := db.Exec(do); err != nil {
		t.Fatalf("%s: %v", do, err)
	}
	if err := db.Close(); err != nil {
		t.Fatal(err)
	}
}
