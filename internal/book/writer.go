package book

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"runtime"
	"slices"
	"strings"
	"sync"
	"sync/atomic"
	"time"

	"github.com/jackc/pgx/v5/pgconn"
)

// writer is the one goroutine that writes. The saves that wait while it is busy are written together in one
// transaction, and their callers get an answer when that is on the disk.
type writer struct {
	e     *engine
	db    *sql.DB
	in    chan saving
	quit  chan struct{}
	done  sync.WaitGroup
	most  int           // saves in one transaction
	limit time.Duration // how long one transaction may take; 0 for no limit
}

type saving struct {
	ctx    context.Context // of the caller
	list   []prepared
	answer chan error
}

var errClosed = errors.New("the book was closed")

func newWriter(e *engine, db *sql.DB) *writer {
	w := &writer{e: e, db: db, in: make(chan saving), quit: make(chan struct{}), most: mostTogether}
	w.done.Go(w.run)
	return w
}

func (w *writer) stop() {
	close(w.quit)
	w.done.Wait()
}

// save gives revisions to the writer and waits until they are on the disk. If the caller gives up before the writer has
// begun, nothing is saved. Later it waits for the answer even then, so that it never reports a failure of what was
// saved.
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

// gather adds all waiting saves to a group, and those that are about to come: it lets other goroutines run until no new
// save comes. That costs nothing if no goroutine is ready to run.
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

// patience is how often in a row the writer lets others run without a new save.
const patience = 3

// commit writes the saves of a group together; if that fails, each is tried alone, so that only the bad one fails.
func (w *writer) commit(first saving) {
	group, err := w.patiently(w.gather([]saving{first}))
	again := errors.Is(err, errUnheard)
	if err == nil || len(group) == 1 && !again {
		tell(group, err)
		return
	}
	for _, s := range group {
		for i := range s.list {
			s.list[i].again = again // it may have succeeded, so that its caller can no longer give up
		}
		tell(w.patiently([]saving{s}))
	}
}

func tell(group []saving, err error) {
	for _, s := range group {
		s.answer <- err
	}
}

// errUnheard is the error when the connection was lost during a commit, which may have succeeded.
var errUnheard = errors.New("the connection to the book's server was lost during this save, which may have " +
	"succeeded: look before you try again")

// end commits a transaction. A server that answers with an error has saved nothing, unless it says that it is shutting
// down.
func (w *writer) end(tx *sql.Tx) error {
	err := tx.Commit()
	var p *pgconn.PgError
	if err == nil || w.e.lock == "" || errors.As(err, &p) && !strings.HasPrefix(p.Code, "57P") {
		return err
	}
	return fmt.Errorf("%w (%w)", errUnheard, err)
}

// patiently retries a transaction that the server ended because of another one. It returns the saves whose callers have
// not given up.
func (w *writer) patiently(group []saving) ([]saving, error) {
	var err error
	var ended *pgconn.PgError
	for range 5 {
		group, err = w.transaction(group)
		if !errors.As(err, &ended) || ended.Code != "40001" && ended.Code != "40P01" { // no conflict
			break
		}
	}
	return group, err
}

// transaction writes a group, without the saves whose callers give up before it has begun.
func (w *writer) transaction(group []saving) ([]saving, error) {
	ctx, stop := context.WithCancel(context.Background()) // a caller that leaves does not undo the others
	defer stop()
	if w.limit > 0 {
		ctx, stop = context.WithTimeout(ctx, w.limit)
		defer stop()
	}
	tx, group, err := w.begin(ctx, stop, group)
	if err != nil {
		return group, err
	}
	defer func() { _ = tx.Rollback() }() // does nothing after the commit
	to := &keeping{tx, map[string]bool{}}
	for _, p := range ordered(group) {
		if err := w.e.insert(ctx, to, p); err != nil {
			return group, err
		}
	}
	if err := w.e.index(ctx, to); err != nil {
		return group, err
	}
	return group, w.end(tx)
}

// begin waits until no other program writes, and returns the saves that are to be written then. Until then each caller
// may give up and is told so at once; the last one ends the wait.
func (w *writer) begin(ctx context.Context, end func(), group []saving) (*sql.Tx, []saving, error) {
	var waiting atomic.Int64
	waiting.Store(int64(len(group)))
	stays := make([]func() bool, len(group))
	for i, s := range group {
		caller := s.ctx
		if slices.ContainsFunc(s.list, func(p prepared) bool { return p.again }) {
			caller = context.Background()
		}
		stays[i] = context.AfterFunc(caller, func() {
			s.answer <- s.ctx.Err()
			if waiting.Add(-1) == 0 {
				end()
			}
		})
	}
	tx, err := w.db.BeginTx(ctx, nil)
	var left []saving
	for i, s := range group {
		if stays[i]() {
			left = append(left, s)
		}
	}
	if err == nil && len(left) == 0 {
		_ = tx.Rollback()
		err = context.Canceled
	}
	return tx, left, err
}

// ordered are a group's revisions sorted by record, so that two booths never wait for each other's locks; those of one
// record keep their order.
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
