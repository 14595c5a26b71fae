package book

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"
)

// onShelf counts the books and holders that this process has of a file.
func onShelf(t testing.TB, file string) (books, holders int) {
	t.Helper()
	is, err := os.Stat(file)
	noErr(t, err)
	theShelf.mu.Lock()
	defer theShelf.mu.Unlock()
	for _, b := range theShelf.books {
		if os.SameFile(b.is, is) {
			books, holders = books+1, holders+b.holders
		}
	}
	return books, holders
}

// A process opens a file once, whatever its name and purpose; the last holder closes it, and closing one holder twice
// has no further effect.
func TestABookIsOpenOnce(t *testing.T) {
	ctx, now := context.Background(), time.Now()
	dir := t.TempDir()
	file, link := filepath.Join(dir, "book.db"), filepath.Join(dir, "link.db")
	writer, err := OpenFile(ctx, file)
	noErr(t, err)
	noErr(t, os.Symlink(file, link))
	reader, err := ReadFile(ctx, link)
	noErr(t, err)
	second, err := OpenFile(ctx, filepath.Join(dir, ".", "sub", "..", "book.db"))
	if err != nil { // sub is not there
		second, err = OpenFile(ctx, dir+"/./book.db")
	}
	noErr(t, err)
	if books, holders := onShelf(t, file); books != 1 || holders != 3 {
		t.Errorf("%d books with %d holders", books, holders)
	}
	r, err := by(&now).New(PersonKind, Person{Name: "fay"})
	noErr(t, err)
	if err := reader.Save(ctx, r); !errors.Is(err, ErrReadOnly) {
		t.Errorf("a book opened to read saves: %v", err)
	}
	for range 3 {
		noErr(t, writer.Close())
	}
	noErr(t, second.Save(ctx, r))
	if got, err := reader.Get(ctx, r.ID); err != nil || got.Rev != r.Rev {
		t.Errorf("%v, %v", got, err)
	}
	noErr(t, errors.Join(second.Close(), reader.Close()))
	if books, _ := onShelf(t, file); books != 0 {
		t.Errorf("%d books are left open", books)
	}
	if left, err := os.Stat(file + "-wal"); err == nil && left.Size() > 0 {
		t.Errorf("the last holder leaves a log of %d bytes", left.Size())
	}
}

// A file that replaces an open book's file is another book.
func TestAnotherFileInItsPlace(t *testing.T) {
	ctx, now := context.Background(), time.Now()
	dir := t.TempDir()
	file := filepath.Join(dir, "book.db")
	old, err := OpenFile(ctx, file)
	noErr(t, err)
	defer old.Close()
	fill(t, old, by(&now), &now, 3)
	aside := filepath.Join(dir, "aside")
	noErr(t, os.Mkdir(aside, 0o700))
	for _, name := range []string{"", "-wal", "-shm"} {
		noErr(t, os.Rename(file+name, filepath.Join(aside, "book.db"+name)))
	}
	b, err := OpenFile(ctx, file)
	noErr(t, err)
	defer b.Close()
	if list, err := b.List(ctx, Query{}); err != nil || len(list) != 0 {
		t.Errorf("the new book shows %v, %v", list, err)
	}
}

// A caller who gives up, or whose opening fails, is no holder, and others can open the book.
func TestGivingUpHoldsNothing(t *testing.T) {
	file := filepath.Join(t.TempDir(), "book.db")
	gone, cancel := context.WithCancel(context.Background())
	cancel()
	for _, open := range []func(context.Context, string) (Book, error){OpenFile, ReadFile} {
		if _, err := open(gone, file); err == nil {
			t.Error("opened with a cancelled context")
		}
		if books, _ := onShelfOrNone(t, file); books != 0 {
			t.Errorf("%d books are left open", books)
		}
	}
	b, err := OpenFile(context.Background(), file)
	noErr(t, err)
	noErr(t, b.Close())
}

func onShelfOrNone(t testing.TB, file string) (books, holders int) {
	if _, err := os.Stat(file); err != nil {
		return 0, 0
	}
	return onShelf(t, file)
}

// firstUser is set for a child process that is one of many first users of a new book.
const firstUser = "BRAZEBOOTH_TEST_FIRST_USER"

func TestFirstUserChild(t *testing.T) {
	file := os.Getenv(firstUser)
	if file == "" {
		t.Skip("only as a child")
	}
	_, _ = os.Stdin.Read(make([]byte, 1)) // all begin together
	var all sync.WaitGroup
	for n := range 5 {
		all.Go(func() { beFirst(t, file, fmt.Sprintf("user-%d-%d", os.Getpid(), n)) })
	}
	all.Wait()
}

