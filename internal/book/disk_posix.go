//go:build linux || darwin || freebsd

package book

import (
	"path/filepath"
	"syscall"
)

// toWrite is W_OK of access(2).
const toWrite = 2

// accessible reports, without opening it, whether this process may open a file to write.
func accessible(file string) bool { return syscall.Access(file, toWrite) == nil }

// names counts a file's names (hard links). Two programs that open a book by different names damage it, since each
// then has a log of its own (sqlite.org/howtocorrupt.html, 2.5).
func names(file string) int {
	var s syscall.Stat_t
	if syscall.Stat(file, &s) != nil {
		return 1
	}
	return int(s.Nlink)
}

// full reports whether a file's disk has no room left for SQLite's own files beside a book.
func full(file string) bool {
	var s syscall.Statfs_t
	if syscall.Statfs(filepath.Dir(file), &s) != nil {
		return false
	}
	return int64(s.Bavail)*int64(s.Bsize) < leastRoom
}
