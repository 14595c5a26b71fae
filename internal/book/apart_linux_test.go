package book

import (
	"bytes"
	"context"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"
)

// smallDisk mounts a file system of this size; the test is skipped where that is not allowed.
func smallDisk(t testing.TB, size string) string {
	t.Helper()
	dir := t.TempDir()
	if err := syscall.Mount("tmpfs", dir, "tmpfs", 0, "size="+size); err != nil {
		t.Skipf("no small file system can be mounted (%v): run this test as root", err)
	}
	t.Cleanup(func() { _ = syscall.Unmount(dir, syscall.MNT_DETACH) })
	return dir
}

// noRoom writes until a disk is full to the last byte.
func noRoom(t testing.TB, dir string) {
	t.Helper()
	f, err := os.Create(filepath.Join(dir, "filler"))
	noErr(t, err)
	for err == nil {
		_, err = f.Write(bytes.Repeat([]byte("x"), 512))
	}
	noErr(t, f.Close())
	if !errors.Is(err, syscall.ENOSPC) {
		t.Fatal(err)
	}
}

// abandoned is a folder left by a program that was killed while saving: a book with its log and shared memory. ids are
// the acknowledged saves.
func abandoned(t testing.TB) (dir string, ids []string) {
	t.Helper()
	dir = t.TempDir()
	for try := range 20 {
		ids = append(ids, killOne(t, filepath.Join(dir, "book.db"), 4, time.Duration(50*try)*time.Millisecond)...)
		if left, err := os.Stat(filepath.Join(dir, "book.db-wal")); err == nil && left.Size() > 64<<10 && len(ids) > 3 {
			return dir, ids
		}
	}
	t.Fatal("no program left a log")
	return "", nil
}

// into copies some files of an abandoned book.
func into(t testing.TB, to, from string, names ...string) string {
	t.Helper()
	for _, name := range names {
		text, err := os.ReadFile(filepath.Join(from, name))
		noErr(t, err)
		noErr(t, os.WriteFile(filepath.Join(to, name), text, 0o600))
	}
	return filepath.Join(to, "book.db")
}

// whole checks that a book shows every acknowledged record, or is refused with this text: never a part that looks
// complete.
func whole(t testing.TB, what, file string, ids []string, refused string) {
	t.Helper()
	ctx := context.Background()
	b, err := ReadFile(ctx, file)
	if refused != "" {
		var bad *Unreadable
		if !errors.As(err, &bad) || !strings.Contains(err.Error(), refused) {
			t.Errorf("%s: %v, want %q", what, err, refused)
		}
		if err == nil {
			_ = b.Close()
		}
		return
	}
	if err != nil {
		t.Errorf("%s: %v", what, err)
		return
	}
	for _, id := range ids {
		if _, err := b.Get(ctx, id); err != nil {
			t.Errorf("%s: %s, which was acknowledged: %v", what, id, err)
		}
	}
	if faults, _, err := b.Check(ctx); err != nil || len(faults) > 0 {
		t.Errorf("%s: %v, %v", what, faults, err)
	}
	if _, err := Look(ctx, file); err != nil {
		t.Errorf("%s: look: %v", what, err)
	}
	if err := b.Close(); err != nil {
		t.Errorf("%s: close: %v", what, err)
	}
}

// readOnly remounts a folder read-only.
func readOnly(t testing.TB, dir string) {
	t.Helper()
	for _, args := range [][]string{{"--bind", dir, dir}, {"-o", "remount,ro,bind", dir}} {
		if out, err := exec.Command("mount", args...).CombinedOutput(); err != nil {
			t.Skipf("no folder can be made read-only here: %s", bytes.TrimSpace(out))
		}
	}
	t.Cleanup(func() { _ = exec.Command("umount", "-l", dir).Run() })
}

