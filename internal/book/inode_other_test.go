//go:build !(linux || darwin || freebsd)

package book

import "testing"

func inode(*testing.T, string) uint64 { return 0 }
