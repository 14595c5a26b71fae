package program

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
)

// firstWalk reports whether the walk for newcomers is due: nothing of this program lies here yet, neither a book nor
// the mark that the walk was shown. The mark is made at once, so that the walk comes unasked once at most, however it
// ends; where it cannot be made the walk is left out.
func firstWalk(book string) bool {
	mark := inState("walked")
	_, err := os.Stat(book)
	if mark == "" || book != "" && !errors.Is(err, fs.ErrNotExist) || os.MkdirAll(filepath.Dir(mark), 0o700) != nil {
		return false
	}
	f, err := os.OpenFile(mark, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
	if err != nil {
		return false
	}
	return f.Close() == nil
}
