//go:build !windows

package program

// carriesOut: what a terminal here cannot do, its name says.
func carriesOut() bool { return true }
