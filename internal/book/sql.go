package book

import (
	"bytes"
	"compress/flate"
	"context"
	"database/sql"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"
	"sync"
)

// engine is what differs between the two databases.
type engine struct {
	name     string
	numbered bool // placeholders are $1, $2 ... in place of ?
	blob     string
	bytewise string // column attribute that compares texts byte by byte
	lock     string // statement that lets one transaction at a time at a record, its id the argument; "" where the file is locked whole
	exists   string // query that tells whether a table stands, its name the argument
}

// store is a book in a database: a writer of its own and readers apart.
type store struct {
	engine
	write, read *sql.DB
	place       string // for a reader
	readOnly    string
	writer      *writer
	backup      func(ctx context.Context, file string) error
}

func (s *store) Where() string    { return s.place }
func (s *store) ReadOnly() string { return s.readOnly }

func (s *store) Close() error {
	if s.writer != nil {
		s.writer.stop()
	}
	var errs []error
	for _, db := range [...]*sql.DB{s.read, s.write} {
		if db != nil {
			errs = append(errs, db.Close())
		}
	}
	return errors.Join(errs...)
}

// sql turns ? into the engine's own placeholders.
func (e *engine) sql(query string) string {
	if !e.numbered {
		return query
	}
	var b strings.Builder
	n := 0
	for _, r := range query {
		if r == '?' {
			n++
			b.WriteString("$" + strconv.Itoa(n))
			continue
		}
		b.WriteRune(r)
	}
	return b.String()
}

// querier is a database or a transaction in it.
type querier interface {
	QueryContext(ctx context.Context, query string, args ...any) (*sql.Rows, error)
	QueryRowContext(ctx context.Context, query string, args ...any) *sql.Row
	ExecContext(ctx context.Context, query string, args ...any) (sql.Result, error)
}

const revisionColumns = "rev, id, parent, kind, at, who, place, program, schema, deleted, body"

// insert keeps one revision and brings its record's head up to date. A revision that is there already changes nothing.
func (e *engine) insert(ctx context.Context, tx querier, p *prepared) error {
	r := &p.rev
	if e.lock != "" {
		if _, err := tx.ExecContext(ctx, e.lock, r.ID); err != nil {
			return err
		}
	}
	if p.onHead {
		if err := e.onHead(ctx, tx, r); err != nil {
			return err
		}
	}
	done, err := tx.ExecContext(ctx, e.sql("INSERT INTO revisions ("+revisionColumns+") VALUES (?,?,?,?,?,?,?,?,?,?,?) ON CONFLICT (rev) DO NOTHING"),
		r.Rev, r.ID, r.Parent, string(r.Kind), r.At, r.Who, r.Where, r.Program, r.Schema, bit(r.Deleted), p.packed)
	if err != nil {
		return err
	}
	if n, err := done.RowsAffected(); err != nil || n == 0 {
		return err
	}
	return e.head(ctx, tx, p)
}

// onHead is ErrStale where a revision does not replace the record's present one. One that is the present one already is
// stale too: two hands that do the same in the same millisecond make the same revision, and both are to count.
func (e *engine) onHead(ctx context.Context, tx querier, r *Revision) error {
	var head string
	err := tx.QueryRowContext(ctx, e.sql("SELECT rev FROM heads WHERE id = ?"), r.ID).Scan(&head)
	if err == nil && head != r.Parent {
		return ErrStale
	}
	return err
}

// prepared is a revision made ready before the writer's turn comes: what takes time takes it beside the others.
type prepared struct {
	rev        Revision
	onHead     bool // only if it replaces the present one
	packed     []byte
	name, line string
	words      []string
}

func prepare(r *Revision) (prepared, error) {
	p := prepared{rev: *r}
	p.sum()
	var err error
	p.packed, err = pack(r.Body)
	return p, err
}

// sum is what a list shows of it and what it is found by.
func (p *prepared) sum() {
	name, line, text := summary(&p.rev)
	p.name, p.line, p.words = name, line, words(text)
}

