//go:build !windows

package program

// carriesOut is true here: the terminal's name tells what it cannot do.
func carriesOut() bool { return true }
