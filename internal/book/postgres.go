package book

import (
	"context"
	"errors"
	"fmt"
	"os"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/stdlib"
)

var postgres = engine{name: "PostgreSQL", numbered: true, blob: "BYTEA", bytewise: ` COLLATE "C"`,
	exists: "SELECT count(*) FROM information_schema.tables WHERE table_schema = current_schema() AND table_name = ?"}

// OpenServer opens a book on a PostgreSQL server by its address, postgres://user@host/database. Its tables are made
// where they are not there yet.
func OpenServer(ctx context.Context, address string) (Book, error) {
	config, err := pgx.ParseConfig(address)
	if err != nil {
		return nil, errors.New("this is no address of a PostgreSQL book: type postgres://user@host/database")
	}
	place := fmt.Sprintf("postgres://%s@%s:%d/%s", config.User, config.Host, config.Port, config.Database)
	db := stdlib.OpenDB(*config)
	db.SetMaxOpenConns(8)
	s := &store{engine: postgres, write: db, place: place}
	v, err := s.version(ctx, db)
	switch {
	case err != nil:
		return nil, errors.Join(fmt.Errorf("no answer from the book at %s: %w", place, err), s.Close())
	case v > Version:
		s.readOnly = fmt.Sprintf("a newer program wrote it (version %d, this one knows %d)", v, Version)
	case v < Version:
		if err := s.migrateServer(ctx, v); err != nil {
			return nil, errors.Join(fmt.Errorf("the book at %s: %w", place, err), s.Close())
		}
	}
	s.read = db
	s.backup = s.copyInto
	if s.readOnly == "" {
		s.writer = newWriter(&s.engine, db, mostTogether)
	}
	return s, nil
}

// migrateServer lets one booth of several migrate; the others wait and find it done.
func (s *store) migrateServer(ctx context.Context, from int) error {
	conn, err := s.write.Conn(ctx)
	if err != nil {
		return err
	}
	defer conn.Close()
	const key = 0x62726f6f // any number, the same for every booth
	if _, err := conn.ExecContext(ctx, "SELECT pg_advisory_lock($1)", key); err != nil {
		return err
	}
	defer func() { _, _ = conn.ExecContext(context.WithoutCancel(ctx), "SELECT pg_advisory_unlock($1)", key) }()
	now, err := s.version(ctx, conn)
	if err != nil || now >= Version {
		return err
	}
	return s.migrate(ctx, now, Version)
}

// copyInto writes a SQLite copy of a server's book.
func (s *store) copyInto(ctx context.Context, file string) error {
	if _, err := os.Stat(file); err == nil {
		return fmt.Errorf("%s is there already", file)
	}
	to, err := OpenFile(ctx, file)
	if err != nil {
		return err
	}
	_, err = Merge(ctx, to, s)
	return errors.Join(err, to.Close())
}

// Open opens a book to read and write: a file, or a server by its address.
func Open(ctx context.Context, where string) (Book, error) {
	if IsServer(where) {
		return OpenServer(ctx, where)
	}
	return OpenFile(ctx, where)
}

// Read opens a book to be read.
func Read(ctx context.Context, where string) (Book, error) {
	if IsServer(where) {
		return OpenServer(ctx, where)
	}
	return ReadFile(ctx, where)
}