// The saves in a killed program's log are shown with the book, or the book is refused, whichever of its files exist: on
// a full disk, in a read-only folder, and in a usual one.
func TestSavesInAnAbandonedLog(t *testing.T) {
	from, ids := abandoned(t)
	const db, log, shared = "book.db", "book.db-wal", "book.db-shm"
	whole(t, "a usual folder", into(t, t.TempDir(), from, db, log, shared), ids, "")
	whole(t, "no shared memory", into(t, t.TempDir(), from, db, log), ids, "")
	for what, names := range map[string][]string{"full disk": {db, log, shared}, "full disk, no shared memory": {db,
		log}} {
		dir := smallDisk(t, "16m")
		file := into(t, dir, from, names...)
		noRoom(t, dir)
		whole(t, what, file, ids, "")
		whole(t, what+", again", file, ids, "")
	}
	dir := into(t, t.TempDir(), from, db, log, shared)
	readOnly(t, filepath.Dir(dir))
	whole(t, "read-only folder", dir, ids, "")
	dir = into(t, t.TempDir(), from, db, log)
	readOnly(t, filepath.Dir(dir))
	whole(t, "read-only folder, no shared memory", dir, ids, "book.db-wal")
	if _, err := Look(context.Background(), dir); err == nil {
		t.Error("doctor finds nothing wrong with a book that is refused")
	}
}

// A save is refused with an explanation in a read-only folder and on a full disk.
func TestSavesThatCannotBeWritten(t *testing.T) {
	ctx, now := context.Background(), time.Now()
	r, err := by(&now).New(CardKind, someCard(t, strings.Repeat("a long name ", 5), gutter))
	noErr(t, err)
	shop, _, _ := shopBook(t, 3)
	file := into(t, t.TempDir(), filepath.Dir(shop), "book.db")
	readOnly(t, filepath.Dir(file))
	if _, err := OpenFile(ctx, file); err == nil || !strings.Contains(err.Error(), "may not write") {
		t.Errorf("a read-only folder: %v", err)
	}
	dir := smallDisk(t, "1m")
	b, err := OpenFile(ctx, filepath.Join(dir, "book.db"))
	noErr(t, err)
	noRoom(t, dir)
	var bad *Unreadable
	for range 100 {
		if err = b.Save(ctx, r); err != nil {
			break
		}
		r, err = by(&now).New(CardKind, someCard(t, now.String(), gutter))
		noErr(t, err)
	}
	if !errors.As(err, &bad) || !strings.Contains(err.Error(), "the disk is full: make room on it") {
		t.Errorf("a disk that gets full: %v", err)
	}
	noErr(t, b.Close())
}

// A book behind a symbolic link is read with the files beside its target, or refused if that is not possible; IsPart
// knows those files by either name.
func TestAbandonedLogBehindALink(t *testing.T) {
	from, ids := abandoned(t)
	const db, log, shared = "book.db", "book.db-wal", "book.db-shm"
	for refused, names := range map[string][]string{"": {db, log, shared}, "book.db-wal": {db, log}} {
		dir := t.TempDir()
		noErr(t, os.Mkdir(filepath.Join(dir, "sub"), 0o700))
		into(t, filepath.Join(dir, "sub"), from, names...)
		link := filepath.Join(dir, "link.db")
		noErr(t, os.Symlink("sub/book.db", link))
		readOnly(t, dir)
		whole(t, "behind a link, "+refused, link, ids, refused)
		for _, ending := range []string{"", "-wal", "-shm", "-journal"} {
			if !IsPart(link, filepath.Join(dir, "sub", db+ending)) {
				t.Errorf("%s beside the file itself is no part of the book", ending)
			}
		}
	}
}

// A book in which another program left half a change is refused if the change cannot be undone.
func TestAHalfChange(t *testing.T) {
	dir := t.TempDir()
	file := into(t, dir, filepath.Dir(halfChanged(t)), "book.db", "book.db-journal")
	whole(t, "half a change", file, nil, "in the middle of a change")
	healed := into(t, t.TempDir(), dir, "book.db", "book.db-journal")
	b, err := OpenFile(context.Background(), healed) // as the message advises
	noErr(t, err)
	if faults, n, err := b.Check(context.Background()); n != 5 || len(faults) > 0 || err != nil {
		t.Errorf("after a save: %d revisions, %q, %v", n, faults, err)
	}
	noErr(t, b.Close())
	readOnly(t, dir)
	whole(t, "half a change, read-only folder", file, nil, "book.db-journal")
}