// head puts the newest of a record's leaves at its head: of two that replace the same one the later, of two as late
// the one whose hash is greater, so that every book that was merged agrees.
func (e *engine) head(ctx context.Context, tx querier, p *prepared) error {
	fresh := p.rev.Parent == "" && e.alone(ctx, tx, p.rev.ID)
	if !fresh {
		leaf, err := e.leaf(ctx, tx, p.rev.ID)
		if err != nil {
			return err
		}
		if leaf.Rev != p.rev.Rev {
			p = &prepared{rev: leaf}
			p.sum()
		}
	}
	latest := &p.rev
	_, err := tx.ExecContext(ctx, e.sql(`INSERT INTO heads (id, rev, kind, at, deleted, name, line) VALUES (?,?,?,?,?,?,?)
		ON CONFLICT (id) DO UPDATE SET rev = excluded.rev, kind = excluded.kind, at = excluded.at, deleted = excluded.deleted, name = excluded.name, line = excluded.line`),
		latest.ID, latest.Rev, string(latest.Kind), latest.At, bit(latest.Deleted), p.name, p.line)
	if err != nil {
		return err
	}
	if !fresh {
		if _, err := tx.ExecContext(ctx, e.sql("DELETE FROM words WHERE id = ?"), latest.ID); err != nil {
			return err
		}
	}
	list := p.words
	if len(list) == 0 {
		return nil
	}
	args := make([]any, 0, 2*len(list))
	for _, w := range list {
		args = append(args, w, latest.ID)
	}
	_, err = tx.ExecContext(ctx, e.sql("INSERT INTO words (word, id) VALUES "+strings.TrimSuffix(strings.Repeat("(?,?),", len(list)), ",")+" ON CONFLICT DO NOTHING"), args...)
	return err
}

// alone reports whether a record has no head yet.
func (e *engine) alone(ctx context.Context, tx querier, id string) bool {
	var rev string
	return errors.Is(tx.QueryRowContext(ctx, e.sql("SELECT rev FROM heads WHERE id = ?"), id).Scan(&rev), sql.ErrNoRows)
}

// leaf is a record's newest revision that no other one replaces.
func (e *engine) leaf(ctx context.Context, q querier, id string) (Revision, error) {
	rows, err := q.QueryContext(ctx, e.sql("SELECT "+revisionColumns+` FROM revisions r WHERE id = ? AND NOT EXISTS (SELECT 1 FROM revisions c WHERE c.id = r.id AND c.parent = r.rev)
		ORDER BY at DESC, rev DESC LIMIT 1`), id)
	if err != nil {
		return Revision{}, err
	}
	return one(rows)
}

func bit(b bool) int {
	if b {
		return 1
	}
	return 0
}

// pack makes a body small; what is hashed and exported is the body itself.
func pack(body []byte) ([]byte, error) {
	var out bytes.Buffer
	w := packers.Get().(*flate.Writer)
	defer packers.Put(w)
	w.Reset(&out)
	if _, err := w.Write(body); err != nil {
		return nil, err
	}
	err := w.Close()
	return out.Bytes(), err
}

// packers are reused: one is larger than what it packs.
var packers = sync.Pool{New: func() any {
	w, err := flate.NewWriter(nil, flate.BestSpeed)
	if err != nil {
		panic(err) // only of a level that there is not
	}
	return w
}}

// largestBody is the most that a body may unpack to.
const largestBody = 4 << 20

func unpack(packed []byte) ([]byte, error) {
	b, err := io.ReadAll(io.LimitReader(flate.NewReader(bytes.NewReader(packed)), largestBody+1))
	if err == nil && len(b) > largestBody {
		err = fmt.Errorf("a body of more than %d bytes", largestBody)
	}
	return b, err
}

