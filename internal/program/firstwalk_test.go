package program

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/adrg/xdg"
)

// The walk is due on the very first start and never again; not where a book lies already, and not where it could not be
// remembered that it was shown.
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
	xdg.StateHome = book // a file: no folder can be made in it
	if firstWalk("") {
		t.Error("it comes where that cannot be remembered")
	}
	xdg.StateHome = ""
	if firstWalk("") {
		t.Error("it comes without a folder for its mark")
	}
}
