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

// names counts what a file is called in its disk's folders: one that has several (hard links) is damaged by two programs that
// open it by different ones, since each has a log of its own then (sqlite.org/howtocorrupt.html, 2.5).
func names(file string) int {
	var s syscall.Stat_t
	if syscall.Stat(file, &s) != nil {
		return 1
	}
	return int(s.Nlink)
}

// full reports that the disk of a file has no room left for what SQLite lays beside a book.
func full(file string) bool {
	var s syscall.Statfs_t
	if syscall.Statfs(filepath.Dir(file), &s) != nil {
		return false
	}
	return int64(s.Bavail)*int64(s.Bsize) < leastRoom
}
