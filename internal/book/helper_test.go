package book

import (
	"database/sql"
	"testing"
)

// OpenAdmin is a connection to the server without a book's checks.
func OpenAdmin(address string) (*sql.DB, error) { return sql.Open("pgx", address) }

// OpenRaw is a connection to a book's file without its checks.
func OpenRaw(file string) (*sql.DB, error) { return sql.Open("sqlite", dsn(file, "rwc", true)) }

// alone skips a test in the short run, which looks for data races: these tests have only one goroutine.
func alone(t *testing.T) {
	t.Helper()
	if testing.Short() {
		t.Skip("left out of the short run: nothing is shared here")
	}
}
