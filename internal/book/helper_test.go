package book

import (
	"database/sql"
	"syscall"
	"time"
)

// OpenAdmin is a plain connection to the server.
func OpenAdmin(address string) (*sql.DB, error) { return sql.Open("pgx", address) }

// OpenRaw is a plain connection to a file.
func OpenRaw(file string) (*sql.DB, error) { return sql.Open("sqlite", dsn(file, "rwc", true)) }

// fakeNetwork lets every folder lie on NFS until the function that it returns is called.
func fakeNetwork() func() {
	real := statfs
	statfs = func(_ string, s *syscall.Statfs_t) error { s.Type = 0x6969; return nil }
	return func() { statfs = real }
}

// cpu is the time that this process has used.
func cpu() time.Duration {
	var u syscall.Rusage
	_ = syscall.Getrusage(syscall.RUSAGE_SELF, &u)
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}
