package book

import (
	"bufio"
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"brazebooth/internal/deep"
)

const childFile = "BRAZEBOOTH_SOAK_FILE"

// TestSoakChild is the program that is killed: it saves endlessly and prints each id when its save is acknowledged.
func TestSoakChild(t *testing.T) {
	file := os.Getenv(childFile)
	if file == "" {
		t.Skip("only as a child of the soak")
	}
	ctx, now := context.Background(), time.Now()
	b, err := OpenFile(ctx, file)
	if err != nil {
		fmt.Println("cannot open:", err)
		os.Exit(3)
	}
	card := someCard(t, "soak", gutter)
	for {
		now = now.Add(time.Millisecond)
		r, err := by(&now).New(CardKind, card)
		if err == nil {
			err = b.Save(ctx, r)
		}
		if err != nil {
			fmt.Println("cannot save:", err)
			os.Exit(3)
		}
		fmt.Println("saved", r.ID)
	}
}

// A program that is killed at random moments while saving loses no acknowledged save and damages no book. This is no
// test of a power cut, which depends on synchronous=FULL and on the disk.
func TestKillSoak(t *testing.T) {
	deep.Turn(t)
	file := filepath.Join(t.TempDir(), "book.db")
	r, kills, least := deep.Rand(t), deep.Many(6, 15), 0
	saved := map[string]bool{}
	for n := range kills {
		saves := r.IntN(4) // 0: kill it about when it opens the book
		least += saves
		for _, id := range killOne(t, file, saves, time.Duration(r.IntN(100))*time.Millisecond) {
			saved[id] = true
		}
		// not after every kill: reading the whole book takes longer than a kill
		if every := max(5, kills/8); n%every != every-1 && n != kills-1 {
			continue
		}
		b, err := OpenFile(context.Background(), file)
		noErr(t, err)
		faults, _, err := b.Check(context.Background())
		if err != nil || len(faults) != 0 {
			t.Fatalf("after %d kills: %v, %v", n+1, faults, err)
		}
		for id := range saved {
			if _, err := b.Get(context.Background(), id); err != nil {
				t.Fatalf("after %d kills %s, which was acknowledged, is lost: %v", n+1, id, err)
			}
		}
		noErr(t, b.Close())
	}
	if len(saved) < least {
		t.Errorf("only %d acknowledged in %d kills", len(saved), kills)
	}
	t.Logf("%d kills, %d acknowledged saves, none lost", kills, len(saved))
}

// killOne kills the child some time after so many saves and returns the ids that it acknowledged.
func killOne(t testing.TB, file string, saves int, after time.Duration) []string {
	t.Helper()
	cmd := exec.Command(os.Args[0], "-test.run", "^TestSoakChild$")
	cmd.Env = append(os.Environ(), childFile+"="+file)
	out, err := cmd.StdoutPipe()
	noErr(t, err)
	noErr(t, cmd.Start())
	var ids []string
	done, enough := make(chan struct{}), make(chan struct{})
	if saves == 0 {
		close(enough)
	}
	go func() {
		defer close(done)
		lines := bufio.NewScanner(out)
		for lines.Scan() {
			if id, ok := strings.CutPrefix(lines.Text(), "saved "); ok && len(id) == 16 {
				if ids = append(ids, id); len(ids) == saves {
					close(enough)
				}
			} else if strings.HasPrefix(lines.Text(), "cannot") {
				t.Error(lines.Text())
			}
		}
	}()
	select {
	case <-enough:
		time.Sleep(after)
	case <-done:
	}
	_ = cmd.Process.Kill()
	<-done
	_ = cmd.Wait()
	return ids
}

// A full disk gives a clear error, and earlier saves stay.
func TestDiskFull(t *testing.T) {
	dir := t.TempDir()
	if out, err := exec.Command("mount", "-t", "tmpfs", "-o", "size=400k", "tmpfs", dir).CombinedOutput(); err != nil {
		t.Skipf("no small disk can be made here: %s", strings.TrimSpace(string(out)))
	}
	defer func() { _ = exec.Command("umount", "-l", dir).Run() }()
	ctx, now := context.Background(), time.Now()
	file := filepath.Join(dir, "book.db")
	b, err := OpenFile(ctx, file)
	noErr(t, err)
	card := someCard(t, "x", gutter)
	var ids []string
	for range 2000 {
		r, err := by(&now).New(CardKind, card)
		noErr(t, err)
		if err = b.Save(ctx, r); err != nil {
			if !strings.Contains(err.Error(), "full") && !strings.Contains(err.Error(), "no space") {
				t.Errorf("a full disk is called %v", err)
			}
			break
		}
		ids = append(ids, r.ID)
	}
	if len(ids) == 0 || len(ids) == 2000 {
		t.Fatalf("%d cards on a disk of 400 kB", len(ids))
	}
	for _, id := range ids {
		if _, err := b.Get(ctx, id); err != nil {
			t.Fatalf("%s is lost: %v", id, err)
		}
	}
	if faults, _, err := b.Check(ctx); err != nil || len(faults) != 0 {
		t.Errorf("%v, %v", faults, err)
	}
	_ = b.Close()
}

// In a read-only folder a book can be read, and saving gives an error.
func TestFolderReadOnly(t *testing.T) {
	dir := t.TempDir()
	ctx, now := context.Background(), time.Now()
	file := filepath.Join(dir, "book.db")
	b, err := OpenFile(ctx, file)
	noErr(t, err)
	fill(t, b, by(&now), &now, 3)
	noErr(t, b.Close())
	if out, err := exec.Command("mount", "--bind", dir, dir).CombinedOutput(); err != nil {
		t.Skipf("no folder can be made read-only here: %s", strings.TrimSpace(string(out)))
	}
	defer func() { _ = exec.Command("umount", "-l", dir).Run() }()
	if out, err := exec.Command("mount", "-o", "remount,ro,bind", dir).CombinedOutput(); err != nil {
		t.Skipf("no folder can be made read-only here: %s", strings.TrimSpace(string(out)))
	}
	r, err := ReadFile(ctx, file)
	noErr(t, err)
	if list, err := r.List(ctx, Query{}); err != nil || len(list) != 2 {
		t.Errorf("%v, %v", list, err)
	}
	noErr(t, r.Close())
	if b, err := OpenFile(ctx, file); err == nil {
		rev, err := by(&now).New(PersonKind, Person{Name: "eve"})
		noErr(t, err)
		if err := b.Save(ctx, rev); err == nil {
			t.Error("saved into a folder that is read-only")
		}
		_ = b.Close()
	}
}
