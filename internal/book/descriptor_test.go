package book

import (
	"context"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// opensFiles are the functions that may open a file by its name, and why that is never a book's file. Closing any
// descriptor of a book's file releases the locks that SQLite holds on it for the whole process.
var opensFiles = map[string]string{
	"internal/book/offline.go Rescue":       "a new file with an unused name",
	"internal/newfile/newfile.go fill":      "a new file with an unused name",
	"internal/newfile/newfile.go Reserve":   "a file that is not there yet",
	"internal/config/config.go load":        "the settings, read before any book is opened",
	"internal/serve/hostkey.go hostKey":     "the server's own key; serve refuses a book in its place",
	"internal/serve/log.go openLog":         "the log; serve refuses a book in its place",
	"internal/serve/keys.go names":          "a file of keys; serve refuses a book in its place",
	"internal/serve/settings.go serveTable": "the settings, read before any book is opened",
	"internal/serve/settings.go readable":   "a file of keys; serve refuses a book in its place",
	"internal/cli/files.go openFile":        "refuses a book",
	"internal/cli/files.go rows":            "a file that is not there yet",
}

// No shipped code opens a file by its name, except the functions that are listed above.
func TestOnlySQLiteOpensABook(t *testing.T) {
	root := "../.."
	used := map[string]bool{}
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		name := filepath.ToSlash(strings.TrimPrefix(path, root+string(filepath.Separator)))
		if d.IsDir() && (name == "internal/bench" || strings.HasPrefix(d.Name(), ".") && path != root) {
			return filepath.SkipDir // never shipped
		}
		if !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go") {
			return nil
		}
		for _, f := range opening(t, path) {
			used[name+" "+f] = true
			if opensFiles[name+" "+f] == "" {
				t.Errorf("%s: %s opens a file by its name: if that may be a book, go through internal/book; "+
					"if it cannot, say why in opensFiles", name, f)
			}
		}
		return nil
	})
	noErr(t, err)
	for name := range opensFiles {
		if !used[name] {
			t.Errorf("%s opens no file any more: take it out of opensFiles", name)
		}
	}
}

// opening lists the functions of a Go file that call a function of os, io/ioutil, syscall or unix that opens a file.
func opening(t *testing.T, path string) (list []string) {
	t.Helper()
	f, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
	noErr(t, err)
	opens := map[string]bool{}
	for _, name := range []string{"Open", "OpenFile", "Create", "CreateTemp", "ReadFile", "WriteFile", "DirFS",
		"OpenRoot", "OpenInRoot", "Truncate", "CopyFS", "TempFile", "Openat", "Creat"} {
		opens[name] = true
	}
	for _, d := range f.Decls {
		name, found := "a variable", false
		if fn, ok := d.(*ast.FuncDecl); ok {
			name = fn.Name.Name
		}
		ast.Inspect(d, func(n ast.Node) bool {
			if s, ok := n.(*ast.SelectorExpr); ok {
				if from, ok := s.X.(*ast.Ident); ok && (from.Name == "os" || from.Name == "ioutil" ||
					from.Name == "syscall" || from.Name == "unix") && opens[s.Sel.Name] {
					found = true
				}
			}
			return true
		})
		if found {
			list = append(list, name)
		}
	}
	return list
}

// processLocks is set for a child process whose locks belong to the process, as on systems without descriptor locks.
const processLocks = "BRAZEBOOTH_TEST_PROCESS_LOCKS"

func init() {
	if os.Getenv(processLocks) != "" {
		ownLocks = func() {}
	}
}

// The same with locks that belong to the process, which are kept only because nothing else opens the file.
func TestProcessLocksOutliveEverything(t *testing.T) {
	cmd := exec.Command(os.Args[0], "-test.run", "^TestLocksOutliveEverything$", "-test.v")
	cmd.Env = append(os.Environ(), processLocks+"=1")
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Errorf("%v: %s", err, out)
	}
}

// Whatever is done with a book, this process keeps its locks on it while a query is running.
func TestLocksOutliveEverything(t *testing.T) {
	ctx, now := context.Background(), time.Now()
	dir := t.TempDir()
	file := filepath.Join(dir, "book.db")
	b, err := OpenFile(ctx, file)
	noErr(t, err)
	defer b.Close()
	fill(t, b, by(&now), &now, 3)
	rows, err := b.(*store).read.Query("SELECT rev FROM revisions")
	noErr(t, err)
	defer rows.Close()
	if !rows.Next() {
		t.Fatal(rows.Err())
	}
	held := locksOn(t, file, file+"-shm")
	if len(held) == 0 {
		t.Skip("the system shows no locks here")
	}
	for what, do := range map[string]func() error{
		"open":   func() error { x, err := OpenFile(ctx, file); noErr(t, err); return x.Close() },
		"read":   func() error { x, err := ReadFile(ctx, file); noErr(t, err); return x.Close() },
		"look":   func() error { _, err := Look(ctx, file); return err },
		"backup": func() error { return b.Backup(ctx, filepath.Join(dir, "copy.db")) },
		"check":  func() error { _, _, err := b.Check(ctx); return err },
		"export": func() error { _, err := Export(ctx, b, new(strings.Builder)); return err },
		"cards":  func() error { _, err := ExportCards(ctx, b, new(strings.Builder)); return err },
		"merge":  func() error { _, err := Merge(ctx, newFile(t), b); return err },
		"save":   func() error { fill(t, b, by(&now), &now, 3); return nil },
		"away":   func() error { Away(ctx, file); return nil },
		"link": func() error {
			other := filepath.Join(dir, "other.db")
			noErr(t, os.Symlink(file, other))
			x, err := OpenFile(ctx, other)
			noErr(t, err)
			return x.Close()
		},
	} {
		noErr(t, do())
		now := locksOn(t, file, file+"-shm")
		for lock := range held {
			if !now[lock] {
				t.Errorf("%s drops the lock %s; there are %v", what, lock, now)
			}
		}
	}
}

// locksOn are the locks on some files, as the system lists them.
func locksOn(t *testing.T, files ...string) map[string]bool {
	t.Helper()
	text, err := os.ReadFile("/proc/locks")
	if err != nil {
		t.Skip("the system lists no locks")
	}
	held := map[string]bool{}
	for line := range strings.Lines(string(text)) {
		f := strings.Fields(line) // 1: OFDLCK ADVISORY READ -1 00:2d:1234 1073741826 1073742335
		if len(f) < 8 {
			continue
		}
		for _, file := range files {
			if strings.HasSuffix(f[5], fmt.Sprintf(":%d", inode(t, file))) {
				held[strings.Join(f[1:], " ")] = true
			}
		}
	}
	return held
}
