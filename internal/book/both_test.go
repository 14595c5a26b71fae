package book

import (
	"context"
	"fmt"
	"net/url"
	"os"
	"path/filepath"
	"testing"
	"time"

	"brazebooth/calc"
)

// postgresAddress names the variable with the address of a PostgreSQL server for tests.
const postgresAddress = "BRAZEBOOTH_TEST_POSTGRES"

// onBoth runs a test on each engine, on an empty book.
func onBoth(t *testing.T, test func(t *testing.T, b Book)) {
	t.Run("sqlite", func(t *testing.T) { test(t, newFile(t)) })
	t.Run("postgres", func(t *testing.T) { test(t, newServer(t)) })
}

func newFile(t testing.TB) Book {
	t.Helper()
	b, err := OpenFile(context.Background(), filepath.Join(t.TempDir(), "book.db"))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = b.Close() })
	return b
}

var servers int

// newServer is an empty book on the server, in a schema of its own that is dropped at the end.
func newServer(t testing.TB) Book {
	t.Helper()
	b, err := openServer(context.Background(), serverAddress(t))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = b.Close() })
	return b
}

func serverAddress(t testing.TB) string {
	t.Helper()
	address := os.Getenv(postgresAddress)
	if address == "" {
		t.Skip("no PostgreSQL: start one (docs: DEVELOPERS.md) and set " + postgresAddress +
			"=postgres://user@localhost/database")
	}
	servers++
	schema := fmt.Sprintf("booth_%d_%d", os.Getpid(), servers)
	admin, err := OpenAdmin(address)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := admin.Exec("CREATE SCHEMA " + schema); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		_, _ = admin.Exec("DROP SCHEMA " + schema + " CASCADE")
		_ = admin.Close()
	})
	u, err := url.Parse(address)
	if err != nil {
		t.Fatal(err)
	}
	q := u.Query()
	q.Set("search_path", schema)
	u.RawQuery = q.Encode()
	return u.String()
}

// by makes revisions with a clock that a test sets.
func by(now *time.Time) Author {
	return Author{Who: "ana", Where: "booth 1", Program: "test", Now: func() time.Time { return *now }}
}

func someCard(t testing.TB, name string, j calc.Job) Card {
	t.Helper()
	c, err := calc.Solve(j)
	if err != nil {
		t.Fatal(err)
	}
	k := Card{Name: name, Tags: []string{"tank"}, Note: "first tank of the year", Job: j, Card: Keep(&c)}
	k.Clean()
	return k
}

var gutter = calc.Job{Metal: "galvanized", Gauge: 20, Joint: "lap", Feed: calc.Some(4.1), Travel: calc.Some(8)}

func noErr(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}
