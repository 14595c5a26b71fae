package program

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"

	"brazebooth/internal/newfile"
)

// firstWalk reports whether to show the walk for newcomers: if there is neither a book nor the mark that the walk was
// shown. It makes the mark at once, so that the walk is shown at most once, however it ends; if that fails, the walk is
// not shown.
func firstWalk(book string) bool {
	mark := inState("walked")
	_, err := os.Stat(book)
	if mark == "" || book != "" && !errors.Is(err, fs.ErrNotExist) || os.MkdirAll(filepath.Dir(mark), 0o700) != nil {
		return false
	}
	return newfile.Reserve(mark) == nil
}
