package book

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"strings"
	"sync"
	"time"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/stdlib"

	"brazebooth/internal/address"
)

var postgres = engine{name: "PostgreSQL",
	lock:   "SELECT pg_advisory_xact_lock(hashtextextended($1, 0))",
	exists: "SELECT count(*) FROM information_schema.tables WHERE table_schema = current_schema() AND table_name = $1",
	own: strings.NewReplacer("{blob}", "BYTEA", "{c}", ` COLLATE "C"`,
		"{counted}", "BIGINT GENERATED ALWAYS AS IDENTITY PRIMARY KEY", "{keyed}", ""),
	spread: func(words, as string) string {
		return "unnest(string_to_array(" + words + ", ' ')) AS " + as + " (value)"
	}, snapshot: &sql.TxOptions{Isolation: sql.LevelRepeatableRead, ReadOnly: true}}

// openServer opens a book on a PostgreSQL server by its address, postgres://user@host/database. Its tables are created
// if they do not exist.
func openServer(ctx context.Context, address string) (Book, error) {
	s, v, err := dial(ctx, address, false)
	if err != nil {
		return nil, err
	}
	if v < Version {
		if v, err = s.migrate(ctx); err != nil {
			return nil, errors.Join(fmt.Errorf("the book at %s: %w", s.place, err), s.Close())
		}
	}
	if s.readOnly = newer(v); s.readOnly == "" {
		s.writer = newWriter(&s.engine, s.write)
		s.writer.limit = serverPatience
	}
	return s, nil
}

// serverPatience is how long a server may take for one transaction; for a connection it may take a quarter of that.
const serverPatience = 20 * time.Second

// dial connects to a server and reads the version of the book's tables.
func dial(ctx context.Context, where string, readOnly bool) (*store, int, error) {
	scheme, rest, _ := strings.Cut(where, "://")
	config, err := pgx.ParseConfig(strings.ToLower(scheme) + "://" + rest)
	if err != nil || address.Check(where) != nil {
		return &store{}, 0, address.ErrBad // err may quote a password
	}
	if config.ConnectTimeout == 0 {
		config.ConnectTimeout = serverPatience / 4
	}
	if readOnly {
		config.RuntimeParams["default_transaction_read_only"] = "on"
	}
	place := fmt.Sprintf("postgres://%s@%s:%d/%s", config.User, config.Host, config.Port, config.Database)
	db := stdlib.OpenDB(*config)
	db.SetMaxOpenConns(8)
	s := &store{engine: postgres, connections: connections{write: db, read: db}, place: place, readOnly: onlyToRead}
	s.closing = sync.OnceValue(s.close)
	asking, stop := context.WithTimeout(ctx, serverPatience/2)
	defer stop()
	v, err := s.version(asking, db)
	if err != nil {
		return s, 0, errors.Join(fmt.Errorf("no answer from the book at %s: %w", place, err), s.Close())
	}
	return s, v, nil
}

// readServer opens a book on a server only to read, and creates no tables. ErrNone if there is no book yet.
func readServer(ctx context.Context, address string) (Book, error) {
	s, v, err := dial(ctx, address, true)
	switch {
	case err != nil:
		return nil, err
	case v == 0:
		return nil, errors.Join(fmt.Errorf("%w: nothing was saved at %s yet", ErrNone, s.place), s.Close())
	case v < oldest:
		return nil, errors.Join(fmt.Errorf("the book at %s was made by an older program: save something with this one "+
			"first, which brings it up to date", s.place), s.Close())
	}
	return s, nil
}

// Open opens a book to read and write: a file, or a server by its address.
func Open(ctx context.Context, where string) (Book, error) {
	return at(ctx, where, openServer, OpenFile)
}

// Read opens a book to read.
func Read(ctx context.Context, where string) (Book, error) {
	return at(ctx, where, readServer, ReadFile)
}

func at(ctx context.Context, where string, server, file func(context.Context, string) (Book, error)) (Book, error) {
	if address.Server(where) {
		return server(ctx, where)
	}
	if err := plainFile(where); err != nil {
		return nil, err
	}
	return file(ctx, where)
}