// halfChanged is a book left by another program that was stopped in the middle of a change.
func halfChanged(t *testing.T) string {
	t.Helper()
	ctx, now := context.Background(), time.Now()
	file := filepath.Join(t.TempDir(), "book.db")
	b, err := OpenFile(ctx, file)
	noErr(t, err)
	fill(t, b, by(&now), &now, 3)
	noErr(t, b.Close())
	db, err := OpenRaw(file)
	noErr(t, err)
	db.SetMaxOpenConns(1)
	for _, step := range []string{"PRAGMA journal_mode = DELETE", "PRAGMA cache_size = 1", "BEGIN IMMEDIATE",
		"UPDATE revisions SET body = zeroblob(9000)",
		"CREATE TABLE more AS WITH RECURSIVE t (x) AS (SELECT 1 UNION ALL SELECT x + 1 FROM t WHERE x < 300) SELECT " +
			"x, randomblob(3000) FROM t"} {
		_, err := db.Exec(step)
		noErr(t, err)
	}
	left := into(t, t.TempDir(), filepath.Dir(file), "book.db", "book.db-journal")
	_, err = db.Exec("ROLLBACK")
	noErr(t, errors.Join(err, db.Close()))
	return left
}

// A closed book on a full disk can be read several times, and a save gets the error that the disk is full. When there
// is room again, saving works.
func TestAFullDisk(t *testing.T) {
	ctx, now := context.Background(), time.Now()
	dir := smallDisk(t, "2m")
	file := filepath.Join(dir, "book.db")
	b, err := OpenFile(ctx, file)
	noErr(t, err)
	fill(t, b, by(&now), &now, 3)
	list, err := b.List(ctx, Query{})
	noErr(t, err)
	var ids []string
	for _, h := range list {
		ids = append(ids, h.ID)
	}
	noErr(t, b.Close())
	_ = os.Remove(file + "-shm")
	_ = os.Remove(file + "-wal")
	noRoom(t, dir)
	for range 3 {
		whole(t, "full", file, ids, "")
	}
	r, err := by(&now).New(CardKind, someCard(t, strings.Repeat("a long name ", 5), gutter))
	noErr(t, err)
	for range 3 {
		b, err := OpenFile(ctx, file)
		if err == nil {
			err = errors.Join(b.Save(ctx, r), b.Close())
		}
		if err == nil || !strings.Contains(err.Error(), "the disk is full: make room on it") {
			t.Errorf("saving on a full disk: %v", err)
		}
		whole(t, "full, after a save", file, ids, "")
	}
	noErr(t, os.Remove(filepath.Join(dir, "filler")))
	b, err = OpenFile(ctx, file)
	noErr(t, err)
	noErr(t, b.Save(ctx, r))
	noErr(t, b.Close())
	whole(t, "room again", file, append(ids, r.ID), "")
}

// Closing a book that was read without locks is an error if somebody wrote it meanwhile.
func TestWrittenWhileReadWithoutLocks(t *testing.T) {
	ctx, now := context.Background(), time.Now()
	dir := t.TempDir()
	file := filepath.Join(dir, "book.db")
	b, err := OpenFile(ctx, file)
	noErr(t, err)
	fill(t, b, by(&now), &now, 3)
	noErr(t, b.Close())
	seen := t.TempDir()
	if err := syscall.Mount(dir, seen, "", syscall.MS_BIND, ""); err != nil {
		t.Skipf("no folder can be shown twice here: %v", err)
	}
	t.Cleanup(func() { _ = syscall.Unmount(seen, syscall.MNT_DETACH) })
	noErr(t, syscall.Mount("", seen, "", syscall.MS_BIND|syscall.MS_REMOUNT|syscall.MS_RDONLY, ""))
	r, err := ReadFile(ctx, filepath.Join(seen, "book.db"))
	noErr(t, err)
	if _, err := r.List(ctx, Query{}); err != nil {
		t.Error(err)
	}
	quiet, err := ReadFile(ctx, filepath.Join(seen, "book.db"))
	noErr(t, err)
	noErr(t, quiet.Close())
	killOne(t, file, 1, 0)
	if err := r.Close(); err == nil || !strings.Contains(err.Error(), "read it again") {
		t.Errorf("closed with %v", err)
	}
}
