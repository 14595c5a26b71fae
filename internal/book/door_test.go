package book

import (
	"bytes"
	"compress/flate"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"maps"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"

	"brazebooth/internal/deep"
)

// foreign is a revision as another program could make it: with a correct hash and any content.
func foreign(kind Kind, at, body string) Revision {
	r := Revision{ID: newID(), Kind: kind, At: at, Program: "test", Schema: Schema, Body: json.RawMessage(body)}
	r.Rev = r.hash()
	return r
}

func lineOf(t testing.TB, r Revision) string {
	t.Helper()
	line, err := compactJSON(r)
	noErr(t, err)
	return string(line) + "\n"
}

const someTime = "2026-03-01T08:00:00.000Z"

// Impossible values are refused with the number of their line, the other lines are imported, and values just inside the
// limits are accepted.
func TestImpossibleValuesAreRefused(t *testing.T) {
	alone(t)
	ctx := context.Background()
	bodies := map[Kind]string{CardKind: `{"name":"a","job":{"feed":%s}}`,
		TrialKind: `{"verdict":"good","job":{"travel":%s}}`, ReadingKind: `{"source":"a","amps":%s}`,
		SourceKind: `{"name":"a","rated_amps":%s}`, SpoolKind: `{"lot":"a","left":%s}`, PracticeKind: `{"level":%s}`}
	good, bad := []Revision{}, []Revision{}
	for _, at := range []string{"2000-01-01T00:00:00.000Z", "2038-01-19T03:14:08.000Z", "2098-12-31T23:59:59.999Z"} {
		good = append(good, foreign(PersonKind, at, `{"name":"a"}`))
	}
	for _, at := range []string{"1999-12-31T23:59:59.999Z", "2099-01-01T00:00:00.000Z", "2100-01-01T00:00:00.000Z",
		"9989-01-01T00:00:00.000Z", "2026-13-01T00:00:00.000Z", "2026-02-30T00:00:00.000Z", "", "now",
		"12026-01-01T00:00:00.000Z"} {
		bad = append(bad, foreign(PersonKind, at, `{"name":"a"}`))
	}
	for kind, body := range bodies {
		for _, n := range []string{"0", "1", "-1", "1000000", "1000000000"} {
			good = append(good, foreign(kind, someTime, fmt.Sprintf(body, n)))
		}
		for _, n := range []string{"1000000001", "-1000000001", "1e308", "-1e308", "1e309", `"six"`, "[]", "true"} {
			bad = append(bad, foreign(kind, someTime, fmt.Sprintf(body, n)))
		}
	}
	for n, list := range map[int]*[]Revision{1000: &good, 1001: &bad, 400_000: &bad} {
		for _, put := range []func(r *Revision){func(r *Revision) { r.Who = strings.Repeat("w", n-4) },
			func(r *Revision) {
				r.Where = strings.Repeat("w",
					n-4)
			}, func(r *Revision) { r.Program = strings.Repeat("w", n) }} {
			r := foreign(PersonKind, someTime, `{"name":"a"}`)
			put(&r)
			r.Rev = r.hash()
			*list = append(*list, r)
		}
	}
	// the body and the card count as two more parts
	for n, list := range map[int]*[]Revision{mostParts - 2: &good, mostParts - 1: &bad, 300_000: &bad} {
		*list = append(*list, foreign(CardKind, someTime, `{"card":{"warnings":[`+strings.Repeat("{},", n-1)+`{}]}}`))
	}
	// a seed is not a figure of a shop and may be large
	good = append(good, foreign(PracticeKind, someTime, `{"seed":18446744073709551615}`))
	for _, body := range []string{"null", "1", `"a"`, "[]", "true", "{", `{"name":"a"}{}`, ` {"name":"a"}`,
		`{"name": "a"}`, `{"name":1}`, "", "{}\x00"} {
		bad = append(bad, foreign(PersonKind, someTime, body))
	}
	b := newFile(t)
	for _, r := range good {
		if n, err := Import(ctx, b, strings.NewReader(lineOf(t, r))); n != 1 || err != nil {
			t.Errorf("%s %.200s of %s is refused: %v", r.Kind, r.Body, r.At, err)
		}
		last, err := by(new(time.Time)).Change(&r, json.RawMessage(r.Body)) // an accepted revision can be changed
		noErr(t, err)
		if err := b.SaveOn(ctx, last); err != nil {
			t.Errorf("%s %s of %s cannot be changed: %v", r.Kind, r.Body[:min(len(r.Body), 200)], r.At, err)
		}
	}
	for _, r := range bad {
		before, after := good[0], good[1]
		line, err := json.Marshal(r)
		if err != nil { // a body that is not JSON needs a hand-made line
			line = fmt.Appendf(nil, `{"rev":%q,"id":%q,"kind":%q,"at":%q,"program":"test","schema":1,"body":%s}`, r.Rev,
				r.ID, r.Kind, r.At, r.Body)
		}
		n, err := Import(ctx, b, strings.NewReader(lineOf(t, before)+"\n"+string(line)+"\n"+lineOf(t, after)))
		var out *LeftOut
		if !errors.As(err, &out) || n != 2 || len(out.Lines) != 1 || !strings.HasPrefix(out.Lines[0], "line 3: ") ||
			unsafe(out.Lines[0]) {
			t.Errorf("%s %.200q of %s: %d taken, %v", r.Kind, r.Body, r.At, n, err)
		}
		if err := b.Save(ctx, r); err == nil {
			t.Errorf("%s %.200q of %s is saved", r.Kind, r.Body, r.At)
		}
	}
	if faults, _, err := b.Check(ctx); err != nil || len(faults) > 0 {
		t.Errorf("%v, %v", faults, err)
	}
}

