//go:build linux || darwin || freebsd

package book

import (
	"syscall"
	"testing"
)

func inode(t *testing.T, file string) uint64 {
	var s syscall.Stat_t
	noErr(t, syscall.Stat(file, &s))
	return s.Ino
}
