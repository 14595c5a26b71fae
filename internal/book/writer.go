package book

import (
	"context"
	"database/sql"
	"errors"
	"runtime"
	"slices"
	"strings"
	"sync"
	"sync/atomic"
	"time"

	"github.com/jackc/pgx/v5/pgconn"
)

// writer is the one goroutine that writes: whoever waits while it is busy is written together with the others, in one
// transaction, and hears of it when that is on the disk.
type writer struct {
	e     *engine
	db    *sql.DB
	in    chan saving
	quit  chan struct{}
	once  sync.Once
	done  sync.WaitGroup
	most  int           // savings in one transaction
	limit time.Duration // that one transaction may take; 0 for no limit

	kept map[string]*sql.Stmt // made ready once, by their text

	commits atomic.Int64 // transactions so far: how well it groups
}

type saving struct {
	ctx    context.Context // of who saves
	list   []prepared
	answer chan error
}

var errClosed = errors.New("the book was closed")

func newWriter(e *engine, db *sql.DB, most int) *writer {
	w := &writer{e: e, db: db, in: make(chan saving), quit: make(chan struct{}), most: most}
	w.done.Go(w.run)
	return w
}

func (w *writer) stop() {
	w.once.Do(func() { close(w.quit) })
	w.done.Wait()
	w.forget()
}

// save hands revisions to the writer and waits for the disk. Who gives up before the writer has begun is not kept; after
// that the answer is waited for, so that nothing is kept of which somebody was told that it is not.
func (w *writer) save(ctx context.Context, list []prepared) error {
	s := saving{ctx, list, make(chan error, 1)}
	select {
	case w.in <- s:
		return <-s.answer
	case <-w.quit:
		return errClosed
	case <-ctx.Done():
		return ctx.Err()
	}
}

func (w *writer) run() {
	for {
		select {
		case s := <-w.in:
			w.commit(s)
		case <-w.quit:
			return
		}
	}
}

// gather adds to a group everybody who waits by now, and whoever would if the writer were not the one to run: it lets
// the others run until nobody new comes. That costs nothing where nobody runs.
func (w *writer) gather(group []saving) []saving {
	for idle := 0; len(group) < w.most && idle < patience; {
		select {
		case s := <-w.in:
			group = append(group, s)
			idle = 0
		default:
			idle++
			runtime.Gosched()
		}
	}
	return group
}

// patience is how often in turn the writer lets others run without anybody coming of it.
const patience = 3

// commit writes whoever waits together with the first; where that fails as a whole each is tried alone, so that one bad
// one spoils no other.
func (w *writer) commit(first saving) {
	group := []saving{first}
	if w.e.lock != "" { // the server holds records, not the whole file: all are to be there before the first is written
		group = w.gather(group)
	}
	group = waiting(group)
	if len(group) == 0 {
		return
	}
	err := w.patiently(&group, w.e.lock == "")
	var lost *unheard
	again := errors.As(err, &lost)
	if err == nil || len(group) == 1 && !again {
		for _, s := range group {
			s.answer <- err
		}
		return
	}
	if !again { // else nobody can be told that nothing of theirs is kept
		group = waiting(group)
	}
	for _, s := range group {
		for i := range s.list {
			s.list[i].again = again
		}
		s.answer <- w.patiently(&[]saving{s}, false)
	}
}

// unheard is the end of a transaction that a server was lost at: it may have been kept.
type unheard struct{ error }

func (u *unheard) Error() string {
	return "the book's server was lost while it kept this, which may be there: look before you say it again (" + u.error.Error() + ")"
}

func (u *unheard) Unwrap() error { return u.error }

// end ends a transaction. A server that answers with a refusal has kept nothing, unless what it says is that it ends.
func (w *writer) end(tx *sql.Tx) error {
	err := tx.Commit()
	var p *pgconn.PgError
	if err == nil || w.e.lock == "" || errors.As(err, &p) && !strings.HasPrefix(p.Code, "57P") {
		return err
	}
	return &unheard{err}
}

// waiting are those of a group who have not given up; the others are told so, and nothing of theirs is kept.
func waiting(group []saving) []saving {
	return slices.DeleteFunc(group, func(s saving) bool {
		err := s.ctx.Err()
		if err != nil {
			s.answer <- err
		}
		return err != nil
	})
}

// patiently tries again what the server ended for another transaction's sake.
func (w *writer) patiently(group *[]saving, open bool) error {
	var err error
	for range 5 {
		if err = w.transaction(group, open); !disturbed(err) {
			return err
		}
	}
	return err
}

// disturbed reports a transaction that a server ended since another one stood in its way.
func disturbed(err error) bool {
	var p *pgconn.PgError
	return errors.As(err, &p) && (p.Code == "40001" || p.Code == "40P01")
}

// transaction writes a group; into an open one it takes whoever comes while it writes.
func (w *writer) transaction(group *[]saving, open bool) error {
	ctx, stop := context.WithCancel(context.Background()) // a caller that leaves does not undo the others
	defer stop()
	if w.limit > 0 {
		ctx, stop = context.WithTimeout(ctx, w.limit)
		defer stop()
	}
	if err := w.keep(ctx); err != nil {
		return err
	}
	tx, err := w.begin(ctx, stop, *group)
	if err != nil {
		return err
	}
	to := &keeping{Tx: tx, kept: w.kept}
	for written := 0; written < len(*group); {
		for _, p := range ordered((*group)[written:]) {
			if err := w.e.insert(ctx, to, p); err != nil {
				_ = tx.Rollback()
				return err
			}
		}
		written = len(*group)
		if open {
			*group = w.gather(*group)
		}
	}
	if err := w.e.index(ctx, to); err != nil {
		_ = tx.Rollback()
		return err
	}
	w.commits.Add(1)
	return w.end(tx)
}

// begin waits until no other program writes. Who waits alone may give up that long; what has begun is written to its end.
func (w *writer) begin(ctx context.Context, end func(), group []saving) (*sql.Tx, error) {
	if len(group) > 1 || slices.ContainsFunc(group[0].list, func(p prepared) bool { return p.again }) {
		return w.db.BeginTx(ctx, nil)
	}
	stays := context.AfterFunc(group[0].ctx, end)
	tx, err := w.db.BeginTx(ctx, nil)
	if !stays() {
		if err == nil {
			_ = tx.Rollback()
		}
		return nil, group[0].ctx.Err()
	}
	return tx, err
}

// ordered are a group's revisions in one order everywhere, so that two booths never wait for each other's records; a
// record's own stay in theirs.
func ordered(group []saving) []*prepared {
	var list []*prepared
	for _, s := range group {
		for i := range s.list {
			list = append(list, &s.list[i])
		}
	}
	slices.SortStableFunc(list, func(a, b *prepared) int { return strings.Compare(a.rev.ID, b.rev.ID) })
	return list
}