// With a clock that is far off nothing is saved; a revision that such a clock made long ago can still be changed and
// deleted.
func TestAClockThatIsFarOff(t *testing.T) {
	ctx := context.Background()
	b := newFile(t)
	for _, year := range []int{1970, 1999, 2100, 2106, 9989} {
		now := time.Date(year, 1, 1, 0, 0, 0, 0, time.UTC)
		r, err := by(&now).New(PersonKind, Person{Name: "fay"})
		noErr(t, err)
		if err := b.Save(ctx, r); err == nil || !strings.Contains(err.Error(), "time") {
			t.Errorf("saved in %d: %v", year, err)
		}
	}
	old := foreign(PersonKind, "9989-01-01T00:00:00.000Z", `{"name":"old"}`)
	s := b.(*store)
	noErr(t, s.writer.save(ctx, []prepared{prepare(&old)})) // as an earlier program accepted it
	now := time.Date(2026, 3, 1, 8, 0, 0, 0, time.UTC)
	gone, err := by(&now).Delete(&old)
	noErr(t, err)
	noErr(t, b.SaveOn(ctx, gone))
	var out bytes.Buffer
	if n, err := Export(ctx, b, &out); n != 2 || err != nil {
		t.Errorf("%d exported, %v", n, err)
	}
}

// An import of long lines, of an endless one, and of the largest allowed bodies holds only a few megabytes in memory.
func TestAnImportHoldsLittle(t *testing.T) {
	deep.Turn(t)
	alone(t)
	ctx := context.Background()
	long := strings.Repeat("x", 7_900_000)
	note := strings.Repeat("a b c d ", (largestBody-200)/8)
	lines := map[string]string{
		"too long":  long,
		"a body":    lineOf(t, foreign(PersonKind, someTime, `{"name":"`+note+`"}`)),
		"deep":      strings.Repeat("[", 1_000_000),
		"no hash":   `{"rev":"0","body":{"name":"` + note + `"}}`,
		"unescaped": `{"id":"` + strings.Repeat(`\u0041`, 150_000) + `"}`,
	}
	for _, what := range deep.Of(t, slices.Sorted(maps.Keys(lines)), 2) {
		line := lines[what]
		to := &weighed{Book: newFile(t)}
		in := &rising{line: strings.TrimSpace(line) + "\n", left: max(4, min(12, 32<<20/len(line))), weigh: to.weigh}
		to.begin()
		_, err := Import(ctx, to, in)
		if to.most>>20 > 16 {
			t.Errorf("%s: an import holds %d MB", what, to.most>>20)
		}
		if what == "a body" != (err == nil) {
			t.Errorf("%s: %v", what, err)
		}
		t.Logf("%s: %.1f MB at most, %v", what, float64(to.most)/(1<<20), err)
	}
}

// rising is a reader that repeats the same line, and measures the held memory now and then.
type rising struct {
	line  string
	left  int
	rest  string
	weigh func()
}

