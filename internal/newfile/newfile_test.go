package newfile

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func page(text string) func(io.Writer) error {
	return func(w io.Writer) error {
		_, err := io.WriteString(w, text)
		return err
	}
}

// names are the names of the files in a folder.
func names(t *testing.T, dir string) string {
	t.Helper()
	list, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	var all []string
	for _, f := range list {
		all = append(all, f.Name())
	}
	return strings.Join(all, " ")
}

func TestAFileIsNewAndWhole(t *testing.T) {
	dir := t.TempDir()
	file := filepath.Join(dir, "wall.pdf")
	if err := Write(file, 0o600, page("a page")); err != nil {
		t.Fatal(err)
	}
	if b, err := os.ReadFile(file); err != nil || string(b) != "a page" || names(t, dir) != "wall.pdf" {
		t.Errorf("%q, %v, in the folder: %s", b, err, names(t, dir))
	}
	if info, err := os.Stat(file); err != nil || info.Mode().Perm()&0o077 != 0 {
		t.Errorf("%v, %v", info.Mode(), err)
	}
}

// The same on a disk without links.
func TestWithoutLinks(t *testing.T) {
	dir := t.TempDir()
	temp, file := filepath.Join(dir, "temp"), filepath.Join(dir, "wall.pdf")
	if err := os.WriteFile(temp, []byte("a page"), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := putUnlinked(temp, file); err != nil {
		t.Fatal(err)
	}
	if b, err := os.ReadFile(file); err != nil || string(b) != "a page" || names(t, dir) != "wall.pdf" {
		t.Errorf("%q, %v, in the folder: %s", b, err, names(t, dir))
	}
	if err := putUnlinked(temp, filepath.Join(dir, "other.pdf")); err == nil || names(t, dir) != "wall.pdf" {
		t.Errorf("%v, in the folder: %s", err, names(t, dir))
	}
}

// An existing file stays, and the error suggests a free name.
func TestNothingIsOverwritten(t *testing.T) {
	dir := t.TempDir()
	for name, make := range map[string]func(string) error{
		"wall.pdf": func(f string) error { return os.WriteFile(f, []byte("mine"), 0o600) },
		"empty":    func(f string) error { return os.WriteFile(f, nil, 0o600) },
		"folder":   func(f string) error { return os.Mkdir(f, 0o700) },
		"nowhere":  func(f string) error { return os.Symlink(filepath.Join(dir, "gone"), f) },
	} {
		file := filepath.Join(dir, name)
		if err := make(file); err != nil {
			t.Fatal(err)
		}
		before, _ := os.Lstat(file)
		for _, try := range []error{
			Write(file, 0o600, page("other")),
			Check(file),
			put(filepath.Join(dir, "wall.pdf"), file), // somebody made it meanwhile
			putUnlinked(filepath.Join(dir, "wall.pdf"), file),
		} {
			var taken *Taken
			if !errors.As(try, &taken) || !errors.Is(try, fs.ErrExist) || taken.Folder != (name == "folder") {
				t.Errorf("%s: %v", name, try)
			}
		}
		if after, err := os.Lstat(file); err != nil || after.Size() != before.Size() || after.Mode() != before.Mode() {
			t.Errorf("%s was changed: %v, %v", name, after, err)
		}
	}
	if err := os.WriteFile(filepath.Join(dir, "wall-2.pdf"), nil, 0o600); err != nil {
		t.Fatal(err)
	}
	var taken *Taken
	if err := Check(filepath.Join(dir, "wall.pdf")); !errors.As(err, &taken) || taken.Free != filepath.Join(dir,
		"wall-3.pdf") {
		t.Errorf("%v, %+v", err, taken)
	}
	if got := names(t, dir); got != "empty folder nowhere wall-2.pdf wall.pdf" {
		t.Errorf("in the folder: %s", got)
	}
}

// A file that cannot be finished leaves nothing behind, and the error names the requested file.
func TestFailureLeavesNothing(t *testing.T) {
	dir := t.TempDir()
	file := filepath.Join(dir, "wall.pdf")
	full := errors.New("no room")
	if err := Write(file, 0o600, func(w io.Writer) error {
		_,
			_ = io.WriteString(w, "half")
		return full
	}); !errors.Is(err, full) {
		t.Errorf("%v", err)
	}
	err := Make(file, func(temp string) error { _, err := os.Open(temp); return err })
	if !errors.Is(err, fs.ErrNotExist) || strings.Contains(err.Error(), ".brazebooth") || !strings.Contains(err.Error(),
		file) {
		t.Errorf("%v", err)
	}
	if got := names(t, dir); got != "" {
		t.Errorf("in the folder: %s", got)
	}
	if err := Write(filepath.Join(dir, "none", "wall.pdf"), 0o600, page("x")); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("%v", err)
	}
}

// Replace keeps a file's mode and a link to it, and keeps the old text if the new one cannot be written.
func TestReplace(t *testing.T) {
	dir := t.TempDir()
	file, link := filepath.Join(dir, "settings"), filepath.Join(dir, "link")
	if err := Replace(file, 0o600, []byte("one")); err != nil {
		t.Fatal(err)
	}
	if err := errors.Join(os.Chmod(file, 0o640), os.Symlink(file, link)); err != nil {
		t.Skip(err) // no links, or no modes
	}
	if err := Replace(link, 0o600, []byte("two")); err != nil {
		t.Fatal(err)
	}
	text, err := os.ReadFile(file)
	info, other := os.Stat(file)
	if err != nil || other != nil || string(text) != "two" || info.Mode().Perm() != 0o640 {
		t.Errorf("%q, %v, %v", text, info.Mode(), errors.Join(err, other))
	}
	if to, err := os.Readlink(link); err != nil || to != file {
		t.Errorf("the link is gone: %s, %v", to, err)
	}
	if got := names(t, dir); got != "link settings" {
		t.Errorf("left: %s", got)
	}
	folder := filepath.Join(dir, "gone", "settings")
	if err := Replace(folder, 0o600, nil); !errors.Is(err, fs.ErrNotExist) || strings.Contains(err.Error(),
		".brazebooth-") {
		t.Errorf("%v", err)
	}
}
