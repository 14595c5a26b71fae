package book

import (
	"context"
	"database/sql"
)

// keep prepares the statements of a save once, for the writer's connection.
func (w *writer) keep(ctx context.Context) error {
	if !w.e.keeps || w.kept != nil {
		return nil
	}
	w.kept = map[string]*sql.Stmt{}
	for _, query := range [...]string{addRevision, newHead, w.e.addWords()} {
		s, err := w.db.PrepareContext(ctx, query)
		if err != nil {
			w.forget()
			return err
		}
		w.kept[query] = s
	}
	return nil
}

func (w *writer) forget() {
	for _, s := range w.kept {
		_ = s.Close()
	}
	w.kept = nil
}

// keeping is a transaction that uses the prepared statements.
type keeping struct {
	*sql.Tx
	kept    map[string]*sql.Stmt
	unfound []string // ids of new records whose words are not indexed yet
}

// ExecContext uses the prepared statement if there is one.
func (k *keeping) ExecContext(ctx context.Context, query string, args ...any) (sql.Result, error) {
	if s := k.kept[query]; s != nil {
		return k.StmtContext(ctx, s).ExecContext(ctx, args...)
	}
	return k.Tx.ExecContext(ctx, query, args...)
}