// revisions reads and closes rows of revisionColumns.
func revisions(rows *sql.Rows) ([]Revision, error) {
	defer rows.Close()
	var list []Revision
	for rows.Next() {
		r, err := scan(rows)
		if err != nil {
			return nil, err
		}
		list = append(list, r)
	}
	return list, rows.Err()
}

// one reads and closes rows of which one is wanted; ErrNone where there is none.
func one(rows *sql.Rows) (Revision, error) {
	list, err := revisions(rows)
	if err == nil && len(list) == 0 {
		err = ErrNone
	}
	if err != nil {
		return Revision{}, err
	}
	return list[0], nil
}

func scan(rows *sql.Rows) (Revision, error) {
	var r Revision
	var kind string
	var deleted int
	var packed []byte
	if err := rows.Scan(&r.Rev, &r.ID, &r.Parent, &kind, &r.At, &r.Who, &r.Where, &r.Program, &r.Schema, &deleted, &packed); err != nil {
		return r, err
	}
	r.Kind, r.Deleted = Kind(kind), deleted != 0
	body, err := unpack(packed)
	r.Body = body
	if err != nil {
		err = fmt.Errorf("revision %s of %s: %w", r.Rev, r.ID, err)
	}
	return r, err
}

func (s *store) Get(ctx context.Context, id string) (Revision, error) {
	rows, err := s.read.QueryContext(ctx, s.sql("SELECT "+revisionColumns+" FROM revisions WHERE rev = (SELECT rev FROM heads WHERE id = ?)"), id)
	if err != nil {
		return Revision{}, err
	}
	r, err := one(rows)
	r.tame()
	return r, err
}

func (s *store) History(ctx context.Context, id string) ([]Revision, error) {
	rows, err := s.read.QueryContext(ctx, s.sql("SELECT "+revisionColumns+" FROM revisions WHERE id = ? ORDER BY at, rev"), id)
	if err != nil {
		return nil, err
	}
	list, err := revisions(rows)
	if err == nil && len(list) == 0 {
		err = ErrNone
	}
	for i := range list {
		list[i].tame()
	}
	return list, err
}

func (s *store) Each(ctx context.Context, visit func(Revision) error) error {
	bad := 0
	err := s.eachOr(ctx, visit, func(error) { bad++ })
	if err == nil && bad > 0 {
		err = fmt.Errorf("%d revisions of %s could not be read and were left out: brazebooth book check names them", bad, s.place)
	}
	return err
}

// eachOr hands out every revision, and what is wrong with those that cannot be read.
func (s *store) eachOr(ctx context.Context, visit func(Revision) error, unreadable func(error)) error {
	rows, err := s.read.QueryContext(ctx, "SELECT "+revisionColumns+" FROM revisions ORDER BY at, rev")
	if err != nil {
		return err
	}
	defer rows.Close()
	for rows.Next() {
		r, err := scan(rows)
		if err != nil {
			unreadable(err)
			continue
		}
		if err := visit(r); err != nil {
			return err
		}
	}
	return rows.Err()
}

func (s *store) SaveOn(ctx context.Context, r Revision) error { return s.save(ctx, true, r) }

func (s *store) Save(ctx context.Context, list ...Revision) error { return s.save(ctx, false, list...) }

func (s *store) save(ctx context.Context, onHead bool, list ...Revision) error {
	if s.readOnly != "" {
		return fmt.Errorf("%w: %s", ErrReadOnly, s.readOnly)
	}
	ready := make([]prepared, len(list))
	for i := range list {
		if err := list[i].Verify(); err != nil {
			return err
		}
		if len(list[i].Body) > largestBody {
			return fmt.Errorf("a body of more than %d bytes", largestBody)
		}
		var err error
		if ready[i], err = prepare(&list[i]); err != nil {
			return err
		}
		ready[i].onHead = onHead
	}
	return s.writer.save(ctx, ready)
}

func (s *store) Backup(ctx context.Context, file string) error { return s.backup(ctx, file) }
