package book

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"
)

// The statements that save a new record.
const (
	addRevision = "INSERT INTO revisions (" + revisionColumns +
		") VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11) ON CONFLICT (rev) DO NOTHING"
	addHead = "INSERT INTO heads (id, rev, kind, at, deleted, name, line, words) VALUES ($1, $2, $3, $4, $5, $6, $7, " +
		"$8) ON CONFLICT (id) DO "
	newHead  = addHead + "NOTHING"
	nextHead = addHead + "UPDATE SET rev = excluded.rev, kind = excluded.kind, at = excluded.at, " +
		"deleted = excluded.deleted, name = excluded.name, line = excluded.line, words = excluded.words"
)

// keeping is a transaction of saves.
type keeping struct {
	*sql.Tx
	unfound map[string]bool // ids of records whose words are not indexed yet
}

// insert saves one revision and updates its record's head. A revision that exists already changes nothing.
func (e *engine) insert(ctx context.Context, tx *keeping, p *prepared) error {
	r := &p.rev
	if e.lock != "" {
		if _, err := tx.ExecContext(ctx, e.lock, r.ID); err != nil {
			return err
		}
	}
	if p.onHead {
		if err := e.onHead(ctx, tx, p); err != nil {
			return err
		}
	}
	if is, err := e.did(ctx, tx, addRevision, r.Rev, r.ID, r.Parent, string(r.Kind), r.At, r.Who, r.Where, r.Program,
		r.Schema, bit(r.Deleted), p.packed); err != nil || !is {
		return err
	}
	if r.Parent == "" {
		is, err := e.did(ctx, tx, newHead, headOf(r, p.listing)...)
		if err != nil || is {
			tx.unfound[r.ID] = true
			return err
		}
	}
	return e.head(ctx, tx, p)
}

// did reports whether a statement changed anything.
func (e *engine) did(ctx context.Context, tx querier, query string, args ...any) (bool, error) {
	done, err := tx.ExecContext(ctx, query, args...)
	if err != nil {
		return false, err
	}
	n, err := done.RowsAffected()
	return n > 0, err
}

// index adds the words of a transaction's records to the search index. One statement for all of them is less work than
// one for each record.
func (e *engine) index(ctx context.Context, tx *keeping) error {
	if len(tx.unfound) == 0 {
		return nil
	}
	_, err := tx.ExecContext(ctx, "INSERT INTO words (word, n) SELECT w.value, h.n FROM "+e.spread("$1", "i")+
		" CROSS JOIN heads h CROSS JOIN "+e.spread("substr(h.words, 2)", "w")+
		" WHERE h.id = i.value AND h.words <> ''", strings.Join(slices.Sorted(maps.Keys(tx.unfound)), " "))
	return err
}

// onHead returns ErrStale if a revision does not replace the record's present one. A revision that is the present one
// already is stale too: two users who make the same change in the same millisecond make the same revision, and both
// changes must count. It is not stale if p.again says that this save may have stored it before the server was lost.
func (e *engine) onHead(ctx context.Context, tx querier, p *prepared) error {
	r := &p.rev
	var head string
	err := tx.QueryRowContext(ctx, "SELECT rev FROM heads WHERE id = $1", r.ID).Scan(&head)
	switch {
	case errors.Is(err, sql.ErrNoRows):
		return fmt.Errorf("%w: %s, which was to be changed; brazebooth book check says more", ErrNone, r.ID)
	case err == nil && head != r.Parent && (!p.again || head != r.Rev):
		return ErrStale
	}
	return err
}

// prepared is a revision packed and indexed before the writer takes it, so that this work is done in parallel.
type prepared struct {
	rev    Revision
	onHead bool // save it only if it replaces the present one
	again  bool // it may be saved already: the server was lost during the save
	packed []byte
	listing
}

// listing is a record's line in lists and its words in the search index.
type listing struct {
	name, line string
	words      []string
}

func (r *Revision) listing() listing {
	name, line, text := summary(r)
	return listing{name, line, words(text)}
}

func prepare(r *Revision) prepared {
	return prepared{rev: *r, packed: pack(r.Body), listing: r.listing()}
}

// head makes the newest leaf of a record its head: of two that replace the same revision the later one, and of two with
// the same time the one with the greater hash, so that all merged books agree.
func (e *engine) head(ctx context.Context, tx *keeping, p *prepared) error {
	latest, list := p.rev, p.listing
	leaf, err := e.leaf(ctx, tx, latest.ID)
	if err != nil {
		return err
	}
	if leaf.Rev != latest.Rev {
		latest, list = leaf, leaf.listing()
	}
	// the index is in the order of its words: the rows of the head before are found by the words that it had
	if _, err := tx.ExecContext(ctx, "DELETE FROM words WHERE n = (SELECT n FROM heads WHERE id = $1) AND word IN "+
		"(SELECT value FROM "+e.spread("(SELECT substr(words, 2) FROM heads WHERE id = $1)", "w")+")",
		latest.ID); err != nil {
		return err
	}
	tx.unfound[latest.ID] = true
	_, err = tx.ExecContext(ctx, nextHead, headOf(&latest, list)...)
	return err
}

// leaf is a record's newest revision that no other replaces.
func (e *engine) leaf(ctx context.Context, q querier, id string) (Revision, error) {
	return one(ctx, q, "SELECT "+rowColumns+` FROM revisions r
		WHERE id = $1 AND NOT EXISTS (SELECT 1 FROM revisions c WHERE c.id = r.id AND c.parent = r.rev)
		ORDER BY at DESC, rev DESC LIMIT 1`, id)
}

// headOf are the arguments of newHead and nextHead.
func headOf(r *Revision, l listing) []any {
	words := ""
	if len(l.words) > 0 { // a blank before each, so that LIKE '% abc%' finds beginnings of words
		words = " " + strings.Join(l.words, " ")
	}
	return []any{r.ID, r.Rev, string(r.Kind), r.At, bit(r.Deleted), l.name, l.line, words}
}

func bit(b bool) int {
	if b {
		return 1
	}
	return 0
}

func (s *store) SaveOn(ctx context.Context, r Revision) error { return s.save(ctx, true, r) }

func (s *store) Save(ctx context.Context, list ...Revision) error { return s.save(ctx, false, list...) }

func (s *store) save(ctx context.Context, onHead bool, list ...Revision) error {
	if s.readOnly != "" {
		return fmt.Errorf("%w: %s", ErrReadOnly, s.readOnly)
	}
	ready := make([]prepared, len(list))
	for i := range list {
		if err := list[i].admit(); err != nil {
			return err
		}
		ready[i] = prepare(&list[i])
		ready[i].onHead = onHead
	}
	err := s.writer.save(ctx, ready)
	if unwritable(err) {
		err = said(s.place, "cannot be written now", err)
	}
	return err
}
