package program

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/adrg/xdg"
)

// The walk is shown on the first start and never again; not if there is a book, and not if the mark cannot be made.
func TestFirstWalkComesOnce(t *testing.T) {
	was := xdg.StateHome
	t.Cleanup(func() { xdg.StateHome = was })
	dir := t.TempDir()
	t.Setenv("HOME", dir)
	book := filepath.Join(dir, "book.db")
	xdg.StateHome = filepath.Join(dir, "state")
	if !firstWalk(book) {
		t.Error("it does not come on the first start")
	}
	if firstWalk(book) || firstWalk("") {
		t.Error("it comes a second time")
	}

	if err := os.WriteFile(book, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	xdg.StateHome = filepath.Join(dir, "other")
	if firstWalk(book) {
		t.Error("it comes to somebody who has a book")
	}
	if _, err := os.Stat(xdg.StateHome); err == nil {
		t.Error("a mark is made without a walk")
	}
	xdg.StateHome = book // a file, in which no folder can be made
	if firstWalk("") {
		t.Error("it comes where that cannot be remembered")
	}
	xdg.StateHome = ""
	if firstWalk("") {
		t.Error("it comes without a folder for its mark")
	}
}
