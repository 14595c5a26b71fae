package book

import (
	"syscall"
	"testing"
)

// fakeNetwork makes every folder look like NFS until the returned function is called.
func fakeNetwork(*testing.T) func() {
	real := statfs
	statfs = func(_ string, s *syscall.Statfs_t) error { s.Type = 0x6969; return nil }
	return func() { statfs = real }
}
