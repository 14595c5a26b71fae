package book

import (
	"context"
	"errors"
	"os"
	"path/filepath"

	"brazebooth/internal/address"
)

// About is the state of a book. Finding it out changes nothing: no book is made or updated.
type About struct {
	Engine   string // SQLite, PostgreSQL
	Place    string // as shown to a user
	There    bool
	Version  int    // of its tables; this program's is the constant Version
	Writable bool   // the book can be written, or the folder for it where there is none
	Names    int    // number of hard links of the file; two programs that open it by different names damage it
	Network  string // its network file system, "" for a disk of this machine
}

// Look finds out the state of a book. The error says why it cannot be read.
func Look(ctx context.Context, where string) (About, error) {
	if address.Server(where) {
		return lookServer(ctx, where)
	}
	a := About{Engine: sqlite.name, Place: where}
	if err := plainFile(where); err != nil {
		return a, err
	}
	dir := standing(filepath.Dir(behind(where)))
	a.Network, a.Writable = network(dir), accessible(dir)
	s, v, err := inspect(ctx, where)
	if errors.Is(err, ErrNone) { // no file yet, or an empty one
		return a, nil
	}
	if err != nil {
		return a, err
	}
	a.There, a.Version, a.Names, a.Writable = true, v, names(where), a.Writable && accessible(where)
	if v == 0 {
		err = errors.New("the file is not a book")
	}
	return a, errors.Join(err, s.Close())
}

// standing is the nearest existing folder: dir itself or one above it.
func standing(dir string) string {
	for up := filepath.Dir(dir); up != dir; up = filepath.Dir(dir) {
		if info, err := os.Stat(dir); err == nil && info.IsDir() {
			break
		}
		dir = up
	}
	return dir
}

func lookServer(ctx context.Context, address string) (About, error) {
	s, v, err := dial(ctx, address, true)
	a := About{Engine: postgres.name, Place: s.place, Version: v, There: v > 0}
	if err != nil {
		return a, err
	}
	defer s.Close()
	ask := "SELECT has_table_privilege('revisions', 'INSERT')"
	if v == 0 {
		ask = "SELECT has_schema_privilege(current_schema(), 'CREATE')"
	}
	return a, s.write.QueryRowContext(ctx, ask).Scan(&a.Writable)
}