func (r *rising) Read(p []byte) (int, error) {
	if r.rest == "" {
		if r.left == 0 {
			return 0, io.EOF
		}
		r.left--
		r.rest = r.line
	}
	n := copy(p, r.rest)
	before := len(r.rest) >> 19
	r.rest = r.rest[n:]
	if len(r.rest)>>19 != before && r.left%4 == 0 {
		r.weigh()
	}
	return n, nil
}

// weighed records how much memory is held at each save.
type weighed struct {
	Book
	least, most int64
}

func (w *weighed) begin() { w.least = held() }

func (w *weighed) weigh() { w.most = max(w.most, held()-w.least) }

// held is the heap memory in use, after a garbage collection.
func held() int64 {
	runtime.GC()
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return int64(m.HeapAlloc)
}

func (w *weighed) Save(ctx context.Context, list ...Revision) error {
	w.weigh()
	return w.Book.Save(ctx, list...)
}

// Merging a book with bodies that unpack to huge sizes leaves those out, and holds little memory.
func TestAMergeHoldsLittle(t *testing.T) {
	deep.Turn(t)
	alone(t)
	ctx, now := context.Background(), time.Now()
	file := filepath.Join(t.TempDir(), "swelling.db")
	from, err := OpenFile(ctx, file)
	noErr(t, err)
	fill(t, from, by(&now), &now, 3)
	var want int
	noErr(t, from.(*store).read.QueryRow("SELECT count(*) FROM revisions").Scan(&want))
	w := from.(*store).write
	for size, n := range map[int]int{largestBody - 100: 25, largestBody + 1: 25, 64 << 20: 30} {
		body := swollen(t, size)
		for range n {
			r := foreign(PersonKind, someTime, "{}")
			_, err := w.Exec(addRevision, r.Rev, r.ID, "", r.Kind, r.At, "", "", "test", 1, 0, body)
			noErr(t, err)
		}
	}
	noErr(t, from.Close())
	other, err := ReadFile(ctx, file)
	noErr(t, err)
	defer other.Close()
	into := &weighed{Book: newFile(t)}
	into.begin()
	n, err := Merge(ctx, into, other)
	var lost *Missing
	if !errors.As(err, &lost) || lost.N != 80 || n != want {
		t.Errorf("%d merged of %d, %v", n, want, err)
	}
	if most := into.most >> 20; most > 16 {
		t.Errorf("a merge holds %d MB", most)
	}
}

// Reading a book in which every row has a long name, which its file stores once, holds little memory.
func TestLongNamesHoldLittle(t *testing.T) {
	alone(t)
	ctx := context.Background()
	file := filepath.Join(t.TempDir(), "long.db")
	b, err := OpenFile(ctx, file)
	noErr(t, err)
	w := b.(*store).write
	for _, step := range []string{"ALTER TABLE revisions DROP COLUMN who",
		"WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 90) INSERT INTO revisions (rev, " +
			"id, parent, kind, at, place, program, schema, deleted, body) SELECT printf('%032x', i), " +
			"'0000000000000001', '', 'card', '2026', '', '', 1, 0, x'00' FROM n",
		"ALTER TABLE revisions ADD COLUMN who TEXT DEFAULT '" + strings.Repeat("w", 900_000) + "'"} {
		_, err := w.Exec(step)
		noErr(t, err)
	}
	s, most, n := b.(*store), int64(0), 0
	before := held()
	err = s.eachOr(ctx, func(Revision) error { return nil }, func(error) {
		if n++; n%15 == 1 {
			most = max(most, held()-before)
		}
	})
	if err != nil || n != 90 || most>>20 > 16 {
		t.Errorf("%d unreadable, %d MB held, %v", n, most>>20, err)
	}
	noErr(t, b.Close())
}

// swollen is a packed body that unpacks to this size in bytes.
func swollen(t testing.TB, size int) []byte {
	t.Helper()
	var out bytes.Buffer
	w, err := flate.NewWriter(&out, flate.BestCompression)
	noErr(t, err)
	_, err = io.WriteString(w, `{"name":"`)
	noErr(t, err)
	for left := size; left > 0; left -= 1 << 16 {
		_, err = w.Write(bytes.Repeat([]byte("a"), min(left, 1<<16)))
		noErr(t, err)
	}
	noErr(t, w.Close())
	return out.Bytes()
}
