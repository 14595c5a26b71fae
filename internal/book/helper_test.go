package book

import (
	"database/sql"
	"testing"
)

// OpenAdmin is a plain connection to the server.
func OpenAdmin(address string) (*sql.DB, error) { return sql.Open("pgx", address) }

// OpenRaw is a plain connection to a file.
func OpenRaw(file string) (*sql.DB, error) { return sql.Open("sqlite", dsn(file, "rwc", true)) }

// alone leaves a test out of the short run, which looks for data races: these tests have only one goroutine.
func alone(t *testing.T) {
	t.Helper()
	if testing.Short() {
		t.Skip("left out of the short run: nothing is shared here")
	}
}
