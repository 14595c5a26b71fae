//go:build linux || darwin || freebsd

package book

import (
	"path/filepath"
	"syscall"
)

// toWrite is W_OK of access(2).
const toWrite = 2

// accessible reports a file that this process may open to write, without opening it.
func accessible(file string) bool { return syscall.Access(file, toWrite) == nil }

// full reports that the disk of a file has no room left for what SQLite lays beside a book.
func full(file string) bool {
	var s syscall.Statfs_t
	if syscall.Statfs(filepath.Dir(file), &s) != nil {
		return false
	}
	return int64(s.Bavail)*int64(s.Bsize) < leastRoom
}
