package book

import (
	"syscall"
	"testing"
)

// fakeNetwork lets every folder lie on NFS until the function that it returns is called.
func fakeNetwork(*testing.T) func() {
	real := statfs
	statfs = func(_ string, s *syscall.Statfs_t) error { s.Type = 0x6969; return nil }
	return func() { statfs = real }
}