// beFirst saves a record into a book that may not exist yet, and reads it again.
func beFirst(t *testing.T, file, name string) {
	ctx := context.Background()
	b, err := OpenFile(ctx, file)
	if err != nil {
		t.Errorf("%s: %v", name, err)
		return
	}
	defer b.Close()
	r, err := Author{Program: "test"}.New(PersonKind, Person{Name: name})
	if err == nil {
		err = b.Save(ctx, r)
	}
	if err == nil {
		_, err = Resolve(ctx, b, PersonKind, name)
	}
	if err != nil {
		t.Errorf("%s: %v", name, err)
	}
}

// Fifty first users at the same moment, in ten processes, can all save; reading meanwhile finds the book, or none yet.
func TestFiftyFirstUsers(t *testing.T) {
	file := filepath.Join(t.TempDir(), "book.db")
	var all sync.WaitGroup
	var begin []func() error
	for range 10 {
		cmd := exec.Command(os.Args[0], "-test.run", "^TestFirstUserChild$")
		cmd.Env = append(os.Environ(), firstUser+"="+file)
		in, err := cmd.StdinPipe()
		noErr(t, err)
		out := new(strings.Builder)
		cmd.Stdout, cmd.Stderr = out, out
		noErr(t, cmd.Start())
		begin = append(begin, in.Close)
		all.Go(func() {
			if err := cmd.Wait(); err != nil {
				t.Errorf("%v: %s", err, out)
			}
		})
	}
	for _, b := range begin {
		noErr(t, b())
	}
	for range 20 {
		b, err := ReadFile(context.Background(), file)
		if err == nil {
			err = b.Close()
		}
		if err != nil && !errors.Is(err, ErrNone) {
			t.Errorf("reading meanwhile: %v", err)
		}
	}
	all.Wait()
	b, err := ReadFile(context.Background(), file)
	noErr(t, err)
	defer b.Close()
	if list, err := b.List(context.Background(), Query{Kind: PersonKind, Limit: 100}); err != nil || len(list) != 50 {
		t.Errorf("%d of 50 are in the book, %v", len(list), err)
	}
	if faults, _, err := b.Check(context.Background()); err != nil || len(faults) > 0 {
		t.Errorf("%v, %v", faults, err)
	}
}

// A book's file is recognised by any of its names.
func TestIsPart(t *testing.T) {
	ctx := context.Background()
	dir := t.TempDir()
	file := filepath.Join(dir, "book.db")
	b, err := OpenFile(ctx, file)
	noErr(t, err)
	noErr(t, os.Symlink(file, filepath.Join(dir, "link")))
	noErr(t, os.WriteFile(filepath.Join(dir, "jobs.csv"), nil, 0o600))
	for name, want := range map[string]bool{"book.db": true, "book.db-wal": true, "book.db-shm": true, "link": true,
		"jobs.csv": false, "none": false} {
		if IsPart(file, filepath.Join(dir, name)) != want {
			t.Errorf("%s: %v", name, !want)
		}
	}
	if !IsPart("elsewhere.db", file) {
		t.Error("an open book is not recognised when another one is set")
	}
	noErr(t, b.Close())
	if !IsPart(file, file) || !IsPart("none.db", "./none.db-wal") || IsPart("none.db", "none.csv") ||
		IsPart("postgres://u@h/d", file) || IsPart("", file) {
		t.Error("closed")
	}
}

// A failed opening does not close the connections that others read with.
func TestWhoFailsShutsNobodyOut(t *testing.T) {
	ctx := context.Background()
	file, _, _ := shopBook(t, 3)
	first, err := ReadFile(ctx, file)
	noErr(t, err)
	defer first.Close()
	db, err := OpenRaw(file)
	noErr(t, err)
	db.SetMaxOpenConns(1)
	for _, step := range []string{"PRAGMA writable_schema = 1",
		"UPDATE sqlite_master SET rootpage = 99999 WHERE name = 'meta'", "PRAGMA schema_version = 999"} {
		_, err = db.Exec(step)
		noErr(t, err)
	}
	if b, err := ReadFile(ctx, file); err == nil {
		t.Error("this book can be read: nothing is tested")
		_ = b.Close()
	}
	if _, err := first.List(ctx, Query{}); err != nil && strings.Contains(err.Error(), "closed") {
		t.Error(err)
	}
	noErr(t, db.Close())
}
