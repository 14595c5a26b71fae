package program

import (
	"bytes"
	"context"
	"database/sql"
	"strings"
	"testing"
	"time"

	gossh "golang.org/x/crypto/ssh"

	"brazebooth/internal/book"
)

// The server ends in time while another program locks the book and guests wait to save; each guest gets an error, and
// nothing is saved.
func TestTheEndWhileAnotherHoldsTheBook(t *testing.T) {
	b := startBooth(t, "--per-key", "100", "--per-address", "100", "--channels", "10")
	b.ask(t, "writer", "book save --gauge 20ga --feed 4.1 --travel 8 --name first", "")
	db, err := sql.Open("sqlite", "file:"+b.book+"?_txlock=immediate&_pragma=busy_timeout(5000)")
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	held, err := db.Begin()
	if err != nil {
		t.Fatal(err)
	}
	c := b.client(t, "writer")
	var waiting []*gossh.Session
	var told []*bytes.Buffer
	for range 3 {
		s, err := c.NewSession()
		if err != nil {
			t.Fatal(err)
		}
		words := new(bytes.Buffer)
		s.Stderr = words
		if err := s.Start("book save --gauge 20ga --feed 4.1 --travel 8 --name waiting"); err != nil {
			t.Fatal(err)
		}
		waiting, told = append(waiting, s), append(told, words)
	}
	time.Sleep(500 * time.Millisecond) // they all wait by then; one that does not wait yet is refused too
	b.stop()
	for i, s := range waiting {
		if code := exitOf(t, s.Wait); code == 0 || !strings.Contains(told[i].String(), "cancelled") &&
			!strings.Contains(told[i].String(), "going down") {
			t.Errorf("exit %d: %s", code, told[i])
		}
	}
	if err := held.Rollback(); err != nil {
		t.Fatal(err)
	}
	r, err := book.ReadFile(context.Background(), b.book)
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	if list, err := r.List(context.Background(), book.Query{}); err != nil || len(list) != 1 {
		t.Errorf("%d records, %v", len(list), err)
	}
}
