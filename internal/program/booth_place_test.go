package program

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"brazebooth/internal/book"
	"brazebooth/internal/cli"
	"brazebooth/internal/serve"
)

// A server refuses a book, or a part of one, as its keys, log, host key or settings, and refuses an impossible place
// for its book. The book stays unchanged.
func TestServeRefusesTheBookAsAnotherFile(t *testing.T) {
	dir := t.TempDir()
	file := filepath.Join(dir, "book.db")
	b, err := book.OpenFile(context.Background(), file)
	if err != nil {
		t.Fatal(err)
	}
	link := filepath.Join(dir, "link")
	if err := os.Symlink(file, link); err != nil {
		t.Fatal(err)
	}
	serveIt := func(args ...string) string {
		told := new(words)
		d := serving()
		d.Err, d.Getenv, d.Config = told, func(string) string { return "" }, ""
		ctx, stop := context.WithCancel(context.Background())
		stop() // a server that starts although it must not ends at once
		code := cli.Run(ctx, append([]string{"serve", "--listen", "127.0.0.1:0", "--open"}, args...),
			cli.Deps{Out: told, Err: told, Serve: serve.Bind(d), HostKey: filepath.Join(dir, "key")})
		if code == 0 {
			t.Errorf("%q: it starts", args)
		}
		return told.String()
	}
	for _, part := range []string{file, file + "-wal", file + "-shm", link} {
		for _, flag := range []string{"--keys", "--writers", "--log", "--host-key"} {
			if told := serveIt("--book", file, "--host-key", filepath.Join(dir, "key"), flag,
				part); !strings.Contains(told, flag) || !strings.Contains(told, "the book, or a part of it") &&
				flag != "--config" {
				t.Errorf("%s %s: %s", flag, part, told)
			}
		}
	}
	for _, place := range []string{"postgres:/u:secret@h/d", "-", "a\x1bb.db"} {
		if told := serveIt("--host-key", filepath.Join(dir, "key"), "--book", place); strings.Contains(told,
			"secret") || strings.Contains(told, "serving") {
			t.Errorf("%q: %s", place, told)
		}
	}
	if faults, _, err := b.Check(context.Background()); err != nil || len(faults) > 0 {
		t.Errorf("%v, %v", faults, err)
	}
	if err := b.Close(); err != nil {
		t.Fatal(err)
	}
}
